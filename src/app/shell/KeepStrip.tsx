import { command } from '../commands/all.ts';
import { openKept } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';

/** Says when the work is not saved or another tab writes the book, with what to do. */
export function KeepStrip() {
  const page = usePage();
  const keeping = page.keeping.value;
  if (!keeping || (keeping.state !== 'not kept' && keeping.state !== 'reading')) return null;
  const { id, state, sentence } = keeping;
  return (
    <section class="strip wrong" aria-label="Saving of the book">
      <Icon name="doubts" />
      <p>{sentence}</p>
      {state === 'reading' && id !== undefined ? (
        <button type="button" class="firm" onClick={() => void openKept(page, id, true)}>
          Take over here
        </button>
      ) : (
        <>
          <button type="button" class="firm" onClick={() => void command('save-book').run(page)}>
            Save to a file
          </button>
          <button type="button" class="firm" onClick={() => void page.service.keepAgain()}>
            Try again
          </button>
        </>
      )}
    </section>
  );
}
