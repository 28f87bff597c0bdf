import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Page as AboutPage } from '../../../functions/core/pages/page.ts';
import { guides } from '../../guides/index.ts';
import { openGuide } from '../guides/open-guide.ts';
import { StepByStep } from '../guides/StepByStep.tsx';
import { usePage } from '../state/context.ts';
import { functionHelp, loadFunctions } from '../state/functions.ts';
import { AboutNumbers } from './AboutNumbers.tsx';
import { FunctionPage } from './FunctionPage.tsx';
import { answering } from './search.ts';

/** The functions by family, found by what one wants; each with its rule, sources and examples; the pages about the numbers. */
export function Guide() {
  const page = usePage();
  const typed = useSignal('');
  const pages = useSignal<readonly AboutPage[]>([]);
  const about = useSignal<string | null>(null);
  useEffect(() => {
    void loadFunctions(page);
    void import('../../../functions/core/pages/index.ts').then((all) => {
      pages.value = all.pages;
    });
  }, [page, pages]);
  const way = guides.find(({ id }) => id === page.way.value?.guide);
  const all = functionHelp.value;
  const open = (name: string) => {
    page.guide.value = name;
  };
  const shown = all.find(({ name }) => name === page.guide.value);
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
  const found = answering(all, typed.value);
  const families = asked ? [''] : [...new Set(found.map(({ family }) => family))];
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
        {asked ? `${found.length} functions` : ''}
      </p>
      {families.map((family) => (
        <section key={family}>
          {family && <h3>{family[0]!.toUpperCase() + family.slice(1)}</h3>}
          <ul>
            {found
              .filter((help) => !family || help.family === family)
              .map((help) => (
                <li key={help.name}>
                  <button type="button" class="guide-item" onClick={() => open(help.name)}>
                    <code>{help.name}</code>
                    <span>{help.summary}</span>
                  </button>
                </li>
              ))}
          </ul>
        </section>
      ))}
      {asked && found.length === 0 && (
        <p class="panel-note">No function matches these words. Try fewer words, or another one.</p>
      )}
    </div>
  );
}
