/** Texts: OpenFormula 1.3, part 4, 6.20. */
import { lists } from '../../ranges/lists.ts';
import { type BuiltIn, builtIn, file } from '../builtin.ts';
import { concat, rept, substitute } from '../own/joined-texts.ts';

export const texts: readonly BuiltIn[] = [
  builtIn('CONCAT', 'text', file('a+', '_xlfn.CONCAT'), { implementation: { own: concat } }),
  builtIn('CONCATENATE', 'text', file('v+'), { implementation: { engine: true, overList: lists.join } }),
  builtIn('TEXTJOIN', 'text', file('vva+', '_xlfn.TEXTJOIN')),
  builtIn('TEXT', 'text', null),
  builtIn('VALUE', { same: [0] }, null),
  builtIn('LEFT', 'text', file('vv?')),
  builtIn('RIGHT', 'text', file('vv?')),
  builtIn('MID', 'text', file('vvv')),
  builtIn('LEN', 'plain', file('v')),
  builtIn('FIND', 'plain', file('vvv?')),
  builtIn('SEARCH', 'plain', null),
  builtIn('REPLACE', 'text', file('vvvv')),
  builtIn('SUBSTITUTE', 'text', file('vvvv?'), { implementation: { own: substitute, engine: true } }),
  builtIn('TRIM', 'text', file('v')),
  builtIn('CLEAN', 'text', file('v')),
  builtIn('LOWER', 'text', file('v')),
  builtIn('UPPER', 'text', file('v')),
  builtIn('PROPER', 'text', file('v')),
  builtIn('EXACT', 'yes-no', file('vv')),
  builtIn('REPT', 'text', file('vv'), { implementation: { own: rept, engine: true } }),
  builtIn('SPLIT', 'text', null),
  builtIn('T', 'text', null),
  builtIn('CHAR', 'text', null),
  builtIn('CODE', 'plain', null),
  builtIn('UNICHAR', 'text', null),
  builtIn('UNICODE', 'plain', null),
];
