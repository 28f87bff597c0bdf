/** Money over time: OpenFormula 1.3, part 4, 6.12. */
import { type BuiltIn, builtIn } from '../builtin.ts';

const names = [
  ...['PMT', 'IPMT', 'PPMT', 'ISPMT', 'CUMIPMT', 'CUMPRINC', 'FV', 'FVSCHEDULE', 'PV', 'NPV', 'XNPV', 'IRR'],
  ...['XIRR', 'MIRR', 'RATE', 'RRI', 'NPER', 'PDURATION', 'EFFECT', 'NOMINAL', 'SLN', 'DB', 'DDB', 'SYD'],
  ...['DOLLARDE', 'DOLLARFR', 'TBILLEQ', 'TBILLPRICE', 'TBILLYIELD'],
];

export const finance: readonly BuiltIn[] = names.map((name) => builtIn(name, 'unknown', null));
