/** Reading the cells of a column: numbers, dates, durations, yes and no, texts and names of people. */
export { bare, type ColumnBuilder, ownText } from './column-builder.ts';
export { ConstantColumnBuilder } from './constant.ts';
export { DateColumnBuilder } from './date.ts';
export { NumberColumnBuilder } from './number.ts';
export { accentKey, givenNames, spellingKey } from './person-name.ts';
export { readUnitCell } from './read-cell.ts';
export { type DateReading, readDateForms } from './read-date.ts';
export { durationUse } from './read-duration.ts';
export { type MarkUse, markUse, type NumberStyle, readNumber } from './read-number.ts';
export { TextColumnBuilder } from './text.ts';
export { YesNoColumnBuilder } from './yes-no.ts';
