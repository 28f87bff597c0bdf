/** A select with a label that is heard and not seen. */
interface Props {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly change: (value: string) => void;
  readonly disabled?: boolean;
}

/** One of some choices, with its label for those who do not see where it stands. */
export function Select({ label, value, options, change, disabled }: Props) {
  return (
    <select
      aria-label={label}
      value={value}
      disabled={disabled}
      onChange={(event) => change(event.currentTarget.value)}
    >
      {options.map(([one, words]) => (
        <option key={one} value={one}>
          {words}
        </option>
      ))}
    </select>
  );
}
