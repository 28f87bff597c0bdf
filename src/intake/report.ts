import type { ColumnFinding, ColumnReport, Findings, Report } from './api.ts';
import { ConstantColumnBuilder } from './cells/index.ts';
import { listed } from './listed.ts';
import { differencesInWords, type Plan } from './merge/index.ts';
import type { Chosen, Placed, Placing } from './place/index.ts';
import { type Note, note } from './sentences/index.ts';

/** What came of every line and every column of the file. */
export function reportOf(
  placing: Placing,
  plan: Plan,
  chosen: Chosen,
  findings: Findings,
  columnNotes: readonly (readonly Note[])[],
  further: readonly Note[],
): Report {
  const held = placing.heldRows.length + plan.held.length;
  const columns: ColumnReport[] = placing.placed.map((p, i) => columnReport(p, chosen, columnNotes[i]!));
  for (const { source, column } of chosen.computed)
    columns.push({
      ...leftOut(source),
      notes: [note('computed-column', { heading: source.heading, column: column.name })],
    });
  for (const source of chosen.units)
    columns.push({
      ...leftOut(source),
      notes: [
        note('units-taken', {
          heading: source.heading || source.label,
          columns: listed(unitNumbers(source, findings)),
        }),
      ],
    });
  for (const source of chosen.leftOut) columns.push({ ...leftOut(source), notes: [] });
  return {
    name: findings.name,
    lines: {
      total: placing.read,
      preamble: placing.preamble,
      headings: placing.headings,
      blank: placing.blank,
      repeatedHeadings: placing.repeated,
      footer: placing.footer,
      rows: placing.rowLines,
    },
    rows: {
      in: placing.rows + placing.heldRows.length,
      placed: plan.added + plan.updated + plan.unchanged + plan.left,
      held,
      added: plan.added,
      updated: plan.updated,
      unchanged: plan.unchanged,
      left: plan.left,
    },
    cells: {
      filled: placing.placed.reduce((n, { builder }) => n + builder.filled, 0),
      held: placing.placed.reduce((n, { builder }) => n + builder.held.size, 0) - plan.heldAside,
    },
    columns,
    apart: placing.apart,
    notes: [
      ...findings.notes.filter((n) => !isSettled(n, placing)),
      ...generalNotes(placing, plan, chosen, findings, held),
      ...further,
      ...columns.flatMap((c) => c.notes),
    ],
  };
}

const unitNumbers = ({ unitsOf }: ColumnFinding, { columns }: Findings): string[] =>
  (unitsOf?.value ?? []).map((at) => columns[at]!.heading || columns[at]!.label);

/** A doubt about a column that a recipe or a choice has settled, or that feeds nothing. */
function isSettled({ reason, details }: Note, placing: Placing): boolean {
  if (reason !== 'column-doubt') return false;
  if (details.about === 'unitsOf')
    return placing.placed.some(({ match }) => match.how?.unitsIn === details.heading);
  if (details.about === 'rowIsSet') return false;
  const placed = placing.placed.find(
    ({ match: { source } }) => (source.heading || source.label) === details.heading,
  );
  // Times are read only where the column measures durations; elsewhere they are unreadable.
  if (details.about === 'clock' && placed && placed.match.column.dimension !== 'duration') return true;
  const how = placed?.match.how;
  if (!how) return placed === undefined;
  return details.about === 'decimal'
    ? how.decimal !== undefined
    : details.about === 'dateOrder'
      ? how.dateOrder !== undefined
      : how.clock !== undefined;
}

function generalNotes(
  placing: Placing,
  plan: Plan,
  chosen: Chosen,
  findings: Findings,
  held: number,
): Note[] {
  const notes: Note[] = [];
  const shape = findings.shape.value;
  if (shape)
    notes.push(
      note(shape.to === 'long' ? 'made-long' : 'made-wide', {
        rows: placing.sourceRows,
        made: placing.rows,
        name: shape.name ?? findings.shape.value?.name ?? 'repeat',
      }),
    );
  if (chosen.leftOut.length > 0)
    notes.push(
      note('columns-left-out', {
        count: chosen.leftOut.length,
        headings: listed(chosen.leftOut.map((s) => s.heading || s.label)),
      }),
    );
  for (const { label, note: rule = '' } of chosen.computing)
    notes.push(note('column-computed', { column: label, rule }));
  if (chosen.matches.some(({ column }) => !chosen.isNew.has(column.id)))
    for (const { source, column } of chosen.matches)
      if (chosen.isNew.has(column.id))
        notes.push(note('new-column', { heading: source.heading || source.label, column: column.name }));
  for (const { source, column, by } of chosen.proposals)
    notes.push(
      note(by === 'spelling' ? 'spelling-proposed' : 'content-proposed', {
        heading: source.heading,
        column: column.name,
      }),
    );
  if (chosen.matches.some((m) => m.by === 'position'))
    notes.push(note('by-position', { columns: listed(chosen.matches.map((m) => m.column.name)) }));
  if (placing.shortPlaced > 0) notes.push(note('short-rows-placed', { count: placing.shortPlaced }));
  if (placing.repeated > 0) notes.push(note('headings-again', { count: placing.repeated }));
  const footer = placing.apart.filter((a) => a.as === 'footer');
  if (footer.length > 0)
    notes.push(
      note('footer-apart', {
        count: footer.length,
        raw: footer
          .map((f) => f.raw)
          .slice(0, 2)
          .join(' / ')
          .slice(0, 120),
      }),
    );
  if (held > 0) notes.push(note('rows-held', { count: held }));
  if (plan.unchanged > 0) notes.push(note('seen-before', { count: plan.unchanged }));
  for (const { source } of chosen.matches)
    if (
      source.label === 'Load' &&
      findings.columns[source.index]?.label !== source.label &&
      source.index >= 0
    )
      notes.push(note('weight-is-load', { heading: source.heading }));
  if (placing.placed.some(({ builder }) => builder instanceof ConstantColumnBuilder))
    notes.push(note('rows-are-sets'));
  const { differing } = plan;
  if (plan.heldAside > 0 && plan.left === 0) notes.push(note('held-aside', { count: plan.heldAside }));
  if (differing && differing.decided !== 'take' && differing.decided !== 'hold')
    notes.push(
      note(differing.decided === 'add' ? 'differing-added' : 'differing-left', {
        count: differing.count,
        key: listed(differing.key),
        what: differencesInWords(differing),
      }),
    );
  return notes;
}

function columnReport(
  { match, builder, unit, factor }: Placed,
  chosen: Chosen,
  notes: readonly Note[],
): ColumnReport {
  return {
    heading: match.source.heading || match.source.label,
    column: match.column.name,
    isNew: chosen.isNew.has(match.column.id),
    kind: match.column.kind,
    factor: factor * (unit ? unit.per / unit.of : 1),
    unit: unit?.unit ?? null,
    filled: builder.filled,
    blank: builder.blank,
    held: builder.held.size,
    notes,
  };
}

const leftOut = (source: ColumnFinding): Omit<ColumnReport, 'notes'> => ({
  heading: source.heading,
  column: null,
  isNew: false,
  kind: null,
  factor: 1,
  unit: null,
  filled: source.filled,
  blank: source.blank,
  held: 0,
});
