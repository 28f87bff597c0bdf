import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { SheetOutline } from '../../session/api.ts';
import type { Import } from '../../session/imports/imports.ts';
import { writeMoment } from '../../units/date.ts';
import { Dialogue } from '../dialogues/Dialogue.tsx';
import { guarded } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { say, settle } from '../state/page.ts';
import { importFiles } from './file-import.ts';
import './intake.css';
import { countsOf, sizeInWords } from './import-words.ts';
import { UnreadableInSheet } from './UnreadableInSheet.tsx';

/** The files that were imported into a sheet, and the rows that were not. */
export function Imports({ sheet, close }: { sheet: SheetOutline; close: () => void }) {
  const page = usePage();
  const imports = useSignal<readonly Import[] | null>(null);
  const version = page.outline.value?.version;
  useEffect(() => {
    void guarded(page, async () => {
      imports.value = await page.service.imports(sheet.id);
      return true;
    });
  }, [sheet.id, version]);
  return (
    <Dialogue title={`Import history of ${sheet.label}`} close={close} wide>
      <div class="intake form">
        {imports.value?.length === 0 && (
          <>
            <p>
              No file was imported into this sheet yet. Its rows were entered, pasted or part of the book.
            </p>
            <div class="intake-choices">
              <button type="button" class="firm" onClick={() => importFiles(page)}>
                Import a file
              </button>
            </div>
          </>
        )}
        <UnreadableInSheet sheet={sheet} close={close} />
        {imports.value?.map((one) => (
          <One key={one.key} one={one} />
        ))}
        <footer class="decide">
          <button type="button" class="strong" onClick={close}>
            Close
          </button>
        </footer>
      </div>
    </Dialogue>
  );
}

const modes = { append: 'rows added', update: 'rows updated by key', replace: 'all rows replaced' } as const;

function One({ one }: { one: Import }) {
  const when = new Date(one.time);
  return (
    <section class="intake-import">
      <h3>
        {one.file || 'pasted rows'},{' '}
        {Number.isNaN(when.getTime()) ? one.time : writeMoment(when, { time: true })}
      </h3>
      <p>{countsOf(one)}.</p>
      <p class="soft">
        {sizeInWords(one.size)}; {modes[one.mode]};{' '}
        {one.recipe === null ? 'first import' : `by the import settings ${one.recipe}`}; SHA-256{' '}
        <code title={one.hash}>{one.hash.slice(0, 12)}</code>
      </p>
      {one.apart.length > 0 && (
        <details class="intake-part">
          <summary>Lines that are not rows: {one.apart.length}</summary>
          <ul class="intake-held">
            {one.apart.map(({ line, raw, as }) => (
              <li key={line}>
                <span class="soft">
                  line {line}, {as === 'footer' ? 'at the end' : 'before the headings'}
                </span>{' '}
                <code>{raw}</code>
              </li>
            ))}
          </ul>
        </details>
      )}
      {one.heldRows.length > 0 && <HeldRows one={one} />}
    </section>
  );
}

/** Rows that were not imported, to be copied out or fixed. */
function HeldRows({ one }: { one: Import }) {
  const page = usePage();
  const texts = useSignal<Readonly<Record<number, string>>>({});
  const said = useSignal<string | null>(null);
  const shown = one.heldRows.slice(0, 100);
  const changed = shown.flatMap(({ raw }, index) => {
    const text = texts.value[index];
    return text === undefined || text === raw ? [] : [{ index, text }];
  });
  const release = async (event: Event) => {
    event.preventDefault();
    if (changed.length === 0) return;
    await guarded(page, async () => {
      const done = await page.service.mendRows(one.key, changed);
      if (!settle(page, done)) return false;
      const after = (await page.service.imports(page.sheetId.value ?? '')).find(({ key }) => key === one.key);
      const placed = one.heldRows.length - (after?.heldRows.length ?? 0);
      said.value =
        placed === changed.length
          ? `${placed} imported.`
          : `${placed} imported; ${changed.length - placed} still not, for the reason beside it.`;
      texts.value = {};
      return true;
    });
  };
  const copy = () =>
    guarded(page, async () => {
      await navigator.clipboard.writeText(one.heldRows.map(({ raw }) => raw).join('\n'));
      say(page, `Copied ${one.heldRows.length} rows`);
      return true;
    });
  return (
    <form class="form" onSubmit={(event) => void release(event)}>
      <h4>Rows not imported: {one.heldRows.length}</h4>
      <ul class="intake-mend">
        {shown.map(({ line, raw, reason }, index) => (
          <li key={`${line} ${raw}`}>
            <span class="soft">line {line}</span>
            <textarea
              class="formula"
              rows={Math.min(3, raw.split('\n').length)}
              spellcheck={false}
              aria-label={`Row of line ${line}`}
              value={texts.value[index] ?? raw}
              onInput={(event) => {
                texts.value = { ...texts.value, [index]: event.currentTarget.value };
              }}
            />
            <span>{reason}</span>
          </li>
        ))}
      </ul>
      {one.heldRows.length > shown.length && (
        <p class="soft">and {one.heldRows.length - shown.length} more after these</p>
      )}
      <p role="status">{said.value}</p>
      <div class="intake-choices">
        <button type="submit" class="firm" disabled={changed.length === 0}>
          Import {changed.length || ''} fixed
        </button>
        <button type="button" class="firm" onClick={() => void copy()}>
          Copy all of them
        </button>
      </div>
    </form>
  );
}
