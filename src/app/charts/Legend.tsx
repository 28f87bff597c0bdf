/** Marks drawn like those of the chart, 12 × 12. */
const marks = [
  'M6 1.5a4.500 4.500 0 1 0 0 9 4.500 4.500 0 0 0 0-9z',
  'M6 1 11 10H1z',
  'M2 2h8v8H2z',
  'M6 .5 11.500 6 6 11.500.5 6z',
  'M4 1h4v3h3v4H8v3H4V8H1V4h3z',
  'M4.500 6.500V11h3V6.500L11 4 9.500 1.500 6 4 2.500 1.500 1 4z',
];

/** Groups by shape and colour. */
export function Legend({ groups }: { groups: readonly string[] }) {
  const shown = groups.slice(0, 24);
  return (
    <ul class="chart-legend" aria-label="Groups">
      {shown.map((name, index) => (
        <li key={name}>
          <svg viewBox="0 0 12 12" class={`chart-mark of-${(index % 6) + 1}`} aria-hidden="true">
            <path d={marks[index % marks.length]} />
          </svg>
          {name}
        </li>
      ))}
      {groups.length > shown.length && <li>and {groups.length - shown.length} more</li>}
    </ul>
  );
}
