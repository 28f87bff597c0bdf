import type { Done } from '../session/api.ts';
import type { Command } from '../session/commands/index.ts';
import type { Paste, Pasted } from '../session/commands/paste-text.ts';
import { turn } from '../session/drive.ts';
import type { Session } from '../session/session.ts';
import type { Keeper } from './keeper.ts';
import type { Answer, Work } from './protocol.ts';

/** Milliseconds of reading before others get a turn. */
const SLICE = 25;

const STOPPED = 'Pasting was stopped; nothing was changed.';

/**
 * Reads a large text before it is pasted: in slices, so that it shows how far it is and can be stopped. Nothing changes
 * before the command that pastes it, which finds it read; where it does not, because the book changed meanwhile or the
 * worker is another one, the command reads it itself.
 */
export class Pasting {
  private readonly keeper: Keeper;
  private readonly tell: (work: Work) => void;
  private prepared:
    | { readonly paste: Paste; readonly pasted: Pasted; readonly session: Session; readonly changes: number }
    | undefined;
  /** Counts readings; one that is not the latest ends. */
  private latest = 0;

  constructor(keeper: Keeper, tell: (work: Work) => void) {
    this.keeper = keeper;
    this.tell = tell;
  }

  stop(): void {
    this.latest++;
    this.prepared = undefined;
  }

  async read(paste: Paste): Promise<Answer<{ lines: number; width: number }>> {
    this.stop();
    const turnOf = this.latest;
    try {
      const { session } = this.keeper;
      const { changes } = session;
      const work = session.pasting(paste);
      let until = performance.now() + SLICE;
      for (;;) {
        const step = work.next();
        if (step.done) {
          this.prepared = { paste, pasted: step.value, session, changes };
          return { ok: true, lines: step.value.lines, width: step.value.width };
        }
        if (performance.now() < until) continue;
        this.tell(step.value);
        await turn();
        if (turnOf !== this.latest) {
          const { about, total } = step.value;
          this.tell({ about, done: total, total });
          return { ok: false, sentence: STOPPED };
        }
        until = performance.now() + SLICE;
      }
    } catch (reason) {
      return { ok: false, sentence: reason instanceof Error ? reason.message : String(reason) };
    }
  }

  /** Pastes what was read; undefined for any other command, and where what was read is true no more. */
  paste(now: Session, command: Command): Done | undefined {
    const { prepared } = this;
    if (command.do !== 'paste-text' || !prepared) return undefined;
    this.prepared = undefined;
    const { session, changes, paste, pasted } = prepared;
    if (session !== now || session.changes !== changes || !isSame(paste, command)) return undefined;
    return now.writePlanned(pasted);
  }
}

const isSame = ({ text, ...paste }: Paste, { do: _, ...command }: Command & { do: 'paste-text' }): boolean =>
  text === command.text && JSON.stringify(paste) === JSON.stringify({ ...command, text: undefined });
