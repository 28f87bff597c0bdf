/** What keeps a value from being JSON that a book file may have. */
const DEEPEST = 32;

/**
 * Why a value cannot be a record of the book, with the place in it; undefined when it can: plain JSON, not deeper than
 * 32 levels, and no key `__proto__`, which code that copies records could take for something else.
 */
export function jsonProblem(
  value: unknown,
  path = '',
  depth = 0,
): { path: string; problem: string } | undefined {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return undefined;
  if (typeof value === 'number')
    return Number.isFinite(value) ? undefined : { path, problem: 'a number that is not finite' };
  if (typeof value !== 'object') return { path, problem: `a value of type ${typeof value}` };
  if (depth >= DEEPEST) return { path, problem: `more than ${DEEPEST} levels inside one another` };
  const entries: readonly (readonly [string | number, unknown])[] = Array.isArray(value)
    ? value.map((item, i) => [i, item] as const)
    : Object.entries(value);
  for (const [key, item] of entries) {
    const at = typeof key === 'number' ? `${path}[${key}]` : path ? `${path}.${key}` : key;
    if (key === '__proto__') return { path: at, problem: 'the key "__proto__", which no record may have' };
    const inside = jsonProblem(item, at, depth + 1);
    if (inside) return inside;
  }
  return undefined;
}
