/** What is asked before rows go anywhere: which sheet is meant, and whether rows from elsewhere are to be replaced. */
import type { Replacing, SettingsChoice } from '../../session/imports/file-reading.ts';
import type { FileImport } from './file-import.ts';
import { rowsInWords } from './import-words.ts';

/** The file fits several sheets or import settings equally well: nobody guesses. */
export function WhichSheet({ state, fits }: { state: FileImport; fits: readonly SettingsChoice[] }) {
  if (fits.length === 0) return null;
  const oneSheet = new Set(fits.map(({ sheet }) => sheet)).size === 1;
  return (
    <fieldset class="intake-question">
      <legend>
        {oneSheet
          ? `The file fits several import settings of ${fits[0]!.label}. Which should be used?`
          : 'The file fits several sheets. Which is it for?'}
      </legend>
      <div class="intake-choices">
        {fits.map(({ sheet, label, recipe, title }) => (
          <button
            key={`${sheet} ${recipe}`}
            type="button"
            class="firm"
            onClick={() => state.decideSheet(sheet, recipe)}
          >
            {!oneSheet && label}
            {title !== null && (
              <span class={oneSheet ? '' : 'soft'}>{oneSheet ? title : ` (settings “${title}”)`}</span>
            )}
            {title === null && <span class="soft"> (the sheet on screen)</span>}
          </button>
        ))}
        <button type="button" class="firm" onClick={() => state.decideSheet(null)}>
          A new sheet
        </button>
      </div>
    </fieldset>
  );
}

/** All rows of the sheet would go, and they did not come from this file. */
export function Replaced({
  state,
  sheet,
  replacing: { rows, files },
}: {
  state: FileImport;
  sheet: string;
  replacing: Replacing;
}) {
  return (
    <fieldset class="intake-question">
      <legend>
        Replace all {rowsInWords(rows)} of {sheet}?
      </legend>
      <p class="intake-asked">
        {files.length === 0
          ? 'They did not come from a file.'
          : `They came from ${files.slice(0, 4).join(', ')}${files.length > 4 ? ` and ${files.length - 4} more` : ''}.`}
      </p>
      <div class="intake-choices">
        <button type="button" class="firm" onClick={() => state.decide({ mode: 'append' })}>
          Add to them instead
        </button>
        <button type="button" class="firm" onClick={() => state.decideSheet(null)}>
          Import into a new sheet
        </button>
        <button type="button" class="firm" onClick={() => state.decide({ replace: true })}>
          Replace {rowsInWords(rows)}
        </button>
      </div>
    </fieldset>
  );
}
