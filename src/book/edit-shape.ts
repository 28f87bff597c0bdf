import type { Edit, EditOf } from './edit.ts';
import { partNames } from './model.ts';

/*
 * Whether something that was read back from a storage is an edit at all. Whether it fits the book is for `applyEdit`, which
 * refuses what does not and leaves the book alone; it may only not be asked to apply what is no edit.
 */

type Check = (value: unknown) => boolean;
/** A check for every field of an edit. */
type Checks<E> = { readonly [F in Exclude<keyof E, 'do'>]-?: Check };

/** Batches in batches are no deeper than commands make them, with room to spare. */
const DEEPEST = 16;

const text: Check = (value) => typeof value === 'string';
const whole: Check = (value) => Number.isSafeInteger(value) && (value as number) >= 0;
const optional =
  (check: Check): Check =>
  (value) =>
    value === undefined || check(value);
const listOf =
  (check: Check): Check =>
  (value) =>
    Array.isArray(value) && value.every(check);

const mapOf =
  (check: Check): Check =>
  (value) =>
    value instanceof Map && [...value].every(([row, item]) => whole(row) && check(item));

const record = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const held: Check = (value) => record(value) && text(value['held']) && text(value['reason']);

const cell: Check = (value) =>
  value === null ||
  ['number', 'string', 'boolean'].includes(typeof value) ||
  (record(value) && (typeof value['date'] === 'number' || text(value['formula']) || held(value)));

/** Gaps in lists stand for blanks. */
const cells: Check = (value) => {
  if (Array.isArray(value)) return value.every((one) => one === undefined || cell(one));
  if (!record(value)) return false;
  const { kinds, numbers, texts, formulas, held: unread, length } = value;
  return (
    whole(length) &&
    kinds instanceof Uint8Array &&
    numbers instanceof Float64Array &&
    (texts === null || (Array.isArray(texts) && texts.every(optional(text)))) &&
    mapOf(text)(formulas) &&
    mapOf(held)(unread)
  );
};

const column: Check = (value) =>
  record(value) &&
  text(value['id']) &&
  text(value['name']) &&
  text(value['label']) &&
  text(value['kind']) &&
  optional(text)(value['formula']) &&
  optional(listOf(text))(value['choices']);
const about = { name: text, label: text, purpose: text, note: optional(text) };
const sheet: Check = (value) =>
  record(value) && fits({ id: text, ...about, rows: whole, columns: listOf(filled) }, value);
const filled: Check = (value) => record(value) && column(value['column']) && optional(cells)(value['cells']);
const target: Check = (value) =>
  value === null || (record(value) && text(value['sheet']) && text(value['column']) && whole(value['row']));
const order: Check = (value) =>
  value instanceof Int32Array || value instanceof Uint32Array || listOf(whole)(value);

const shapes: { readonly [K in Exclude<Edit['do'], 'batch'>]: Checks<EditOf<K>> } = {
  'put-cells': { sheet: text, row: whole, columns: listOf(text), cells: listOf(cells) },
  'add-rows': { sheet: text, row: whole, count: whole, cells: optional(listOf(cells)) },
  'remove-rows': { sheet: text, row: whole, count: whole },
  'order-rows': { sheet: text, order },
  'add-column': { sheet: text, index: whole, column, cells: optional(cells) },
  'remove-column': { sheet: text, column: text },
  'move-column': { sheet: text, column: text, index: whole },
  'change-column': { sheet: text, column },
  'add-sheet': { index: whole, sheet },
  'remove-sheet': { sheet: text },
  'move-sheet': { sheet: text, index: whole },
  'change-sheet': { sheet: text, ...about },
  'set-name': { name: text, target },
  'set-part': {
    part: (value) => partNames.some((name) => name === value),
    key: text,
    value: (value) => value !== undefined,
  },
  'set-title': { title: text },
};

const fits = (checks: Readonly<Record<string, Check>>, value: Readonly<Record<string, unknown>>): boolean =>
  Object.entries(checks).every(([field, check]) => check(value[field]));

/** True for what `applyEdit` can be asked to apply. Never throws. */
export function isEdit(value: unknown, depth = 0): value is Edit {
  if (!record(value) || typeof value['do'] !== 'string') return false;
  if (value['do'] === 'batch')
    return (
      depth < DEEPEST &&
      Array.isArray(value['edits']) &&
      value['edits'].every((edit) => isEdit(edit, depth + 1))
    );
  return Object.hasOwn(shapes, value['do']) && fits(shapes[value['do'] as keyof typeof shapes], value);
}
