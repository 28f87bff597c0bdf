import { constant, published } from '../core/source.ts';

/** Standard gravity. */
export const gravity = constant('standard gravity', 9.80665, 'm/s²', published('ISO 80000-3'));
