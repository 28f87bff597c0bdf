/** Keeps the answer of `compute` for each object, as long as the object lives. Ranges never change, so this is safe. */
export function once<K extends object, V>(compute: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let entry = known.get(key);
    if (!entry) {
      entry = { value: compute(key) };
      known.set(key, entry);
    }
    return entry.value;
  };
}

/** The same for two objects that belong together. */
export function onceForTwo<A extends object, B extends object, V>(
  compute: (a: A, b: B) => V,
): (a: A, b: B) => V {
  const known = once((a: A) => once((b: B) => compute(a, b)));
  return (a, b) => known(a)(b);
}
