/** The panel that says how a cell came about, step by step. */
import { useSignal, useSignalEffect } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import type { Source } from '../../../functions/core/source.ts';
import type { Relative, Working as Told, WorkingCall } from '../../session/working/working-answers.ts';
import { Explained } from '../figure/Explained.tsx';
import { goTo } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';
import './working.css';

const fromInWords = {
  blank: 'This cell is blank.',
  value: 'Entered or imported.',
  held: 'Unreadable: the text does not fit the column.',
  'column formula': 'The column formula, for this row.',
  'own formula': 'A formula for this cell only.',
} as const;

/** How the active cell came about. Asks the session again whenever the cell or the book changes. */
export function Working() {
  const page = usePage();
  const told = useSignal<Told | null>(null);
  const failed = useSignal<string | null>(null);
  const asked = useRef(0);
  useSignalEffect(() => {
    const { cell, outline } = page;
    const at = cell.value?.place;
    const turn = ++asked.current;
    if (!outline.value || at?.row === undefined) {
      told.value = null;
      return;
    }
    page.service.working({ ...at, row: at.row }).then(
      (answer) => {
        if (turn !== asked.current) return;
        told.value = answer;
        failed.value = null;
      },
      (reason: unknown) => {
        if (turn === asked.current) failed.value = reason instanceof Error ? reason.message : String(reason);
      },
    );
  });
  if (failed.value !== null) return <p class="panel-note">{failed.value}</p>;
  const now = told.value;
  if (!now) return <p class="panel-note">Select a cell to see how its value was computed.</p>;
  return (
    <div class="working">
      <div class="working-head">
        <h3 class="figure-title">{now.title}</h3>
        <button type="button" class="firm" onClick={() => void copy(page, now.text)}>
          Copy as text
        </button>
      </div>
      <p class="working-value">
        {now.display || <span class="soft">blank</span>}
        {now.display && now.unit && <span class="soft">{now.unit === '°' ? '°' : ` ${now.unit}`}</span>}
      </p>
      <p>
        {fromInWords[now.from]}
        {now.name && (
          <>
            {' '}
            Its name is <code class="formula">{now.name}</code>.
          </>
        )}
      </p>
      {now.sentence && <p class="working-sentence">{now.sentence}</p>}
      {now.marked?.map((words) => (
        <p key={words} class="soft">
          {words}
        </p>
      ))}
      {now.columnFormula !== undefined && (
        <p class="panel-note">
          This value overrides the column formula: <code class="formula">= {now.columnFormula}</code>
        </p>
      )}
      {now.doubts.filter((doubt) => doubt !== now.sentence).length > 0 && (
        <Section title="Checks">
          {now.doubts
            .filter((doubt) => doubt !== now.sentence)
            .map((doubt) => (
              <p key={doubt} class="working-sentence">
                {doubt}
              </p>
            ))}
        </Section>
      )}
      {now.formula !== undefined && (
        <Section title="Formula">
          <pre class="formula working-formula">= {now.formula}</pre>
          <p class="soft">with the values of this row</p>
          <pre class="formula working-formula">= {now.filled}</pre>
        </Section>
      )}
      {now.calls.map((call, index) => (
        <CallSteps key={index} call={call} page={page} />
      ))}
      {now.explained && <Explained explained={now.explained} />}
      {now.cautions.length > 0 && (
        <Section title="Take care">
          {now.cautions.map((caution) => (
            <p key={caution} class="caution">
              {caution}
            </p>
          ))}
        </Section>
      )}
      <Jumps title="Came from" places={now.cameFrom} page={page} />
      <Jumps title="Used by" places={now.usedBy} page={page} />
      {now.constants.length > 0 && (
        <details>
          <summary>Constants ({now.constants.length})</summary>
          <dl class="working-constants">
            {now.constants.map(({ name, text, source }) => (
              <div key={name}>
                <dt>
                  {name}: <b>{text}</b>
                </dt>
                <dd>
                  <Cited source={source} />
                </dd>
              </div>
            ))}
          </dl>
        </details>
      )}
      {now.sources.length > 0 && (
        <details>
          <summary>Sources ({now.sources.length})</summary>
          <ul>
            {now.sources.map((source) => (
              <li key={source.citation} class="guide-source">
                <Cited source={source} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

function Cited({ source: { citation, status } }: { source: Source }) {
  return (
    <>
      {citation} <span class="source-status">{status}</span>
    </>
  );
}

function Section({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section>
      <h4>{title}</h4>
      {children}
    </section>
  );
}

/** One call of a function: what went in, the steps, what came out. */
function CallSteps({ call, page }: { call: WorkingCall; page: Page }) {
  return (
    <section class="working-call">
      <h4>
        <button
          type="button"
          class="link"
          title={call.summary}
          onClick={() => {
            page.guide.value = call.function;
            page.side.value = 'guide';
          }}
        >
          {call.function}
        </button>
        <span class="working-result">{call.result}</span>
      </h4>
      {call.sentence && <p class="working-sentence">{call.sentence}</p>}
      {call.steps.length > 0 ? (
        <ol class="steps">
          {call.steps.map(({ name, symbol, rule, text }, index) => (
            <li key={index}>
              <span>
                {name} {symbol && <i>{symbol}</i>}
              </span>
              <b>{text}</b>
              {rule && <code>{rule}</code>}
            </li>
          ))}
        </ol>
      ) : (
        !call.sentence && <p class="soft guide-rule">{call.rule}</p>
      )}
    </section>
  );
}

function Jumps({ title, places, page }: { title: string; places: readonly Relative[]; page: Page }) {
  if (places.length === 0) return null;
  return (
    <Section title={title}>
      <ul class="jumps">
        {places.map(({ place, label, text }) => (
          <li key={JSON.stringify(place)}>
            <button type="button" onClick={() => goTo(page, place)}>
              <span>{label}</span>
              <span class="soft">{text}</span>
            </button>
          </li>
        ))}
      </ul>
    </Section>
  );
}

async function copy(page: Page, text: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
    say(page, 'Working copied.');
  } catch {
    say(page, 'The browser blocked copying. Select the text and copy it yourself.', 'wrong');
  }
}
