/** Dates and times: OpenFormula 1.3, part 4, 6.9. */
import { type BuiltIn, builtIn, file } from '../builtin.ts';

const engine = { engine: true } as const;

export const dates: readonly BuiltIn[] = [
  builtIn('TODAY', 'date', file(''), { implementation: engine, volatile: 'clock' }),
  builtIn('NOW', 'date', null, { implementation: engine, volatile: 'clock' }),
  builtIn('DATE', 'date', file('vvv')),
  builtIn('DATEVALUE', 'date', null),
  builtIn('DAY', 'plain', file('v')),
  builtIn('MONTH', 'plain', file('v')),
  builtIn('YEAR', 'plain', file('v')),
  builtIn('WEEKDAY', 'plain', file('vv?')),
  builtIn('ISOWEEKNUM', 'plain', file('v', '_xlfn.ISOWEEKNUM')),
  builtIn('WEEKNUM', 'plain', null),
  builtIn('EDATE', 'date', file('vv')),
  builtIn('EOMONTH', 'date', file('vv')),
  builtIn('DAYS', 'plain', null),
  builtIn('DAYS360', 'plain', file('vvv?')),
  builtIn('DATEDIF', 'plain', null),
  builtIn('YEARFRAC', 'plain', file('vvv?')),
  builtIn('NETWORKDAYS', 'plain', null),
  builtIn('NETWORKDAYS.INTL', 'plain', null),
  builtIn('WORKDAY', 'date', null),
  builtIn('WORKDAY.INTL', 'date', null),
  builtIn('TIME', 'unknown', file('vvv')),
  builtIn('TIMEVALUE', 'unknown', null),
  builtIn('HOUR', 'plain', file('v')),
  builtIn('MINUTE', 'plain', file('v')),
  builtIn('SECOND', 'plain', file('v')),
  builtIn('INTERVAL', 'text', null),
];
