/** What came of an import. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Doubt } from '../../session/api.ts';
import { guarded } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { type Page, settle } from '../state/page.ts';
import type { FileImport, ImportDone } from './file-import.ts';
import { HeldList } from './ImportPreview.tsx';
import { countsOf } from './import-words.ts';
import { UnreadableInSheet } from './UnreadableInSheet.tsx';

interface Props {
  readonly state: FileImport;
  readonly done: ImportDone;
  readonly close: () => void;
}

/** The last step: what came in, what is held and why, with ways there. */
export function ImportReport({ state, done: { reading, sheet }, close }: Props) {
  const page = usePage();
  const settings = useSignal<readonly Doubt[]>([]);
  const version = page.outline.value?.version;
  useEffect(() => {
    void page.service.doubts().then((doubts) => {
      settings.value = doubts.filter(({ about, accepted }) => about === 'setting' && !accepted);
    });
  }, [sheet, version]);
  const into = page.outline.value?.sheets.find(({ id }) => id === sheet);
  const next = state.waiting.value[0];
  return (
    <div class="form">
      <p>
        <strong>{reading.name}</strong> was imported into <strong>{into?.label}</strong>.
      </p>
      <p class="intake-counts">{countsOf(reading)}</p>
      {settings.value.map(({ key, sentence, choices, place }) => (
        <section key={key} class="intake-question">
          <p>{sentence}</p>
          <div class="intake-choices">
            {choices?.map((text) => (
              <button key={text} type="button" class="firm" onClick={() => void enter(page, place, text)}>
                Use {text}
              </button>
            ))}
          </div>
        </section>
      ))}
      {into && <UnreadableInSheet sheet={into} close={close} />}
      {reading.heldRows.length > 0 && (
        <section>
          <h3>Rows not imported</h3>
          <HeldList rows={reading.heldRows} />
          <div class="intake-choices">
            <button
              type="button"
              class="firm"
              onClick={() => {
                close();
                page.dialogue.value = { is: 'imports', sheet };
              }}
            >
              Fix them
            </button>
          </div>
        </section>
      )}
      <p class="soft">Undo reverses the whole import.</p>
      <footer class="decide">
        {next ? (
          <>
            <button type="button" class="firm" onClick={close}>
              Stop here
            </button>
            <button type="button" class="strong" onClick={() => state.next()}>
              Continue with {next.name}
            </button>
          </>
        ) : (
          <button type="button" class="strong" onClick={close}>
            Done
          </button>
        )}
      </footer>
    </div>
  );
}

/** Enters one of the texts that were found into a setting. */
const enter = (page: Page, { sheet, column, row }: Doubt['place'], text: string) =>
  guarded(page, async () =>
    settle(
      page,
      await page.service.run({ do: 'set-cells', sheet, row: row ?? 0, columns: [column!], texts: [[text]] }),
    ),
  );
