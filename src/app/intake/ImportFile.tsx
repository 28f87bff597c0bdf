import { useEffect, useRef } from 'preact/hooks';
import type { Stuck } from '../../session/imports/file-reading.ts';
import { Dialogue } from '../dialogues/Dialogue.tsx';
import { usePage } from '../state/context.ts';
import { ChooseFile } from './ChooseFile.tsx';
import { type FileImport, fileImport } from './file-import.ts';
import { ImportReport } from './ImportReport.tsx';
import './intake.css';
import { sizeInWords } from './import-words.ts';
import { LookAtFile } from './LookAtFile.tsx';

/** Brings table files in, one after the other: choose, look and decide, report. */
export function ImportFile({ close }: { close: () => void }) {
  const { value: state } = fileImport;
  if (!state) return null;
  const leave = () => {
    state.stop();
    fileImport.value = null;
    close();
  };
  return (
    <Dialogue title={titleOf(state)} close={leave} wide>
      <Step state={state} close={leave} />
    </Dialogue>
  );
}

function titleOf({ now, done }: FileImport): string {
  if (done.value) return 'Import finished';
  return now.value ? `Import ${now.value.name}` : 'Import a file';
}

function Step({ state, close }: { state: FileImport; close: () => void }) {
  const page = usePage();
  const top = useRef<HTMLDivElement>(null);
  const { now, done, reading, problem, busy, waiting } = state;
  const step = done.value ? 'report' : now.value ? 'look' : 'choose';
  // What had the focus is gone with the step before.
  useEffect(() => {
    if (step !== 'choose') top.current?.focus();
  }, [step, now.value]);
  const progress = page.progress.value;
  return (
    <div class="intake" ref={top} tabIndex={-1}>
      {step === 'report' && done.value && <ImportReport state={state} done={done.value} close={close} />}
      {step === 'choose' && <ChooseFile state={state} close={close} />}
      {step === 'look' && (
        <>
          <p class="soft">
            {now.value && sizeInWords(now.value.file.size)}
            {waiting.value.length > 0 && `; after it: ${waiting.value.map(({ name }) => name).join(', ')}`}.
            Nothing changes until you import.
          </p>
          <div role="status" class="intake-status">
            {busy.value && (
              <p>
                <span>{progress?.about ?? 'reading'}…</span>
                {progress && <progress value={progress.share} aria-label="Progress" />}
              </p>
            )}
          </div>
          {problem.value && <Problem state={state} sentence={problem.value} stuck={state.stuck.value} />}
          {reading.value ? (
            <LookAtFile state={state} reading={reading.value} close={close} />
          ) : (
            <footer class="decide">
              {waiting.value.length > 0 && (
                <button type="button" class="firm" onClick={() => state.next()}>
                  Skip this file
                </button>
              )}
              <button type="button" class="firm" onClick={close}>
                Cancel
              </button>
            </footer>
          )}
        </>
      )}
    </div>
  );
}

/** Other import settings that are offered, at most. */
const MOST = 6;

/** Why a file cannot be imported as it was asked, and what can be done instead: never a dead end. */
function Problem({ state, sentence, stuck }: { state: FileImport; sentence: string; stuck: Stuck | null }) {
  return (
    <div class="intake-problem" role="alert">
      <p>{sentence}</p>
      <div class="intake-choices">
        {stuck?.sheet && (
          <button type="button" class="firm" onClick={() => state.decideSheet(null)}>
            Import into a new sheet
          </button>
        )}
        {stuck?.sheet && stuck.title !== null && (
          <button
            type="button"
            class="firm"
            onClick={() => state.decide({ sheet: stuck.sheet!.id, recipe: null })}
          >
            Match columns of {stuck.sheet.label} by heading
          </button>
        )}
        {stuck?.sheet && stuck.title === null && (
          <button
            type="button"
            class="firm"
            onClick={() => state.decide({ sheet: stuck.sheet!.id, recipe: null, rest: 'add' })}
          >
            Add its columns to {stuck.sheet.label}
          </button>
        )}
        {stuck?.others.slice(0, MOST).map(({ sheet, recipe, title }) => (
          <button key={recipe} type="button" class="firm" onClick={() => state.decideSheet(sheet, recipe)}>
            Use the settings “{title}”
          </button>
        ))}
        <button type="button" class="firm" onClick={() => void state.read()}>
          Read the file again
        </button>
      </div>
    </div>
  );
}
