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
      sources: [openFormula('6.3.5 and 6.14')],
    },
    {
      title: 'Wildcards',
      paragraphs: [
        '? stands for any one character and * for any number of characters, none included. ~ before ?, * or ~ means that character itself.',
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
  ],
};
