import { sentence } from '../../src/intake/index.ts';
import type { Command } from '../../src/session/commands/index.ts';
import { type Incoming, type Prepared, preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';

/** A book on its way from template to sample: what a person does, done by the same session. */
export class Filling {
  readonly session: Session;

  constructor(template: string) {
    this.session = Session.open(template);
  }

  /** Brings a file in as the page does, and answers what was left to look at. */
  bringIn(sheet: string, name: string, text: string, decisions: Pick<Incoming, 'who'> = {}): Prepared {
    const work = preparing(this.session, {
      bytes: new TextEncoder().encode(text),
      name,
      sheet,
      now: '2025-11-15T09:00:00Z',
      ...decisions,
    });
    let step = work.next();
    while (!step.done) step = work.next();
    const { imported } = step.value;
    if (imported.heldRows.length > 0)
      throw new Error(
        `${name}: not imported ${imported.heldRows.map(({ line, reason }) => `${line}: ${sentence(reason)}`)}`,
      );
    this.done(this.session.writePlanned(step.value));
    for (const _ of this.session.recalculate());
    return step.value;
  }

  /** Puts texts into a column, as typed, from a row (from 0) on. */
  type(sheet: string, column: string, row: number, ...texts: readonly string[]): void {
    this.run({
      do: 'set-cells',
      sheet,
      row,
      columns: [column],
      texts: texts.map((text) => [text]),
      formulas: true,
    });
  }

  run(command: Command): void {
    this.done(this.session.execute(command));
  }

  private done(done: { readonly ok: boolean; readonly sentence?: string }): void {
    if (!done.ok) throw new Error(done.sentence);
  }
}
