import { coachJourney } from './coach.ts';
import type { Journey } from './journey.ts';
import { lifterJourney } from './lifter.ts';
import { researcherJourney } from './researcher.ts';

export const journeys: readonly Journey[] = [coachJourney, researcherJourney, lifterJourney];
