import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { LiveExample } from '../../session/working/live-example.ts';
import { degrees } from '../figure/figure-words.ts';
import { writtenValue } from '../formula/signature.ts';
import { usePage } from '../state/context.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';

/** Everything about one function, with what it gives for the row that is chosen. */
export function FunctionPage({ help }: { help: FunctionHelp }) {
  const page = usePage();
  const insert = (text: string) => putIntoLine(page, text);
  const article = useRef<HTMLElement>(null);
  // The panel stands where the list, or the function before, was scrolled to.
  useEffect(() => article.current?.closest('.side-content')?.scrollTo(0, 0), [help.name]);
  return (
    <article class="guide-page" ref={article}>
      <button
        type="button"
        class="firm"
        onClick={() => {
          page.guide.value = null;
        }}
      >
        All functions
      </button>
      <h2>{help.name}</h2>
      {help.aliases && help.aliases.length > 0 && <p class="soft">Also called {help.aliases.join(', ')}</p>}
      <p>{help.summary}</p>
      <pre class="formula">{help.signature}</pre>
      <Live name={help.name} insert={insert} />
      <table>
        <caption class="unseen">Arguments of {help.name}</caption>
        <tbody>
          {help.parameters.map((parameter) => (
            <tr key={parameter.name}>
              <th scope="row">{parameter.name}</th>
              <td>
                {parameter.about}
                {parameter.unit && `, ${parameter.unit}`}
                <span class="soft">
                  {' '}
                  {parameter.accepts}
                  {parameter.optional &&
                    (parameter.fallback === undefined
                      ? '; optional'
                      : `; optional, default ${writtenValue(parameter.fallback)}`)}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Returns</h3>
      <p>
        {help.result.about}
        {help.result.unit && `, ${help.result.unit}`}
      </p>
      {help.rule && (
        <>
          <h3>Rule</h3>
          <p class="guide-rule">{help.rule}</p>
        </>
      )}
      <Listed title="Take care" items={help.cautions} kind="caution" />
      <Listed title="Notes" items={[...help.notes, ...(help.inXlsx ? [exported[help.inXlsx]] : [])]} />
      {help.examples.length > 0 && <h3>Examples</h3>}
      <ul>
        {help.examples.map((example) => (
          <li key={example.formula} class="guide-example">
            <code class="formula">{example.formula}</code>
            <span>gives {givesText(example.gives, help.result.unit)}</span>
            <button type="button" class="firm" onClick={() => insert(example.formula.replace(/^=/, ''))}>
              Insert formula
            </button>
            {example.says && <span class="soft">{example.says}</span>}
          </li>
        ))}
      </ul>
      <h3>Sources</h3>
      <ul>
        {help.sources.map((source) => (
          <li key={source.citation} class="guide-source">
            {source.citation} <span class="soft">({source.status})</span>
          </li>
        ))}
      </ul>
      {help.constants.length > 0 && (
        <>
          <h3>Constants</h3>
          <ul>
            {help.constants.map((one) => (
              <li key={one.name} class="guide-source">
                {one.name}: {typeof one.value === 'number' ? Number(one.value.toPrecision(6)) : one.value}{' '}
                {one.unit}{' '}
                <span class="soft">
                  {one.source.citation} ({one.source.status})
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {help.seeAlso.length > 0 && (
        <p class="guide-see">
          See also{' '}
          {help.seeAlso.map((name) => (
            <button
              key={name}
              type="button"
              class="link"
              onClick={() => {
                page.guide.value = name;
              }}
            >
              {name}
            </button>
          ))}
        </p>
      )}
    </article>
  );
}

/** What an XLSX export makes of a built-in function. */
const exported = {
  formula: 'An XLSX export writes the formula, where its arguments allow.',
  values: 'An XLSX export writes the values instead of the formula.',
};

/** What an example gives; angles of a degree and more in whole degrees, as the sheets show them. */
function givesText(gives: FunctionHelp['examples'][number]['gives'], unit: string): string {
  if (Array.isArray(gives)) return 'a table';
  return unit === 'deg' && typeof gives === 'number' && Math.abs(gives) >= 1 ? degrees(gives) : String(gives);
}

function Listed({ title, items, kind }: { title: string; items: readonly string[]; kind?: 'caution' }) {
  if (items.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      {items.map((item) => (
        <p key={item} class={kind}>
          {item}
        </p>
      ))}
    </>
  );
}

/** The function applied to the row that is chosen, where the row has something for it. */
function Live({ name, insert }: { name: string; insert: (formula: string) => void }) {
  const page = usePage();
  const example = useSignal<LiveExample | null>(null);
  const asked = useRef(0);
  const at = useRef('');
  useSignalEffect(() => {
    const { cell, outline } = page;
    const place = cell.value?.place;
    const turn = ++asked.current;
    if (at.current !== name) example.value = null;
    at.current = name;
    if (!outline.value || place?.row === undefined) return;
    page.service.example(name, { ...place, row: place.row }).then(
      (answer) => {
        if (turn === asked.current) example.value = answer;
      },
      () => {
        // A formula that hung is told by the worker's own notice.
        example.value = null;
      },
    );
  });
  const now = example.value;
  if (!now) return null;
  return (
    <section class="guide-live" aria-label={now.title ? `For ${now.title}` : 'Example'}>
      <p>
        {now.title ? `For ${now.title}` : 'Example'}:{' '}
        <b class={now.error ? 'live-error' : undefined}>{now.result}</b>
      </p>
      <code class="formula">= {now.formula}</code>
      {now.standIns.length > 0 && (
        <p class="soft">This row has no {now.standIns.join(', ')}: a typical value is used.</p>
      )}
      <button type="button" class="firm" onClick={() => insert(now.formula)}>
        Insert formula
      </button>
    </section>
  );
}

function putIntoLine(page: Page, text: string): void {
  if (page.line.current) page.line.current.insert(text);
  else say(page, 'Select a cell or a column first. The formula goes into the line above the sheet.');
}
