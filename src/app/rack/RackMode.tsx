import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { isoFromSerial, today } from '../../units/date.ts';
import { localeFor } from '../../units/locale.ts';
import { perform } from '../commands/all.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { focusCentre } from '../state/focus.ts';
import { gone } from '../state/follow.ts';
import { chooseTests, chosenTests, openBefore, rememberOpen } from './remembered.ts';
import { TestField } from './TestField.tsx';
import { askable, testsOfDay, usualColumns } from './tests-of-day.ts';
import { enteredFrom, TRIALS, trialsOf } from './trials.ts';
import './rack.css';

/** So long after the last key a value is saved. */
const PAUSE = 400;

interface Field {
  readonly trials: readonly string[];
  /** Typed and not saved yet. */
  readonly fresh: boolean;
  /** The cell has a formula of its own, which is shown and left alone. */
  readonly display?: string;
}

/** One athlete at a time: large fields for the tests of the day. Every value goes into the sheet as it is typed. */
export function RackMode() {
  const page = usePage();
  const place = page.rack.value!;
  const sheet = page.outline.value?.sheets.find(({ id }) => id === place.sheet);
  const rows = useSignal<readonly { row: number; name: string }[]>([]);
  const fields = useSignal<ReadonlyMap<string, Field>>(new Map());
  const day = useSignal('');
  const chosen = useSignal<readonly string[]>([]);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const saving = useRef<Promise<void>>(Promise.resolve());
  const closed = useRef(false);
  const head = useRef<HTMLHeadingElement>(null);
  const locale = localeFor(navigator.language);
  const key = (row: number, column: string) => `${row} ${column}`;

  // Athletes in the order shown, and what their cells have; typed values that are not saved stay.
  useSignalEffect(() => {
    const now = page.rack.value;
    const of = page.outline.value?.sheets.find(({ id }) => id === now?.sheet);
    if (!now || !of) return;
    chosen.value = chosenTests(of.id) ?? usualColumns(of);
    const athlete = of.columns.findIndex((column) => column === columnInRole(of, 'athlete'));
    const date = columnInRole(of, 'tested');
    const wanted = askable(of).filter(({ id }) => chosen.value.includes(id));
    void (async () => {
      const shown = await page.service.rowsInView(of.id, of.view?.rows ?? {});
      const { texts } = await page.service.tile(of.id, 0, of.rows, athlete, 1);
      rows.value = [...shown].flatMap((row) => {
        const name = texts[row]?.trim() ?? '';
        return name === '' ? [] : [{ row, name }];
      });
      if (now.row >= of.rows) return;
      const cells = await Promise.all(
        wanted.map(({ id }) => page.service.cell({ sheet: of.id, column: id, row: now.row })),
      );
      const known = new Map(fields.peek());
      for (const [at, column] of wanted.entries()) {
        const own = key(now.row, column.id);
        if (known.get(own)?.fresh) continue;
        const trials = trialsOf(cells[at]!.editText, column, locale);
        known.set(own, {
          trials: trials ?? [],
          fresh: false,
          ...(trials ? {} : { display: cells[at]!.display }),
        });
      }
      fields.value = known;
      day.value = date
        ? (await page.service.cell({ sheet: of.id, column: date.id, row: now.row })).display
        : '';
    })().catch(gone);
  });

  const title = page.outline.value?.title ?? '';
  const remember = () => {
    if (closed.current) return;
    rememberOpen({
      ...place,
      book: title,
      drafts: [...fields.peek()].flatMap(([own, { trials, fresh }]) => {
        const at = own.indexOf(' ');
        return fresh ? [{ row: Number(own.slice(0, at)), column: own.slice(at + 1), trials }] : [];
      }),
    });
  };

  /** Writes what is typed and can be read; what cannot stays in its field. */
  const write = async () => {
    for (const [own, field] of fields.peek()) {
      if (!field.fresh) continue;
      const at = own.indexOf(' ');
      const [row, id] = [Number(own.slice(0, at)), own.slice(at + 1)];
      const column = sheet?.columns.find((one) => one.id === id);
      const { text } = column ? enteredFrom(field.trials, column, locale) : {};
      if (text === undefined || !sheet) continue;
      const done = await run(page, {
        do: 'set-cells',
        sheet: sheet.id,
        row,
        columns: [id],
        texts: [[text]],
      });
      const now = fields.peek().get(own);
      if (done && now?.trials === field.trials)
        fields.value = new Map(fields.peek()).set(own, { ...field, fresh: false });
    }
    remember();
  };
  /** One after the other: a value that is being saved is not saved a second time. */
  const save = (): Promise<void> => {
    clearTimeout(timer.current);
    saving.current = saving.current.then(write);
    return saving.current;
  };
  const type = (row: number, column: string, trials: readonly string[]) => {
    fields.value = new Map(fields.peek()).set(key(row, column), { trials, fresh: true });
    remember();
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void save(), PAUSE);
  };

  // What a reload cut off is typed again.
  useEffect(() => {
    const before = openBefore(title);
    if (before?.drafts.length) {
      const known = new Map(fields.peek());
      for (const { row, column, trials } of before.drafts)
        known.set(key(row, column), { trials, fresh: true });
      fields.value = known;
      void save();
    }
    head.current?.focus();
    return () => {
      void save();
      closed.current = true;
      rememberOpen(null);
    };
  }, []);
  useEffect(remember, [place]);

  if (!sheet) return null;
  const list = rows.value;
  const at = list.findIndex(({ row }) => row === place.row);
  const go = async (to: number) => {
    const next = list[to];
    if (!next) return;
    await save();
    page.rack.value = { sheet: sheet.id, row: next.row };
    const first = sheet.columns.find(({ id }) => chosen.value.includes(id));
    if (first) page.grid.current?.select(next.row, first.id, false);
    head.current?.focus();
  };
  const close = () => {
    void save();
    page.rack.value = null;
    requestAnimationFrame(() => focusCentre(page));
  };
  const date = columnInRole(sheet, 'tested');
  const isoToday = isoFromSerial(Math.floor(today())) ?? '';
  const tests = testsOfDay(sheet, chosen.value);
  return (
    <section
      class="rack"
      data-part="rack"
      aria-label="Rack mode"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        close();
      }}
    >
      <header class="rack-head">
        <h2 ref={head} tabIndex={-1}>
          {list[at]?.name ?? (list.length > 0 ? `Row ${place.row + 1}` : '\u00a0')}
        </h2>
        <span class="soft">
          {at < 0 ? '' : `${at + 1} of ${list.length}, `}
          {sheet.label}
        </span>
        <button type="button" class="firm" onClick={() => void save().then(() => perform('undo', page))}>
          Undo
        </button>
        <button type="button" class="firm" onClick={close}>
          Close
        </button>
      </header>
      {date && date.formula === undefined && (
        <p class="rack-day">
          Test date: {day.value === '' ? 'none' : day.value}
          <button
            type="button"
            class="firm"
            onClick={() =>
              void run(page, {
                do: 'set-cells',
                sheet: sheet.id,
                row: place.row,
                columns: [date.id],
                texts: [[isoToday]],
              })
            }
          >
            Set to today
          </button>
        </p>
      )}
      {tests.length === 0 && <p class="soft">Select the tests to take below.</p>}
      {tests.map(({ label, sides }) => (
        <fieldset key={sides[0]!.column.id} class="rack-test">
          <legend>{label}</legend>
          {sides.map(({ side, column }) => {
            const field = fields.value.get(key(place.row, column.id));
            return (
              <TestField
                key={column.id}
                label={label}
                side={side}
                column={column}
                trials={Array.from({ length: TRIALS }, (_, i) => field?.trials[i] ?? '')}
                {...(field?.display === undefined ? {} : { display: field.display })}
                locale={locale}
                type={(trials) => type(place.row, column.id, trials)}
                leave={() => void save()}
              />
            );
          })}
        </fieldset>
      ))}
      <nav class="rack-next" aria-label="Athletes">
        <button type="button" class="firm" disabled={at <= 0} onClick={() => void go(at - 1)}>
          Previous athlete
        </button>
        <label>
          <span class="out-of-sight">Athlete</span>
          <select
            value={String(place.row)}
            onChange={(event) => {
              const row = Number(event.currentTarget.value);
              void go(list.findIndex((one) => one.row === row));
            }}
          >
            {list.map(({ row, name }) => (
              <option key={row} value={String(row)}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button type="button" class="strong" disabled={at >= list.length - 1} onClick={() => void go(at + 1)}>
          Next athlete
        </button>
      </nav>
      <details class="rack-choose">
        <summary>Tests of the day</summary>
        {askable(sheet).map(({ id, label, sign }) => (
          <label key={id} class="check">
            <input
              type="checkbox"
              checked={chosen.value.includes(id)}
              onChange={(event) => {
                const on = event.currentTarget.checked;
                const next = on ? [...chosen.value, id] : chosen.value.filter((one) => one !== id);
                chooseTests(sheet.id, next);
                page.rack.value = { ...place };
              }}
            />
            {label}
            {sign ? `, ${sign}` : ''}
          </label>
        ))}
      </details>
      <p class="caution">
        Pain, numbness or a recent injury: stop, and see a licensed clinician. Two or three trials are saved
        in one cell as their mean.
      </p>
    </section>
  );
}
