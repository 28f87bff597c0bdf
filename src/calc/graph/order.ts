/**
 * Nodes in an order in which each comes after those it reads, and the groups that read one another in a circle.
 * Tarjan's algorithm without recursion (R. Tarjan, SIAM J. Comput. 1, 1972, 146–160): chains of cells can be long.
 */
export interface Order<N> {
  readonly sorted: readonly N[];
  /** Groups of two or more, and single nodes that read themselves. */
  readonly circles: readonly (readonly N[])[];
}

interface Visit<N> {
  readonly node: N;
  readonly reads: Iterator<N>;
}

export function orderOf<N extends object>(nodes: Iterable<N>, readsOf: (node: N) => Iterable<N>): Order<N> {
  const index = new Map<N, number>();
  const low = new Map<N, number>();
  const open = new Set<N>();
  const stack: N[] = [];
  const sorted: N[] = [];
  const circles: N[][] = [];
  const selfReaders = new Set<N>();
  const visits: Visit<N>[] = [];

  const enter = (node: N): void => {
    index.set(node, index.size);
    low.set(node, index.get(node)!);
    stack.push(node);
    open.add(node);
    visits.push({ node, reads: readsOf(node)[Symbol.iterator]() });
  };
  const leave = (node: N): void => {
    if (low.get(node) !== index.get(node)) return;
    const group: N[] = [];
    let member: N;
    do {
      member = stack.pop()!;
      open.delete(member);
      group.push(member);
    } while (member !== node);
    for (const one of group) sorted.push(one);
    if (group.length > 1 || selfReaders.has(node)) circles.push(group);
  };

  for (const start of nodes) {
    if (index.has(start)) continue;
    enter(start);
    while (visits.length > 0) {
      const visit = visits[visits.length - 1]!;
      const next = visit.reads.next();
      if (next.done) {
        visits.pop();
        leave(visit.node);
        const parent = visits[visits.length - 1]?.node;
        if (parent) low.set(parent, Math.min(low.get(parent)!, low.get(visit.node)!));
      } else if (next.value === visit.node) selfReaders.add(visit.node);
      else if (!index.has(next.value)) enter(next.value);
      else if (open.has(next.value))
        low.set(visit.node, Math.min(low.get(visit.node)!, index.get(next.value)!));
    }
  }
  return { sorted, circles };
}

/**
 * One circle through the group, as its members read one another; the first stands at the end again. It follows the
 * group's order, not the order in which the reads come.
 */
export function pathAround<N>(group: readonly N[], readsOf: (node: N) => Iterable<N>): readonly N[] {
  const place = new Map(group.map((member, i) => [member, i]));
  const path: N[] = [];
  const at = new Map<N, number>();
  let node = group[0]!;
  while (!at.has(node)) {
    at.set(node, path.length);
    path.push(node);
    let next: N | undefined;
    // A member that was on the way already closes the circle.
    const rank = (read: N): number => place.get(read)! - (at.has(read) ? group.length : 0);
    for (const read of readsOf(node))
      if (place.has(read) && (next === undefined || rank(read) < rank(next))) next = read;
    node = next!;
  }
  return [...path.slice(at.get(node)!), node];
}
