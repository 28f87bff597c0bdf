import { coachJourney } from './coach.ts';
import type { Journey } from './journey.ts';
import { lifterJourney } from './lifter.ts';

export const journeys: readonly Journey[] = [coachJourney, lifterJourney];
