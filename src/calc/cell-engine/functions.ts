import { HyperFormula } from 'hyperformula';

/** Names of the functions that the cell engine brings along, in capitals. */
export const engineFunctions = (): readonly string[] => HyperFormula.getRegisteredFunctionNames('enGB');
