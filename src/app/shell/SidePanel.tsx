/** The panel on the right, with its tabs. */
import { FigurePanel } from '../figure/FigurePanel.tsx';
import { Doubts } from '../panels/Doubts.tsx';
import { Guide } from '../panels/Guide.tsx';
import '../panels/panels.css';
import { Working } from '../panels/Working.tsx';
import { usePage } from '../state/context.ts';
import type { Side } from '../state/page.ts';
import { Icon } from '../theme/icons.tsx';
import { Later } from './Later.tsx';

const picturePanel = () => import('../picture/PicturePanel.tsx').then(({ PicturePanel }) => PicturePanel);

export const sides: readonly { readonly id: Side; readonly title: string }[] = [
  { id: 'figure', title: 'Figure' },
  { id: 'picture', title: 'Picture' },
  { id: 'working', title: 'Working' },
  { id: 'guide', title: 'Guide' },
  { id: 'doubts', title: 'Checks' },
];

/** The panel on the right; on narrow screens a sheet from below. */
export function SidePanel() {
  const page = usePage();
  const side = page.side.value;
  const doubts = page.outline.value?.doubts ?? 0;
  return (
    <aside class="side" data-part="side" aria-label="Beside the sheet">
      <div class="tabs">
        <div class="tab-list" role="tablist" aria-label="Beside the sheet">
          {sides.map(({ id, title }) => (
            <button
              key={id}
              type="button"
              role="tab"
              id={`tab-${id}`}
              aria-selected={side === id}
              aria-controls="side-content"
              onClick={() => {
                page.side.value = id;
              }}
              onKeyDown={(event) => {
                const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
                if (!step) return;
                const next =
                  sides[(sides.findIndex((one) => one.id === id) + step + sides.length) % sides.length]!;
                page.side.value = next.id;
                document.getElementById(`tab-${next.id}`)?.focus();
              }}
              tabIndex={side === id || (side === null && id === 'figure') ? 0 : -1}
            >
              {title}
              {id === 'doubts' && doubts > 0 && <span class="count">{doubts}</span>}
            </button>
          ))}
        </div>
        {side && (
          <button
            type="button"
            class="tool close"
            aria-label="Close"
            title="Close"
            onClick={() => {
              page.side.value = null;
            }}
          >
            <Icon name="close" />
          </button>
        )}
      </div>
      {side && (
        <div
          id="side-content"
          class="side-content"
          role="tabpanel"
          aria-labelledby={`tab-${side}`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a panel that scrolls must be reachable by keyboard
          tabIndex={0}
        >
          {side === 'figure' && <FigurePanel />}
          {side === 'picture' && <Later load={picturePanel} of={{}} />}
          {side === 'working' && <Working />}
          {side === 'guide' && <Guide />}
          {side === 'doubts' && <Doubts />}
        </div>
      )}
    </aside>
  );
}
