/** What the worker under test is at. */
export const phases = ['recalculation', 'import', 'snapshot', 'segment', 'compaction'] as const;
export type Phase = (typeof phases)[number];

/** A phase begins, or is over. */
export interface Turned {
  readonly phase: Phase;
  readonly on: boolean;
}

/** How the worker tells its page, each turn once. */
export const channel = (): BroadcastChannel => new BroadcastChannel('phases');

export function telling(): { is(phase: Phase): void; over(phase: Phase): void } {
  const to = channel();
  const at = new Set<Phase>();
  const turn = (phase: Phase, on: boolean): void => {
    if (at.has(phase) === on) return;
    if (on) at.add(phase);
    else at.delete(phase);
    to.postMessage({ phase, on } satisfies Turned);
  };
  return { is: (phase) => turn(phase, true), over: (phase) => turn(phase, false) };
}
