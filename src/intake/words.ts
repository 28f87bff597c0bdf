/** No number, date or duration is written longer; longer texts are not even tried. */
export const LONGEST_VALUE = 60;

/** Words that stand for "not measured" in a column of numbers, dates or yes/no, in lower case. */
export const missingWords: readonly string[] = [
  'na',
  'n/a',
  'n.a.',
  '#n/a',
  '#n/v',
  'nan',
  'null',
  'none',
  'nil',
  '-',
  '--',
  '---',
  '–',
  '—',
  '.',
  '..',
  '...',
  '?',
  '/',
  '*',
  'missing',
  'not measured',
  'not tested',
  'nt',
  'dnf',
  'dns',
  'absent',
  'k.a.',
  'k. a.',
  'keine angabe',
  's/o',
  's.o.',
  'nd',
  'n.d.',
  'tbd',
  'unknown',
];

/** Pairs of words for yes and no, in lower case. */
export const yesNoPairs: readonly (readonly [yes: readonly string[], no: readonly string[]])[] = [
  [
    ['yes', 'y', 'true', 't', 'ja', 'j', 'oui', 'o', 'sí', 'si', 's', 'sim', 'x', '✓', '✔', 'wahr', 'vrai'],
    ['no', 'n', 'false', 'f', 'nein', 'non', 'não', 'nee', '✗', '✘', 'falsch', 'faux'],
  ],
];

/** First words of lines under a table that sum it up, in lower case. */
export const footerWords: readonly string[] = [
  'total',
  'totals',
  'subtotal',
  'sum',
  'grand total',
  'mean',
  'average',
  'avg',
  'median',
  'sd',
  'stdev',
  'std dev',
  'std. dev.',
  'min',
  'max',
  'minimum',
  'maximum',
  'range',
  'count',
  'n',
  'n =',
  'cv',
  'summe',
  'gesamt',
  'mittelwert',
  'durchschnitt',
  'anzahl',
  'somme',
  'moyenne',
  'suma',
  'promedio',
  'media',
  'totale',
  'note',
  'notes',
  'legend',
  'source',
  'end of file',
  'end',
  'eof',
  'exported',
  'generated',
  'printed',
];

/** Headings that mean a day or a moment, in lower case: dates without separators are read as such only under them. */
export const dateWords = /\b(date|day|datum|dated|dob|born|birth|fecha|data|jour|tag|when|timestamp)\b/;
/** Headings that mean a duration. */
export const durationWords =
  /\b(duration|minutes|mins|min|time|length of session|dauer|durée|duree|duración|elapsed)\b/;
/** Headings that mean a time of day, which is no duration. */
export const timeOfDayWords = /\b(start|begin|began|end|finish|clock|time of day|uhrzeit|hora|heure)\b/;
/** Headings whose digits are labels. */
export const labelWords = /\b(id|code|phone|tel|zip|postcode|licence|license|passport|number|no|nr)\b/;
