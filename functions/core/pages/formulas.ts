import type { Page } from './page.ts';

const openFormula = (sections: string): string =>
  `OASIS OpenDocument 1.3, part 4 (OpenFormula), ${sections} (published)`;

/** What functions of the language do where a standard leaves a choice. */
export const formulas: Page = {
  id: 'formulas',
  title: 'How formulas read values',
  lead: 'What the functions for texts, tables and numbers do where the standard for formulas leaves a choice.',
  sections: [
    {
      title: 'Blanks',
      paragraphs: [
        'A blank cell that a reference, XLOOKUP, VLOOKUP, HLOOKUP or INDEX finds stays blank. ISBLANK and = "" see it, and a function for squats says that the value is missing.',
        'Arithmetic counts a blank as 0, and so do functions of single numbers such as ROUND. The checks then say “0 comes from a blank”, with the cell and the part of the formula. SUM, AVERAGE and their kin leave blanks out.',
      ],
      sources: [openFormula('6.14, lookup functions')],
    },
    {
      title: 'Wildcards',
      paragraphs: [
        '? matches any one character and * any number of characters, none included. ~ before ?, * or ~ means that character itself.',
        'Criteria of COUNTIF, SUMIF, AVERAGEIF, COUNTIFS, SUMIFS, AVERAGEIFS, MINIFS and MAXIFS know them after nothing, = or <>. Lookups know them in MATCH with type 0, in XLOOKUP and XMATCH with match 2, and in VLOOKUP and HLOOKUP with sorted FALSE. SEARCH knows them too.',
        'The whole text has to match: "squat" finds "Squat" and not "Front squat", "*squat" finds both. Only SEARCH looks within a text. Capitals never matter; lookups ignore accents as well, criteria do not.',
        'Wildcards match texts only, never numbers, dates or blanks: "*" counts the cells with a text.',
      ],
      table: {
        caption: 'Patterns and what they find',
        headings: ['Pattern', 'Finds', 'Does not find'],
        rows: [
          ['squat*', 'Squat, squat jump', 'Front squat'],
          ['*squat', 'Squat, Front squat', 'squat jump'],
          ['a?b', 'axb, a*b', 'ab'],
          ['a~*b', 'a*b', 'axb'],
          ['<>*squat*', 'Press, 42, a blank', 'Front squat'],
        ],
      },
      sources: [
        openFormula('3.4 (HOST-USE-WILDCARDS, HOST-SEARCH-CRITERIA-MUST-APPLY-TO-WHOLE-CELL) and 4.11.8'),
      ],
    },
    {
      title: 'Rounding',
      paragraphs: [
        'ROUND, ROUNDUP, ROUNDDOWN, TRUNC, MROUND and TEXT look at the decimal digits of a number. A number counts with 15 significant digits, which every number keeps; where more are asked for, the shortest decimal form counts.',
        'A half goes away from zero: ROUND(1.005, 2) is 1.01, ROUND(2.675, 2) is 2.68, ROUND(-2.5) is -3. Noise of arithmetic decides nothing: ROUND(0.285 * 100) is 29.',
        'ROUNDUP goes away from zero, ROUNDDOWN and TRUNC towards it, INT down to the next whole number: INT(-1.2) is -2. MROUND goes to the nearest multiple, halves away from zero.',
      ],
      sources: [
        openFormula('6.17, rounding functions'),
        'IEEE 754-2019, binary64: 15 decimal digits survive (published)',
      ],
    },
    {
      title: 'TEXT and number formats',
      paragraphs: [
        'TEXT takes the number formats of the standard: digits (0, #, ?), thousands and scaling commas, %, E+00, fractions, dates, times, AM/PM, [h] for hours beyond a day, texts in quotes, up to four sections with conditions, and @ for a text.',
        'Names of days and months are English; a language given in a format is passed over, colours too.',
        'Days count as in cells: 61 is 1 March 1900, and 1900 has no 29 February. A date before 1900 or after 9999 is #VALUE!, and so are a negative time of day and an incorrect format.',
      ],
      table: {
        caption: 'Formats and what they give',
        headings: ['Value', 'Format', 'Text'],
        rows: [
          ['0.1234', '0.0%', '12.3%'],
          ['1234567.891', '#,##0.00', '1,234,567.89'],
          ['12345.678', '0.00E+00', '1.23E+04'],
          ['-3.1', '0.00;(0.00);"none"', '(3.10)'],
          ['2024-03-15', 'dddd d mmmm yyyy', 'Friday 15 March 2024'],
          ['18:00', 'h:mm AM/PM', '6:00 PM'],
          ['1.5 days', '[h]:mm', '36:00'],
        ],
      },
      sources: ['ISO/IEC 29500-1, 18.8.31, number formats (published)'],
    },
  ],
};
