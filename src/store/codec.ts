import { Cells } from '../book/cells.ts';

/*
 * Plain data as one run of bytes: JSON with what JSON cannot say (typed arrays, maps, gaps in lists, numbers that are not
 * finite) marked by objects of the single key "$", and the typed arrays behind it, each at a multiple of 8. One run of
 * bytes has one checksum, is stored as it is, and never drags along the larger buffer that an array is a window of.
 * The bytes stay on the machine that wrote them, so numbers keep its byte order.
 */

const MAGIC = 0x314a424c;
const HEAD = 8;

const types = {
  Uint8Array,
  Int8Array,
  Uint16Array,
  Int16Array,
  Uint32Array,
  Int32Array,
  Float32Array,
  Float64Array,
};
type TypeName = keyof typeof types;
type Numbers = InstanceType<(typeof types)[TypeName]>;

/** Type, length, and 1 when all of it is 0 and no bytes stand for it. */
type Attached = readonly [type: TypeName, length: number, zero: 0 | 1];

/** Bytes that cannot be what `encode` made. */
export class DecodeError extends Error {
  override readonly name = 'DecodeError';
}

/** Bytes for plain data: null, booleans, numbers, strings, lists, records, maps, typed arrays, `Cells`. Undefined entries of a record are left out. */
export function encode(value: unknown): Uint8Array<ArrayBuffer> {
  const arrays: Numbers[] = [];
  const tree = toTree(value, arrays);
  const attached = arrays.map((array): Attached => [typeName(array), array.length, isZero(array) ? 1 : 0]);
  const json = new TextEncoder().encode(JSON.stringify([tree, attached]));
  let size = padded(HEAD + json.length);
  const starts = arrays.map((array, i) => {
    const start = size;
    if (attached[i]![2] === 0) size += padded(array.byteLength);
    return start;
  });
  const bytes = new Uint8Array(size);
  new DataView(bytes.buffer).setUint32(0, MAGIC, true);
  new DataView(bytes.buffer).setUint32(4, json.length, true);
  bytes.set(json, HEAD);
  arrays.forEach((array, i) => {
    if (attached[i]![2] === 0)
      bytes.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), starts[i]!);
  });
  return bytes;
}

/** The data again. Typed arrays in it are windows of the bytes: nobody writes into either. @throws DecodeError */
export function decode(bytes: Uint8Array): unknown {
  if (bytes.length < HEAD) throw new DecodeError('too short');
  const aligned = bytes.byteOffset % 8 === 0 ? bytes : bytes.slice();
  const view = new DataView(aligned.buffer, aligned.byteOffset, aligned.byteLength);
  if (view.getUint32(0, true) !== MAGIC) throw new DecodeError('not written by this program');
  const end = HEAD + view.getUint32(4, true);
  if (end > aligned.length) throw new DecodeError('cut off');
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(aligned.subarray(HEAD, end));
    const [tree, attached] = JSON.parse(text) as [unknown, readonly Attached[]];
    let at = aligned.byteOffset + padded(end);
    const arrays = attached.map(([name, length, zero]): Numbers => {
      const type = types[name];
      if (zero) return new type(length);
      const array = new type(aligned.buffer as ArrayBuffer, at, length);
      at += padded(array.byteLength);
      return array;
    });
    return fromTree(tree, arrays);
  } catch (reason) {
    throw new DecodeError(reason instanceof Error ? reason.message : String(reason));
  }
}

const padded = (size: number): number => Math.ceil(size / 8) * 8;

const typeName = (array: Numbers): TypeName => array.constructor.name as TypeName;

function isZero(array: Numbers): boolean {
  for (let i = 0; i < array.length; i++) if (array[i] !== 0 || Object.is(array[i], -0)) return false;
  return true;
}

/** True for what JSON says exactly. */
const isPlain = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value) && !Object.is(value, -0)
    : typeof value === 'string' || typeof value === 'boolean' || value === null;

const mark = (...what: readonly unknown[]): unknown => ({ $: what });

function toTree(value: unknown, arrays: Numbers[]): unknown {
  if (isPlain(value)) return value;
  if (typeof value === 'number') return mark('n', Object.is(value, -0) ? '-0' : String(value));
  if (typeof value !== 'object' || value === null) throw new TypeError(`${typeof value} is no plain data`);
  if (Array.isArray(value)) return listToTree(value, arrays);
  if (ArrayBuffer.isView(value)) {
    if (!(value.constructor.name in types)) throw new TypeError(`${value.constructor.name} is no plain data`);
    return mark('a', arrays.push(value as Numbers) - 1);
  }
  if (value instanceof Map)
    return mark(
      'm',
      [...value].map(([key, item]) => [toTree(key, arrays), toTree(item, arrays)]),
    );
  const record = value instanceof Cells ? value.block() : value;
  const entries = Object.entries(record)
    .filter(([, item]) => item !== undefined)
    .map(([key, item]) => [key, toTree(item, arrays)] as const);
  return Object.hasOwn(record, '$') ? mark('o', entries) : Object.fromEntries(entries);
}

function listToTree(list: readonly unknown[], arrays: Numbers[]): unknown {
  let plain = true;
  let gaps = false;
  for (let i = 0; i < list.length && !gaps; i++) {
    if (list[i] === undefined) gaps = true;
    else if (plain && !isPlain(list[i])) plain = false;
  }
  if (!gaps) return plain ? list : list.map((item) => toTree(item, arrays));
  const places: number[] = [];
  const items: unknown[] = [];
  for (let i = 0; i < list.length; i++) {
    if (list[i] === undefined) continue;
    places.push(i);
    items.push(toTree(list[i], arrays));
  }
  return mark('s', list.length, arrays.push(Uint32Array.from(places)) - 1, items);
}

function fromTree(tree: unknown, arrays: readonly Numbers[]): unknown {
  if (typeof tree !== 'object' || tree === null) return tree;
  if (Array.isArray(tree)) {
    if (tree.every((item) => typeof item !== 'object' || item === null)) return tree;
    return tree.map((item) => fromTree(item, arrays));
  }
  if (!Object.hasOwn(tree, '$'))
    return Object.fromEntries(Object.entries(tree).map(([key, item]) => [key, fromTree(item, arrays)]));
  const [what, ...rest] = (tree as { $: readonly unknown[] }).$;
  const pairs = (list: unknown) => list as readonly (readonly [unknown, unknown])[];
  switch (what) {
    case 'n':
      return Number(rest[0]);
    case 'a':
      return arrays[rest[0] as number];
    case 'm':
      return new Map(pairs(rest[0]).map(([key, item]) => [fromTree(key, arrays), fromTree(item, arrays)]));
    case 'o':
      return Object.fromEntries(pairs(rest[0]).map(([key, item]) => [key, fromTree(item, arrays)]));
    case 's': {
      const list = new Array<unknown>(rest[0] as number);
      const places = arrays[rest[1] as number]!;
      (rest[2] as readonly unknown[]).forEach((item, i) => {
        list[places[i]!] = fromTree(item, arrays);
      });
      return list;
    }
    default:
      throw new DecodeError(`unknown mark ${String(what)}`);
  }
}
