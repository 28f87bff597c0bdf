import { useSignal } from '@preact/signals';
import { Decide, Field } from '../dialogues/Dialogue.tsx';
import { arrived } from './arriving.ts';
import type { FileImport } from './file-import.ts';

/** The first step: where the rows come from. */
export function ChooseFile({ state, close }: { state: FileImport; close: () => void }) {
  const text = useSignal('');
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        state.take([{ name: 'pasted rows', file: new Blob([text.value], { type: 'text/plain' }) }]);
      }}
    >
      <Field
        label="Files"
        hint="CSV or other separated text, XLSX or ODS; several are imported one after the other. Files can also be dropped anywhere on the page."
      >
        <input
          type="file"
          multiple
          accept=".csv,.tsv,.txt,.xlsx,.ods,text/csv"
          onChange={(event) => state.take([...(event.currentTarget.files ?? [])].map(arrived))}
        />
      </Field>
      <Field label="Or paste rows" hint="With their headings on top, as copied from a table.">
        <textarea
          rows={6}
          class="formula"
          spellcheck={false}
          value={text.value}
          onInput={(event) => {
            text.value = event.currentTarget.value;
          }}
        />
      </Field>
      <Decide label="Preview" close={close} disabled={text.value.trim() === ''} />
    </form>
  );
}
