import { command } from '../commands/all.ts';
import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';

/** Over a sample that nobody has changed yet: what it is, and how to start a book of one's own. */
export function SampleStrip() {
  const page = usePage();
  const sheet = page.sheet.value;
  const kept = page.keeping.value?.id !== undefined;
  if (!page.sample.value || kept) return null;
  return (
    <section class="strip sample" aria-label="Sample book">
      <Icon name="figure" />
      <p>
        {sheet?.rows === 0 && sheet.purpose === 'gathered' ? (
          'A sample without rows: its notes say which files to import.'
        ) : (
          <>
            A sample with invented people.{' '}
            <span class="strip-more">
              Select a lifter to see the figure; change a length, and the lean changes with it.
            </span>
          </>
        )}
      </p>
      <button type="button" class="firm" onClick={() => void command('books').run(page)}>
        Start your own book
      </button>
      <button
        type="button"
        class="tool"
        aria-label="Close"
        title="Close"
        onClick={() => {
          page.sample.value = false;
        }}
      >
        <Icon name="close" />
      </button>
    </section>
  );
}
