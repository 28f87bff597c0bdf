import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { Page as AboutPage } from '../../../functions/core/pages/page.ts';
import { guides } from '../../guides/index.ts';
import { openGuide } from '../guides/open-guide.ts';
import { StepByStep } from '../guides/StepByStep.tsx';
import { usePage } from '../state/context.ts';
import { builtInHelp, functionHelp, helpNamed, loadBuiltIns, loadFunctions } from '../state/functions.ts';
import { AboutNumbers } from './AboutNumbers.tsx';
import { FunctionPage } from './FunctionPage.tsx';
import { answering } from './search.ts';

/** Heading of the functions that are not the domain's. */
const STANDARD = 'Standard functions';
/** So many of them are listed for a question. */
const LISTED = 12;

const byFamily = (all: readonly FunctionHelp[]): readonly Group[] =>
  [...new Set(all.map(({ family }) => family))].map((heading) => ({
    heading,
    functions: all.filter(({ family }) => family === heading),
  }));

interface Group {
  readonly heading: string;
  readonly functions: readonly FunctionHelp[];
}

/** The functions by family, found by what one wants; each with its rule, sources and examples; the pages about the numbers. */
export function Guide() {
  const page = usePage();
  const typed = useSignal('');
  const pages = useSignal<readonly AboutPage[]>([]);
  const about = useSignal<string | null>(null);
  useEffect(() => {
    void loadFunctions(page);
    void loadBuiltIns(page);
    void import('../../../functions/core/pages/index.ts').then((all) => {
      pages.value = all.pages;
    });
  }, [page, pages]);
  const way = guides.find(({ id }) => id === page.way.value?.guide);
  const open = (name: string) => {
    page.guide.value = name;
  };
  const shown = page.guide.value === null ? undefined : helpNamed(page.guide.value);
  if (shown) return <FunctionPage help={shown} />;
  if (way) return <StepByStep guide={way} />;
  const aboutPage = pages.value.find(({ id }) => id === about.value);
  if (aboutPage)
    return (
      <AboutNumbers
        page={aboutPage}
        open={open}
        back={() => {
          about.value = null;
        }}
      />
    );
  const asked = typed.value.trim() !== '';
  const found = answering(functionHelp.value, typed.value);
  const standard = answering(builtInHelp.value, typed.value);
  const named = typed.value.trim().toUpperCase();
  const nameIsStandard = standard.some(({ name, aliases = [] }) => [name, ...aliases].includes(named));
  const own: Group = { heading: '', functions: found };
  const others: Group = { heading: STANDARD, functions: standard.slice(0, LISTED) };
  const answers = nameIsStandard ? [others, own] : [own, others];
  const groups = asked ? answers : [...byFamily(found), ...byFamily(standard)];
  return (
    <div class="guide">
      <label class="guide-ask">
        <span>What do you want to know?</span>
        <input
          type="search"
          placeholder="how much heel, real change, femur…"
          value={typed.value}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
          }}
        />
      </label>
      {!asked && (
        <nav class="guide-about" aria-label="Step by step">
          <h3>Step by step</h3>
          {guides.map(({ id, title }) => (
            <button key={id} type="button" class="firm" onClick={() => openGuide(page, id)}>
              {title}
            </button>
          ))}
        </nav>
      )}
      {!asked && (
        <nav class="guide-about" aria-label="About the numbers">
          <h3>About the numbers</h3>
          {pages.value.map(({ id, title }) => (
            <button
              key={id}
              type="button"
              class="firm"
              onClick={() => {
                about.value = id;
              }}
            >
              {title}
            </button>
          ))}
        </nav>
      )}
      <p class="unseen" aria-live="polite">
        {asked ? `${found.length + Math.min(standard.length, LISTED)} functions` : ''}
      </p>
      {groups.map(
        ({ heading, functions }) =>
          functions.length > 0 && (
            <section key={heading}>
              {heading && <h3>{heading[0]!.toUpperCase() + heading.slice(1)}</h3>}
              <ul>
                {functions.map((help) => (
                  <li key={help.name}>
                    <button type="button" class="guide-item" onClick={() => open(help.name)}>
                      <code>{help.name}</code>
                      <span>{help.summary}</span>
                    </button>
                  </li>
                ))}
              </ul>
            </section>
          ),
      )}
      {asked && found.length + standard.length === 0 && (
        <p class="panel-note">No function matches these words. Try fewer words, or another one.</p>
      )}
    </div>
  );
}
