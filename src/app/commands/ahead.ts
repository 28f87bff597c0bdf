import { isBehind } from '../state/front.ts';
import type { Page } from '../state/page.ts';
import { isEnabled, type PageCommand } from './command.ts';

/**
 * Keys typed ahead of what they are meant for: a command's key while a dialogue in front is being saved or is just going,
 * and letters before the dialogue that a command opens is there. The command runs once nothing is in front; the letters go
 * into the field that then has the keys, or nowhere. They never reach the sheet, where they would write over a cell.
 */
export class Ahead {
  /** Waits for the dialogue in front to go. */
  private command: PageCommand | null = null;
  private strokes: KeyboardEvent[] = [];
  private going = false;
  /** A stroke is being handed on: not one to catch again. */
  private handing = false;

  constructor(
    private readonly page: Page,
    /** The command that a key runs where nothing is in front. */
    private readonly commandOf: (event: KeyboardEvent) => PageCommand | undefined,
  ) {}

  /** Takes a key that came too early. Answers whether it did. */
  takes(event: KeyboardEvent): boolean {
    if (this.handing || !(this.going || this.isComing())) return false;
    if (event.key === 'Escape') {
      this.forget();
      return false;
    }
    if (!modifiers.has(event.key)) this.strokes.push(event);
    void this.go();
    return true;
  }

  /** Runs a command after the dialogue that is being saved; nothing where the dialogue is only open. */
  runLater(command: PageCommand): void {
    if (this.page.working.peek() === 0) return;
    this.command = command;
    void this.go();
  }

  /**
   * A dialogue is to be shown, and its code or what it says is not there yet; or it is gone from view, and the browser has
   * yet to say so.
   */
  private isComing(): boolean {
    const { dialogue, finderOpen } = this.page;
    return (dialogue.peek() !== null || finderOpen.peek()) && !isBehind();
  }

  private async go(): Promise<void> {
    if (this.going) return;
    this.going = true;
    // What was answered is drawn within a turn; a second one leaves room for a change that follows from the first.
    for (let idle = 0; this.command || this.strokes.length > 0; ) {
      await nextTurn();
      if (this.command) {
        idle = this.page.working.peek() === 0 ? idle + 1 : 0;
        if (!isBehind()) this.runNow(this.command);
        else if (idle > 2) this.forget();
      } else if (!this.isComing()) this.handOn();
    }
    this.going = false;
  }

  private runNow(command: PageCommand): void {
    this.command = null;
    if (isEnabled(command, this.page)) void command.run(this.page);
  }

  /**
   * Does with the first stroke what the browser would have done, where a field is in front; where nothing is, and it is a
   * command's, the command.
   */
  private handOn(): void {
    const stroke = this.strokes.shift();
    const field = document.activeElement;
    const command = stroke && !isBehind() ? this.commandOf(stroke) : undefined;
    if (command) {
      this.runNow(command);
      return;
    }
    if (!stroke || !isBehind() || !(field instanceof HTMLElement)) {
      this.forget();
      return;
    }
    this.handing = true;
    const { key, code, shiftKey, ctrlKey, altKey, metaKey } = stroke;
    const told = { key, code, shiftKey, ctrlKey, altKey, metaKey, bubbles: true, cancelable: true };
    const free = field.dispatchEvent(new KeyboardEvent('keydown', told));
    this.handing = false;
    if (!free || ctrlKey || altKey || metaKey) return;
    if (key === 'Backspace') document.execCommand('delete');
    else if (key.length === 1 && isText(field)) document.execCommand('insertText', false, key);
  }

  private forget(): void {
    this.command = null;
    this.strokes = [];
  }
}

const modifiers: ReadonlySet<string> = new Set(['Shift', 'Control', 'Alt', 'Meta', 'AltGraph', 'CapsLock']);

const isText = (field: HTMLElement): boolean =>
  field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement || field.isContentEditable;

const nextTurn = (): Promise<void> => new Promise((done) => setTimeout(done, 5));
