/** The dialogue of a setting: the name and label of a cell. */
import { useSignal } from '@preact/signals';
import type { Place } from '../../session/api.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { Decide, Dialogue, Field } from './Dialogue.tsx';

interface Props {
  readonly place: Required<Place>;
  /** Its name now, if it has one. */
  readonly name: string | null;
  readonly close: () => void;
}

/** Gives a cell a name, gives it another one (formulas follow), or takes it away. */
export function NameForm({ place, name, close }: Props) {
  const page = usePage();
  const typed = useSignal(name ?? '');
  const submit = async (event: Event) => {
    event.preventDefault();
    const to = typed.value.trim();
    const done = await run(
      page,
      name === null
        ? { do: 'name-cell', ...place, name: to }
        : to === ''
          ? { do: 'remove-name', name }
          : { do: 'rename-name', name, to },
    );
    if (done) close();
  };
  return (
    <Dialogue title={name === null ? 'New setting' : `Setting ${name}`} close={close}>
      <form class="form" onSubmit={(event) => void submit(event)}>
        <Field
          label="Name"
          hint={
            name === null
              ? 'Formulas anywhere in the book can use this name.'
              : 'Formulas follow a new name. Leave empty to remove the setting.'
          }
        >
          <input
            class="formula"
            spellcheck={false}
            value={typed.value}
            onInput={(event) => {
              typed.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Decide
          label={name === null ? 'Save setting' : 'Save changes'}
          close={close}
          disabled={name === null && typed.value.trim() === ''}
        />
      </form>
    </Dialogue>
  );
}
