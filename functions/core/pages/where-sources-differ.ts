import type { Page } from './page.ts';

/** Questions that good sources answer differently, and what this workbook does. Figures as the sources give them. */
export const whereSourcesDiffer: Page = {
  id: 'where-sources-differ',
  title: 'Where sources differ',
  lead: 'Questions that good sources answer differently, what each says, and what this workbook does. A figure without its definition says little.',
  sections: [
    {
      title: 'Does a raised heel make the trunk more upright?',
      paragraphs: [
        'The geometry says yes when the ankle is what limits and is used whole. Measured squats say both.',
        'Here: the geometric ceiling is computed and called one, with the studies of both sides beside it.',
      ],
      table: {
        caption: 'Studies of raised heels and trunk lean',
        headings: ['Study', 'Finding'],
        rows: [
          ['Sato 2012, J Strength Cond Res 26:28–33', 'more upright (shoes)'],
          ['Monteiro 2022, Hum Mov 23:97–103', 'more upright (wedges of 25 and 50 mm)'],
          ['Legg 2017, J Sports Sci 35:508', 'only without load'],
          ['Lee 2019, J Strength Cond Res 33:606', 'no difference at 80 % of the maximum'],
        ],
      },
      functions: ['LIFT.CHANGE', 'LIFT.AS.ANKLE'],
    },
    {
      title: 'Degrees of ankle range for each centimetre of the wall test',
      paragraphs: [
        'A figure of 3.6° per cm is often quoted. The geometry of foot and shank gives 1.6–2.0° per cm, depending on the length of the tibia and on the range itself.',
        'Here: the angle is computed from the distance, the tibia and the foot of the person.',
      ],
      functions: ['ANKLE.FROM.WALL'],
    },
    {
      title: 'How much of the ankle range a squat uses',
      paragraphs: [
        'The model uses all of it and so gives the minimum lean. Lifters were measured at shin angles of 27–31°; ankle ranges of 38–40° are usual. About three quarters of the range is used.',
        'Here: LEAN.PARALLEL and LEAN.AT give the minimum. For a lean nearer to what is seen give .75 × ankle, a working assumption.',
      ],
      functions: ['LEAN.PARALLEL', 'LEAN.AT', 'ANKLE.FROM.WALL'],
      sources: [
        'Sato et al. 2013, Int J Sports Sci Coach 8:571–578; Calatayud 2015, Int J Sports Phys Ther 10:197–202 (published)',
      ],
    },
    {
      title: 'Which weight is over mid-foot',
      paragraphs: [
        'The bar, by coaching convention; the centre of mass of body and bar together, by statics. With heavy bars the two are near each other, with light ones not.',
        'Here: both, by name. The first needs no masses; "arms-forward" always balances the body’s own centre of mass.',
      ],
      table: {
        caption:
          'Minimum lean at parallel: femur 44.5, tibia 41, trunk 50 cm, ankle 28°, body mass 80 kg, high bar',
        headings: ['Bar', 'Bar rule (LEAN.PARALLEL)', 'System rule (LEAN.LOADED)'],
        rows: [
          ['20 kg', '44.5°', '71.8°'],
          ['60 kg', '44.5°', '57.3°'],
          ['120 kg', '44.5°', '51.9°'],
        ],
      },
      functions: ['LEAN.PARALLEL', 'LEAN.LOADED'],
    },
    {
      title: 'The hips’ share of the moments',
      paragraphs: [
        'Measured at parallel: 216 and 131 N·m per leg with a high bar, 309 and 92 with a low bar, so .62 and .77 of the sum at the hip. The formulas here give .45 for an average man (85 kg with 85 kg) at the model’s minimum lean of 29°, and .61 at an observed 39.3°.',
        'Here: the load functions are meant for an observed lean and shin angle. Their help says so.',
      ],
      functions: ['MOMENT.HIP', 'MOMENT.KNEE', 'MOMENT.SHARE'],
      sources: [
        'Wretenberg 1996, Med Sci Sports Exerc 28:218; Sato et al. 2013, Int J Sports Sci Coach 8:571–578 (published)',
      ],
    },
    {
      title: 'How much of the body is head, arms and trunk',
      paragraphs: [
        'Dempster’s table gives .678 of the body mass; de Leva’s gives about .60 for men and .58 for women, with other landmarks and other segments.',
        'Here: the balance and the load estimates use one table, Dempster’s, throughout. The two are never mixed in one sum.',
      ],
      functions: ['SEG.MASS', 'MOMENT.HIP'],
      sources: [
        'Dempster 1955, in Winter, Table 4.1 (secondary transcription)',
        'de Leva 1996, J Biomech 29:1223–1230, Table 4 (secondary transcription)',
      ],
    },
    {
      title: 'Where the knee is measured',
      paragraphs: [
        'The lateral femoral epicondyle lies near the axis of the knee; the joint line (tibiale) lies 2.3 cm lower in men and 2.8 cm lower in women. Lengths in the literature use either.',
        'Here: the epicondyle. Help and intake say what a length to the joint line must be corrected by.',
      ],
      functions: ['SEG.FEMUR', 'SEG.TIBIA'],
      sources: ['Gordon et al. 2014, NATICK/TR-15/007 (published, computed from the public data)'],
    },
    {
      title: 'From which line angles are measured',
      paragraphs: [
        'Papers give the trunk’s angle from the horizontal or from the vertical, and the knee as an internal angle or as flexion.',
        'Here: lean and shin angle from the vertical, forward positive; depth as the thigh above (+) or below (−) the horizontal; joints as flexion. A trunk angle from the horizontal is 90° less the lean, an internal knee angle 180° less the flexion.',
      ],
      functions: ['LEAN.PARALLEL', 'LEAN.KNEE'],
    },
    {
      title: 'Seven equations for one set',
      paragraphs: [
        'Five repetitions with 100 kg, to failure, are seven maxima.',
        'Here: the equation is named, Epley’s when nothing is said, and "mean" takes the mean of the seven. At one repetition every method returns the load itself: Epley’s own line would make a single 103.3 % of itself. Brzycki’s equation is also printed with rounded constants (1.0278 − 0.0278 n), which moves it by a hundredth of a per cent.',
      ],
      table: {
        caption: 'Estimated 1RM from 100 kg × 5',
        headings: ['Equation', 'kg'],
        rows: [
          ['Epley 1985', '116.7'],
          ['Brzycki 1993', '112.5'],
          ['Lander 1985', '113.7'],
          ['Lombardi 1989', '117.5'],
          ['Mayhew 1992', '119.0'],
          ['O’Conner 1989', '112.5'],
          ['Wathan 1994', '116.6'],
        ],
      },
      functions: ['STRENGTH.MAX', 'STRENGTH.LOAD', 'STRENGTH.REPS'],
    },
    {
      title: 'Which way a load–velocity line is fitted',
      paragraphs: [
        'Velocity fitted on load, or load fitted on velocity: with loads of 60, 80, 100, 120 kg at 1.05, 0.86, 0.68, 0.49 m/s and a threshold of 0.30 m/s the first gives 140.538 kg, the second 140.532 kg. With scattered points the two diverge further.',
        'Here: velocity on load.',
      ],
      functions: ['STRENGTH.FROM.VELOCITY', 'COHORT.FIT'],
    },
    {
      title: 'Scaling strength to body size',
      paragraphs: [
        'The exponent 2/3 follows from geometric similarity; papers also print it as 0.67. At 90 kg the two differ by 1.5 %. The federations’ scores fit curves instead, each to its own results and time; the revision of one of them in 2020 has another numerator and is not offered here.',
        'Here: 2/3 exactly when nothing is said; scores by their names, with the status of their constants.',
      ],
      functions: [
        'STRENGTH.ALLOMETRIC',
        'STRENGTH.WILKS',
        'STRENGTH.DOTS',
        'STRENGTH.IPFGL',
        'STRENGTH.SINCLAIR',
      ],
      sources: ['Jaric 2002; Markovic & Jaric 2004 (secondary transcriptions)'],
    },
    {
      title: 'The divisor of monotony',
      paragraphs: [
        'Foster 1998 divides the mean of the daily loads by their SD and does not say which. For the week 360, 540, 0, 480, 300, 720, 0 the sample SD gives a monotony of 1.27, the population SD 1.37.',
        'Here: the sample SD when nothing is said; the other by name.',
      ],
      functions: ['TRAIN.MONOTONY', 'TRAIN.STRAIN'],
    },
    {
      title: 'Coupled or uncoupled, rolling or weighted',
      paragraphs: [
        'The recent week may be part of the long window (coupled) or not. With windows of 7 and 28 days coupled = 4u/(u + 3), u uncoupled: 21 days of 300 and 7 of 600 are 1.6 or 2.0, and an exponentially weighted ratio of the same days is 1.34.',
        'The weighted mean needs a first value, which its source leaves open; here it is the load of the first logged day.',
        'None of the three was shown to predict or prevent injury, and none has a safe band.',
      ],
      functions: ['TRAIN.ACWR', 'TRAIN.EWMA', 'TRAIN.EWMA.RATIO'],
      sources: [
        'Windt & Gabbett 2019, Br J Sports Med 53:988–990 (secondary transcription)',
        'Williams 2017, Br J Sports Med 51:209–210; Lolli 2019, Br J Sports Med 53:921; Impellizzeri 2021, Sports Med 51:581–592 (published)',
      ],
    },
    {
      title: 'Six intraclass correlations of one table',
      paragraphs: [
        'The table of Shrout & Fleiss (6 targets, 4 judges) has six of them.',
        'Here: form 2,1 when nothing is said (the same trials for everybody, a shift between them counts as error, a single trial is used). Name the form wherever you report one.',
      ],
      table: {
        caption: 'Intraclass correlations as printed in 1979',
        headings: ['Form', 'One trial', 'Mean of all'],
        rows: [
          ['1: trials in no order', '.17', '.44'],
          ['2: a common shift is error', '.29', '.62'],
          ['3: a common shift is not', '.71', '.91'],
        ],
      },
      functions: ['TEST.ICC', 'TEST.ICC.LOW', 'TEST.ICC.HIGH'],
      sources: ['Shrout & Fleiss 1979, Psychol Bull 86:420–428 (published)'],
    },
    {
      title: '1.96, 2, or the quantile',
      paragraphs: [
        'Limits of agreement and detectable changes are printed with 1.96, with 2, and with rounded inputs on top. Bland & Altman’s own 1986 limits use 2.',
        'Here: the exact normal quantile of the confidence asked for, 1.959964 for 95 %.',
      ],
      functions: ['TEST.MDC', 'TEST.LIMIT.LOW', 'TEST.LIMIT.HIGH', 'TEST.CHANGE'],
    },
    {
      title: 'Coefficient of variation of duplicates',
      paragraphs: [
        'For the pairs 100 and 104, 102 and 101, 98 and 99, 110 and 106: the root mean square of the pairs’ own CVs is 1.97 %, the typical error over the mean 2.32 %, the one from logarithms 2.30 %.',
        'Here: the root mean square.',
      ],
      functions: ['TEST.CV'],
    },
    {
      title: 'Four indices for a difference between sides',
      paragraphs: [
        'Left 180 and right 200 are four numbers. A threshold for one index says nothing about another.',
        'Here: the index is named beside the number, the signed one when nothing is said, and no threshold is drawn.',
      ],
      table: {
        caption: 'Left 180, right 200',
        headings: ['Index', 'Per cent'],
        rows: [
          ['symmetry: difference over the mean, right − left', '10.5'],
          ['limb: smaller over larger', '90.0'],
          ['max: difference over the larger', '10.0'],
          ['total: difference over the sum', '5.3'],
        ],
      },
      functions: ['TEST.SIDES'],
    },
    {
      title: 'The sign of a difference',
      paragraphs: [
        'Effect sizes are mostly given as later less earlier, tests and agreement as first less second.',
        'Here, after custom: COHORT.D and COHORT.G are b − a; COHORT.PAIRED is after − before; COHORT.WELCH and TEST.BIAS a − b; TEST.SIDES right − left. Each help says so.',
      ],
      functions: ['COHORT.D', 'COHORT.G', 'COHORT.PAIRED', 'COHORT.WELCH', 'TEST.BIAS', 'TEST.SIDES'],
    },
    {
      title: 'Hedges’ correction',
      paragraphs: [
        'The exact form uses the gamma function; many programs use 1 − 3/(4m − 1). For two groups of ten they give .796935 and .797019 of the same data.',
        'Here: the exact form.',
      ],
      functions: ['COHORT.G'],
      sources: ['Hedges 1981, J Educ Stat 6:107–128 (published)'],
    },
  ],
};
