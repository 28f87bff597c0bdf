import type { Figure } from '../../session/api.ts';
import { goTo } from '../state/actions.ts';
import { usePage } from '../state/context.ts';

/** Above the figure: the athlete, what the model says in one sentence, and the way to how it was calculated. */
export function Headline({ figure: { title, of, headline, leanColumn, sheet, row } }: { figure: Figure }) {
  const page = usePage();
  return (
    <header class="figure-headline">
      <h3 class="figure-title">{title}</h3>
      {of !== null && <p class="soft">Measured in {of}.</p>}
      {headline !== null && (
        <p>
          {headline}{' '}
          {leanColumn !== null && (
            <button
              type="button"
              class="link"
              onClick={() => {
                goTo(page, { sheet, column: leanColumn, row });
                page.side.value = 'working';
              }}
            >
              How was this calculated?
            </button>
          )}
        </p>
      )}
    </header>
  );
}
