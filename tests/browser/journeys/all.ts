import { coachJourney } from './coach.ts';
import type { Journey } from './journey.ts';

export const journeys: readonly Journey[] = [coachJourney];
