import type { Page } from './page.ts';

/** What the numbers cannot say. */
export const knownLimits: Page = {
  id: 'known-limits',
  title: 'Known limits',
  lead: 'What the numbers in this workbook cannot say, and where a measurement or a person knows better.',
  sections: [
    {
      title: 'For whom and for what',
      paragraphs: [
        'The results are estimates from a static two-dimensional model and from published group equations. They are for comparing set-ups of one lifter, not for diagnosis, and not for comparing lifters by a degree or two.',
        'Pain, numbness or a recent injury: stop and see a licensed clinician. Near-maximal loads: safety pins or spotters and a qualified coach. Follow local rules for testing minors and for keeping health data.',
      ],
    },
    {
      title: 'Measuring error',
      paragraphs: [
        'Together, errors of ±1 cm and ±2° shift the lean by about 2–4°. Leans are therefore shown in whole degrees beside their error; LEAN.ERROR gives the error for one lifter.',
        'The largest single error is the knee’s landmark. The model asks for the lateral femoral epicondyle; anyone measuring to the joint line takes 2.3 cm (men) or 2.8 cm (women) off the femur and adds it to the tibia, which is worth 4–6° of lean.',
        'The ankle must be measured with weight on it. A figure taken without weight is 15–20° lower and gives far too much lean.',
      ],
      functions: ['LEAN.ERROR', 'SEG.FEMUR', 'SEG.TIBIA'],
      sources: [
        'Gordon et al. 2014, NATICK/TR-15/007, difference of epicondyle and tibiale (published, computed from the public data)',
        'BMC Musculoskelet Disord 2014 15:246, ankle range with and without weight (published)',
      ],
    },
    {
      title: 'The posture model',
      paragraphs: [
        'Static: nothing moves. Speed, bounce and the drive out of the bottom are not modelled.',
        'Two-dimensional: seen from the side, left and right alike. Turning knees and feet out shortens the leg in this view and nothing else; hip rotation and the width of the pelvis are left out, so the gain from a wider stance is an upper bound.',
        'Rigid links: the trunk is one straight line, the foot is rigid from heel to ball. Rounding of the back, the tuck of the pelvis at the bottom and a collapsing arch are not in it, nor are soft tissues that meet when the joints fold.',
        'The result is the minimum lean: the whole ankle range is used. Lifters were measured at shin angles of 27–31° where ankle ranges are 38–40°: about three quarters of the range. Set the lean at .75 × ankle (a working assumption) beside the minimum, and name both.',
        'The arms stay at the trunk unless the placement says otherwise. With a light bar the rule of the total centre of mass often has no posture, because real lifters then move their arms.',
        'With a light bar the two rules diverge. For femur 44.5, tibia 41, trunk 50 and ankle 28 the bar rule gives 44.5° at any load, the system rule 71.8° at 80 kg body mass with 20 kg.',
        'The bar over mid-foot is a coaching convention. Where the bar lies on the trunk, where the ankle joint lies along the foot, and the default limits of the joints are working assumptions, each shown as such beside the result.',
        'What limits the depth is an answer about the limits given. Where lean, hip or knee is left at its default the answer is assumed, not measured.',
      ],
      functions: ['LEAN.PARALLEL', 'LEAN.LOADED', 'LEAN.DEEPEST', 'LEAN.LIMITER', 'LEAN.GAIN'],
      sources: [
        'Sato et al. 2013, Int J Sports Sci Coach 8:571–578, shin angles; Calatayud 2015, Int J Sports Phys Ther 10:197–202, ankle ranges (published)',
      ],
    },
    {
      title: 'Lengths from stature, and the reference survey',
      paragraphs: [
        'The fractions of stature of 1966 were never validated for a population. In the survey of 2012 stature explains less than half the variance of thigh length, and thigh and trunk length are uncorrelated: lengths from stature are a default for people you cannot measure, no more.',
        'The survey measured army personnel of one country: adults, selected, mostly young. Percentiles from it are percentiles among them.',
      ],
      functions: ['SEG.ESTIMATE', 'SEG.PERCENTILE', 'SEG.NORM'],
      sources: [
        'Drillis & Contini 1966, NYU TR 1166-03, in Winter, Biomechanics and Motor Control of Human Movement, Fig. 4.1 (secondary transcription)',
        'Gordon et al. 2014, NATICK/TR-15/007 (published)',
      ],
    },
    {
      title: 'Heel-lift equivalents',
      paragraphs: [
        'A heel-lift equivalent is a geometric ceiling: valid where the ankle is the limit and its whole range is used. Lifters who have range to spare gain less or nothing.',
        'Studies disagree. Trunks were more upright in the lifting shoes of Sato 2012 and on the 25 and 50 mm wedges of Monteiro 2022; in Legg 2017 only without load; in Lee 2019 not at 80 % of the maximum.',
        'A heel lift shifts load from the hips and lower back to the knees. Whether that helps depends on the lifter.',
        'Heels must be firm and non-slip and support the whole heel. Make one change at a time, and stop if the knee hurts.',
        'A computed heel height means "up to N cm", and only where the lean exceeds its target by more than the error. No target lean is right for everybody.',
        'The equivalent in centimetres of tibia grows without bound when the ankle is stiff: read the equivalent in degrees of ankle range first.',
      ],
      functions: ['LIFT.CHANGE', 'LIFT.AS.ANKLE', 'LIFT.AS.TIBIA', 'LIFT.AS.FEMUR', 'LIFT.FOR.LEAN'],
      sources: [
        'Sato 2012, J Strength Cond Res 26:28–33; Monteiro 2022, Hum Mov 23:97–103; Legg 2017, J Sports Sci 35:508; Lee 2019, J Strength Cond Res 33:606 (published)',
      ],
    },
    {
      title: 'Load on hip, knee and back',
      paragraphs: [
        'Load functions are meant for an observed lean and shin angle. At the model’s minimum lean of an average man (29°, 85 kg with 85 kg) the hips’ share of the moments is .45 where a study found .62. At an observed 39.3° the same formulas give .61.',
        'Moments are static and for both sides together; a moving squat needs more. Muscles that pull against each other, the belt and the pressure in the abdomen are left out, so real joint forces are larger and differently shared.',
        'The back is one muscle on one lever. A lever of 6 cm is a published mean; a centimetre of it changes the force by a sixth.',
        'The lines of 3400 N and 6400 N are limits of compression alone, set for occupational lifting. Trained squats exceed both; they are never a pass or a fail. Shear has no line.',
      ],
      functions: [
        'MOMENT.HIP',
        'MOMENT.KNEE',
        'MOMENT.BACK',
        'BACK.MUSCLE',
        'BACK.COMPRESSION',
        'BACK.SHEAR',
      ],
      sources: [
        'Cholewicki 1991, Med Sci Sports Exerc 23:1179–1186; NIOSH 81-122, 1981; Wretenberg 1996, Med Sci Sports Exerc 28:218; Sato et al. 2013, Int J Sports Sci Coach 8:571–578 (published)',
      ],
    },
    {
      title: 'Strength estimates',
      paragraphs: [
        'The seven equations were fitted to groups and to sets of up to about ten repetitions. Above that they diverge from each other and from lifters. Adding repetitions in reserve to the repetitions done is common practice without a published source.',
        'Ratings of effort are judged. Below 7 the scale names a band and no count, and is refused.',
        'A 1RM from bar velocity lies beyond the data: the lighter the heaviest set, the further the guess.',
        'Federation scores use constants as far as they could be read. The Sinclair constants of the 2025 cycle are from memory; those of 2017 and 2021 and the other scores are read in secondary pages. Confirm before ranking anybody.',
      ],
      functions: ['STRENGTH.MAX', 'STRENGTH.RIR', 'STRENGTH.FROM.VELOCITY', 'STRENGTH.SINCLAIR'],
      sources: ['Zourdos 2016, J Strength Cond Res 30:267–275 (published)'],
    },
    {
      title: 'Training load',
      paragraphs: [
        'The ratio of recent to earlier load was not shown to predict or prevent injury. No safe band is drawn anywhere in this workbook.',
        'Monotony and strain are descriptions of a week. They divide by the spread of its days and have no value when all days are equal.',
        'A day without a row counts as a day without load. A log with forgotten sessions says that training stopped.',
      ],
      functions: ['TRAIN.ACWR', 'TRAIN.EWMA.RATIO', 'TRAIN.MONOTONY', 'TRAIN.STRAIN'],
      sources: [
        'Lolli 2019, Br J Sports Med 53:921; Impellizzeri 2021, Sports Med 51:581–592; Foster 1998, Med Sci Sports Exerc 30:1164–1168 (published)',
      ],
    },
    {
      title: 'Reliability and groups',
      paragraphs: [
        'An intraclass correlation grows with the spread among the people tested: the same test looks better in a mixed group. Give the standard error of measurement beside it.',
        'A change beyond the minimal detectable change is more than error. Whether it matters, and what caused it, is another question.',
        'Two occasions differ by more than the trials of one session. For the knee-to-wall test the SEM of one trial per side on two occasions is .69 cm; .4–.6 cm is the SEM of a mean of three trials within one session. Differences between sides count from 1.5 cm.',
        'COHORT.WELCH, COHORT.D and COHORT.G are for separate groups. Before and after of the same people are pairs: use COHORT.PAIRED.',
        'The limits of an intraclass correlation of form 2 come from an approximation and can be odd with very few people.',
      ],
      functions: [
        'TEST.ICC',
        'TEST.MDC',
        'TEST.CHANGE',
        'TEST.PUBLISHED',
        'COHORT.WELCH',
        'COHORT.D',
        'COHORT.PAIRED',
      ],
      sources: [
        'McGraw & Wong 1996, Psychol Methods 1:30–46; Hedges 1981, J Educ Stat 6:107–128 (published)',
        'Powden 2015, Man Ther 20:524–532; Konor 2012; Chisholm 2012, Physiother Can 64:347–355 (published; as TEST.PUBLISHED gives them)',
      ],
    },
  ],
};
