import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';
import { newer, takeNewer } from './offline.ts';

/** Says that a newer Leverbook is at hand. It never comes by itself while a book is open. */
export function UpdateStrip() {
  const page = usePage();
  if (newer.value === null) return null;
  return (
    <section class="strip" aria-label="Newer version" role="status">
      <Icon name="redo" />
      <p>
        {newer.value === 'waits'
          ? 'A newer Leverbook is ready. Reload the page when it suits you.'
          : 'Another tab uses a newer Leverbook. Reload this page when it suits you.'}{' '}
        The book is saved first and opens again.
      </p>
      <button type="button" class="firm" onClick={() => void takeNewer(page)}>
        Save and reload
      </button>
      <button
        type="button"
        class="tool"
        aria-label="Later"
        title="Later"
        onClick={() => {
          newer.value = null;
        }}
      >
        <Icon name="close" />
      </button>
    </section>
  );
}
