/** A dialogue that says what something would do, before it is done. */
import { Decide, Dialogue } from './Dialogue.tsx';

interface Props {
  readonly title: string;
  readonly text: string;
  readonly label: string;
  readonly act: () => void;
  readonly close: () => void;
}

/** Says what something would do before it is done. */
export function Confirm({ title, text, label, act, close }: Props) {
  return (
    <Dialogue title={title} close={close}>
      <form
        class="form"
        onSubmit={(event) => {
          event.preventDefault();
          close();
          act();
        }}
      >
        <p>{text}</p>
        <Decide label={label} close={close} />
      </form>
    </Dialogue>
  );
}
