/** What built-in functions of logic are called and say. */
import { words } from './family-words.ts';

export const logic = words(
  'Conditions and choices',
  '6.15, logical functions',
  `
IF(condition, then, [else=FALSE]): One of two values, by a condition. | if, if then else, choose by a condition, otherwise | IF({n} > {n1}, "high", "low")
  Only the value that is taken is computed. Without else, the result is FALSE where the condition is false.
!IFS(condition*, then*): The value of the first condition that is true. | several conditions, else if, grades, bands | IFS({n} > {n1}, "high", TRUE, "low")
  End with TRUE and a value for all other cases; without it, no match is #N/A.
!SWITCH(value, case*, then*, [instead]): The result of the case that the value equals. | cases, recode, translate a code | SWITCH({t}, {t1}, 1, 0)
CHOOSE(index, value*): The value at a position in a list. | nth of a list, pick by number | CHOOSE(2, "low", "middle", "high")
IFERROR(value, instead): A value, or another one where it is an error. | catch an error, hide errors, replace errors | IFERROR({n} / 0, "none")
IFNA(value, instead): A value, or another one where it is #N/A. | not found, missing lookup, catch #N/A | IFNA(XLOOKUP("nobody", {T}, {N}), "none")
AND(condition*): TRUE when every condition is true. | both, all conditions | AND({n} > 0, {n} < 1000)
OR(condition*): TRUE when at least one condition is true. | either, any condition | OR({n} > 100, {n} < 0)
XOR(condition*): TRUE when an odd number of conditions is true. | exclusive or | XOR({n} > 0, {n} > 1000)
NOT(condition): The opposite of a condition. | negate, unless | NOT({n} > 100)
TRUE(): The value TRUE. | yes, true
FALSE(): The value FALSE. | no, false
!LET(name*, value*, result): Names for intermediate values, then a result that uses them. | variable, name a value, intermediate result | LET(x, {n}, x * x + x)
  A name is known in the values after it and in the result. Each value is computed once.
`,
);
