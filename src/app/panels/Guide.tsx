import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { rank } from '../commands/rank.ts';
import { usePage } from '../shell/context.ts';
import { functionHelp, loadFunctions } from '../state/functions.ts';

const textOf = (help: FunctionHelp): string =>
  [help.name, help.summary, help.searchWords.join(' '), help.family].join(' ');

/** The functions by family, found by what one wants; each with its rule, sources and examples. */
export function Guide() {
  const page = usePage();
  const typed = useSignal('');
  useEffect(() => void loadFunctions(page), [page]);
  const all = functionHelp.value;
  const shown = all.find(({ name }) => name === page.guide.value);
  if (shown) return <FunctionPage help={shown} />;
  const found = rank(all, typed.value, textOf);
  const families = [...new Set(found.map(({ family }) => family))];
  return (
    <div class="guide">
      <input
        type="search"
        aria-label="Find a function"
        placeholder="What do you want to know? heel, lean, ratio…"
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
      />
      {families.map((family) => (
        <section key={family}>
          <h3>{family}</h3>
          <ul>
            {found
              .filter((help) => help.family === family)
              .map((help) => (
                <li key={help.name}>
                  <button
                    type="button"
                    class="guide-item"
                    onClick={() => {
                      page.guide.value = help.name;
                    }}
                  >
                    <code>{help.name}</code>
                    <span>{help.summary}</span>
                  </button>
                </li>
              ))}
          </ul>
        </section>
      ))}
      {found.length === 0 && <p class="panel-note">No function has these words. Try one of them alone.</p>}
    </div>
  );
}

function FunctionPage({ help }: { help: FunctionHelp }) {
  const page = usePage();
  const insert = (text: string) => {
    page.line.current?.insert(text);
  };
  return (
    <article class="guide-page">
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
      <p>{help.summary}</p>
      <pre class="formula">{help.signature}</pre>
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
                      ? '; may be left out'
                      : `; left out: ${parameter.fallback}`)}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Gives</h3>
      <p>
        {help.result.about}
        {help.result.unit && `, ${help.result.unit}`}
      </p>
      <h3>Rule</h3>
      <p class="guide-rule">{help.rule}</p>
      <Listed title="Take care" items={help.cautions} kind="caution" />
      <Listed title="Notes" items={help.notes} />
      <h3>Examples</h3>
      <ul>
        {help.examples.map((example) => (
          <li key={example.formula} class="guide-example">
            <code class="formula">{example.formula}</code>
            <span>gives {Array.isArray(example.gives) ? 'a table' : String(example.gives)}</span>
            <button type="button" class="firm" onClick={() => insert(example.formula.replace(/^=/, ''))}>
              Put into the line
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
                {one.name}: {one.value} {one.unit}{' '}
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
