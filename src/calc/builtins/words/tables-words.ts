import { words } from './family-words.ts';

/** A table with headings, and a range with a heading and a criterion below it. */
const on = '{"a", "b"; 1, 10; 2, 20; 3, 30}, "b", {"a"; ">1"}';
const one = '{"a", "b"; 1, 10; 2, 20; 3, 30}, "b", {"a"; 2}';

export const tables = words(
  'Tables with criteria in a range',
  '6.8, database functions',
  `
DSUM(table, field, criteria): The sum of a column where rows meet criteria. | | DSUM(${on})
DAVERAGE(table, field, criteria): The mean of a column where rows meet criteria. | | DAVERAGE(${on})
DMAX(table, field, criteria): The largest number of a column where rows meet criteria. | | DMAX(${on})
DMIN(table, field, criteria): The smallest number of a column where rows meet criteria. | | DMIN(${on})
DCOUNT(table, field, criteria): How many numbers a column has where rows meet criteria. | | DCOUNT(${on})
DCOUNTA(table, field, criteria): How many values a column has where rows meet criteria. | | DCOUNTA(${on})
DGET(table, field, criteria): The one value of a column whose row meets criteria. | | DGET(${one})
DPRODUCT(table, field, criteria): The product of a column where rows meet criteria. | | DPRODUCT(${on})
DSTDEV(table, field, criteria): The SD of a column where rows meet criteria, of a sample. | | DSTDEV(${on})
DSTDEVP(table, field, criteria): The SD of a column where rows meet criteria, of a population. | | DSTDEVP(${on})
DVAR(table, field, criteria): The variance of a column where rows meet criteria, of a sample. | | DVAR(${on})
DVARP(table, field, criteria): The variance of a column where rows meet criteria, of a population. | | DVARP(${on})
`,
);
