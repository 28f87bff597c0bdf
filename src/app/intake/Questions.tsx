/** What has to be answered before a file can be imported. */
import type { FileColumn, FileReading, OpenQuestion } from '../../session/imports/file-reading.ts';
import type { FileImport } from './file-import.ts';
import { clocks, dateOrders, decimalMarks } from './import-words.ts';

type About = OpenQuestion['about'];

const asked: Readonly<Record<About, string>> = {
  dateOrder: 'In which order are the dates written?',
  decimal: 'Which mark comes before the decimals?',
  clock: 'What do the times mean?',
  unitsOf: 'Which numbers are in these units?',
  rowIsSet: 'Is each row one set?',
};

/** What the file leaves open, asked plainly; one answer holds for every column that asks the same. */
export function Questions({ state, reading }: { state: FileImport; reading: FileReading }) {
  const abouts = [...new Set(reading.questions.map(({ about }) => about))];
  return (
    <>
      {abouts.map((about) => (
        <Question key={about} state={state} reading={reading} about={about} />
      ))}
    </>
  );
}

function Question({ state, reading, about }: { state: FileImport; reading: FileReading; about: About }) {
  const questions = reading.questions.filter((one) => one.about === about);
  const columns = questions.flatMap(
    ({ column }) => reading.columns.find(({ index }) => index === column) ?? [],
  );
  const answer = (value: string) => {
    if (about === 'rowIsSet') {
      state.decide({ choices: { ...state.decisions.value.choices, rowIsSet: value === 'yes' } });
      return;
    }
    if (about === 'unitsOf') {
      for (const { index } of columns)
        state.decideColumn(index, { unitsOf: value === '' ? [] : value.split(' ').map(Number) });
      return;
    }
    const { choices } = state.decisions.value;
    const answered = Object.fromEntries(
      columns.map(({ index }) => [index, { ...choices?.columns?.[index], [about]: value }]),
    );
    state.decide({ choices: { ...choices, columns: { ...choices?.columns, ...answered } } });
  };
  const example = columns.flatMap(({ examples }) => examples).find(tells) ?? '';
  return (
    <fieldset class="intake-question">
      <legend>{asked[about]}</legend>
      <ul>
        {questions.map(({ column, sentence }) => (
          <li key={column}>
            <strong>{columns.find(({ index }) => index === column)?.heading}</strong>: {sentence}
          </li>
        ))}
      </ul>
      <div class="intake-choices">
        {answersTo(about, columns, reading).map(([value, words]) => (
          <button key={value} type="button" class="firm" onClick={() => answer(value)}>
            {words}
            {about === 'dateOrder' && <DateRead text={example} order={value} />}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

function answersTo(
  about: About,
  columns: readonly FileColumn[],
  reading: FileReading,
): readonly (readonly [string, string])[] {
  if (about === 'rowIsSet') return rowAnswers;
  if (about !== 'unitsOf') return marksAnswers(about);
  const numbers = [...new Set(columns.flatMap(({ unitsFor }) => unitsFor))];
  const heading = (at: number) => reading.columns.find(({ index }) => index === at)?.heading ?? '';
  return [
    ...(numbers.length > 1 ? [[numbers.join(' '), 'all of them'] as const] : []),
    ...numbers.map((at) => [String(at), heading(at)] as const),
    ['', 'none: import the units as text'],
  ];
}

const rowAnswers = [
  ['yes', 'yes: each row counts as one set'],
  ['no', 'no'],
] as const;

const marksAnswers = (about: 'dateOrder' | 'decimal' | 'clock'): readonly (readonly [string, string])[] =>
  about === 'dateOrder'
    ? dateOrders.filter(([order]) => order !== 'ymd')
    : about === 'decimal'
      ? decimalMarks
      : clocks;

/** A date that the two orders read differently. */
function tells(text: string): boolean {
  const parts = datePattern.exec(text);
  return parts !== null && Number(parts[1]) !== Number(parts[2]);
}

const datePattern = /^\s*(\d{1,2})\D(\d{1,2})\D(\d{2,4})/;
const months = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });

/** An example from the file as it would be read: 3 April 2026 or 4 March 2026. */
function DateRead({ text, order }: { text: string; order: string }) {
  const parts = datePattern.exec(text);
  if (!parts) return null;
  const [day, month] = order === 'dmy' ? [parts[1], parts[2]] : [parts[2], parts[1]];
  const name = months.format(new Date(Date.UTC(2000, Number(month) - 1, 1)));
  return <span class="soft">{` ${text} is ${Number(day)} ${name} ${parts[3]}`}</span>;
}
