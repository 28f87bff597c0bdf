import { constant, published } from '../core/source.ts';

const agreement = published('international yard and pound agreement, 1959');

export const inch = constant('inch', 2.54, 'cm', agreement);
export const pound = constant('pound', 0.45359237, 'kg', agreement);
