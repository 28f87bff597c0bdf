import { type Issue, issue } from '../core/issue.ts';

/** "too little data" for a column: what there is and what is needed. */
export const tooFew = (parameter: string, have: number, need: number, of = 'value'): Issue =>
  issue('#N/A', 'too-few', {
    parameter,
    expected: `${need} or more ${of}s`,
    details: { have: have === 0 ? `no ${of}` : have === 1 ? `only one ${of}` : `only ${have} ${of}s` },
  });

export const noSpread = (parameter: string): Issue => issue('#DIV/0!', 'no-spread', { parameter });
