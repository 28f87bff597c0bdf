/** What built-in functions of texts are called and say. */
import { words } from './family-words.ts';

export const texts = words(
  'Text',
  '6.20, text functions',
  `
!CONCAT(texts*): Texts and ranges joined. | join, combine names | CONCAT({t}, " ", {n})
CONCATENATE(text*): Texts joined. | join, combine names | CONCATENATE({t}, "!")
!TEXTJOIN(between, skip_blanks, texts*): Texts joined with something between them. | join with commas, list of names | TEXTJOIN(", ", TRUE, {t}, {n})
TEXT(value, format): A value written in a number format. | format, decimals, number to text | TEXT({n}, "0.0")
VALUE(text): The number that a text writes. | text to number | VALUE("12.5")
LEFT(text, [count=1]): The first characters. | start of a text, initial | LEFT({t}, 3)
RIGHT(text, [count=1]): The last characters. | end | RIGHT({t}, 3)
MID(text, position, count): Characters from the middle. | part of a text, substring
LEN(text): How many characters there are. | length of a text
FIND(sought, text, [position=1]): Where a text starts in another; capitals matter. | position in a text, contains | FIND({t1}, {t})
SEARCH(sought, text, [position=1]): Where a text starts in another; capitals do not matter. | position in a text, contains, wildcards | SEARCH({t1}, {t})
REPLACE(text, position, count, with): Characters at a position replaced. | overwrite part of a text
SUBSTITUTE(text, sought, with, [which]): One text replaced by another. | replace, swap, remove characters | SUBSTITUTE({t}, " ", "_")
TRIM(text): Text without extra spaces. | remove spaces, clean up
CLEAN(text): Text without control characters. | clean up
LOWER(text): Text in lower case. | small letters
UPPER(text): Text in upper case. | capitals
PROPER(text): Each word with a capital first letter. | capitalise names
EXACT(text, sought): TRUE when two texts are the same, capitals included. | compare texts
REPT(text, times): A text repeated. | repeat, bar of characters | REPT("*", 5)
!SPLIT(text, index): One word of a text, counted from 0. | split, first name, word | SPLIT("Ann Lee", 1)
T(value): A text as it is, anything else as an empty text. | text only | T({t})
CHAR(code): The character with a code. | character
CODE(text): The code of the first character. | character code
UNICHAR(code): The Unicode character with a code. | character, symbol
UNICODE(text): The Unicode code of the first character. | character code
`,
);
