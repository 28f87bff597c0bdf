import type { Computing } from './protocol.ts';

/** Milliseconds. */
export interface Patience {
  /** After which a formula counts as hanging. */
  readonly formula: number;
  /** For which a worker that was asked something may say nothing at all; reading the largest files is below it. */
  readonly silence: number;
}
const usual: Patience = { formula: 2_000, silence: 30_000 };

/** A timer that comes this late was held up itself (a sleeping machine): it proves nothing. */
const LATE = 1_000;

export interface Watched {
  /** A formula that was begun did not come back. */
  hung(computing: Computing): void;
  /** Nothing was heard although something was asked. */
  silent(): void;
  /** True while the worker owes an answer. */
  owes(): boolean;
}

/** Watches a worker by what it tells. It knows nothing of what the worker is for. */
export class Watchdog {
  private readonly patience: Patience;
  private readonly watched: Watched;
  private readonly listening: ReturnType<typeof setInterval>;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private computing: Computing | null = null;
  private last = performance.now();

  constructor(watched: Watched, patience: Partial<Patience> = {}) {
    this.watched = watched;
    this.patience = { ...usual, ...patience };
    this.listening = setInterval(() => this.listen(), this.patience.silence / 10);
  }

  /** The worker gave a sign of life. */
  heard(): void {
    this.last = performance.now();
  }

  /** The worker begins with a formula, or with something else. */
  begins(computing: Computing | null): void {
    clearTimeout(this.timer);
    this.computing = computing;
    if (!computing) return;
    const due = performance.now() + this.patience.formula;
    this.timer = setTimeout(() => {
      if (performance.now() > due + LATE) {
        this.begins(computing);
        return;
      }
      // What the worker told while this page was busy is heard first.
      this.timer = setTimeout(() => {
        if (computing === this.computing) this.watched.hung(computing);
      }, 0);
    }, this.patience.formula);
  }

  /** Another worker takes over. */
  anew(): void {
    this.begins(null);
    this.heard();
  }

  stop(): void {
    clearTimeout(this.timer);
    clearInterval(this.listening);
  }

  private listen(): void {
    const { silence } = this.patience;
    const silent = performance.now() - this.last;
    if (!this.watched.owes()) this.heard();
    else if (silent > 2 * silence) this.last = performance.now() - silence / 2;
    else if (silent > silence) {
      // On a machine so busy that the formula's own timer was held up, the formula is still the reason.
      if (this.computing) this.watched.hung(this.computing);
      else this.watched.silent();
    }
  }
}
