/** Names of a file that are not in the book: who is meant. */
import type { FileReading } from '../../session/imports/file-reading.ts';
import type { FileImport } from './file-import.ts';
import { rowsInWords } from './import-words.ts';
import { Select } from './Select.tsx';

type Who = NonNullable<FileReading['who']>;

/** Names of the file that are not written as the roster writes them: nobody is taken for somebody without being asked. */
export function WhoIsWho({ state, who }: { state: FileImport; who: Who }) {
  const { same, close, unknown, people, rule, roster } = who;
  const answer = (text: string, person: string, newPeople?: readonly string[]) => {
    if (!rule) return;
    state.decide({
      who: { ...rule, same: { ...rule.same, [text]: person } },
      ...(newPeople ? { newPeople } : {}),
    });
  };
  const added = state.decisions.value.newPeople ?? [];
  const takeBack = (text: string) => {
    if (!rule) return;
    const { [text]: _, ...rest } = rule.same ?? {};
    state.decide({ who: { ...rule, same: rest }, newPeople: added.filter((one) => one !== text) });
  };
  // A text that was said to mean itself is somebody else.
  const others = Object.entries(rule?.same ?? {}).filter(([text, person]) => text === person);
  const asked = [
    ...close,
    ...unknown.map(({ text, rows }) => ({ text, rows, values: [] as readonly string[] })),
  ];
  return (
    <ul class="intake-who">
      {asked.slice(0, 100).map(({ text, rows, values }) => (
        <li key={text}>
          <p>
            <strong>{text}</strong> ({rowsInWords(rows)}){' '}
            {values.length > 0 ? 'may be somebody on the list.' : `is not in ${roster}.`}
          </p>
          <div class="intake-choices">
            {values.map((value) => (
              <button key={value} type="button" class="firm" onClick={() => answer(text, value)}>
                Same as {value}
              </button>
            ))}
            <button type="button" class="firm" onClick={() => answer(text, text, [...added, text])}>
              Add to {roster}
            </button>
            <button type="button" class="firm" onClick={() => answer(text, text)}>
              Leave as it is
            </button>
            <Select
              label={`Who ${text} is`}
              value=""
              options={[['', 'somebody else…'], ...people.map((one) => [one, one] as const)]}
              change={(person) => person && answer(text, person)}
            />
          </div>
        </li>
      ))}
      {asked.length > 100 && <li>and {asked.length - 100} more, after these</li>}
      {same.map(({ text, value, by, rows }) => (
        <li key={text}>
          <p>
            <strong>{text}</strong> is <strong>{value}</strong> ({sameBy[by]}); {rowsInWords(rows)} get that
            spelling.{' '}
            {by === 'decision' && (
              <button type="button" class="firm" onClick={() => takeBack(text)}>
                Ask again
              </button>
            )}
          </p>
        </li>
      ))}
      {others.map(([text]) => (
        <li key={text}>
          <p>
            <strong>{text}</strong> {added.includes(text) ? `is added to ${roster}.` : 'stays as it is.'}{' '}
            <button type="button" class="firm" onClick={() => takeBack(text)}>
              Ask again
            </button>
          </p>
        </li>
      ))}
    </ul>
  );
}

const sameBy: Readonly<Record<Who['same'][number]['by'], string>> = {
  decision: 'you said so',
  spelling: 'but for case and marks',
  accents: 'but for accents',
  order: 'the names in another order',
  identifier: 'by identifier',
  'birth date': 'by birth date and given name',
};
