/**
 * Which keys are the sheet's: those pressed in it, and those that no part of the page has, as long as the sheet is on
 * screen and was the last to have the keys. A key that went to a hidden sheet would change what nobody sees.
 */
export class Reach {
  /** The sheet had the keys last, and has not given them up. */
  private last = false;

  constructor(private readonly root: HTMLElement) {
    document.addEventListener('focusin', this.came);
    document.addEventListener('pointerdown', this.pressed, { capture: true });
    root.addEventListener('focusout', this.left);
  }

  end(): void {
    document.removeEventListener('focusin', this.came);
    document.removeEventListener('pointerdown', this.pressed, { capture: true });
    this.root.removeEventListener('focusout', this.left);
  }

  /** True while keys are for the sheet. */
  hasKeys(): boolean {
    const { activeElement } = document;
    const here = this.root.contains(activeElement) || (activeElement === document.body && this.last);
    return here && this.isOnScreen();
  }

  /** True for what lies in the sheet, and for the page as a whole, which has the focus when nothing else has. */
  isHere(target: EventTarget | null): boolean {
    return target === document.body || (target instanceof Node && this.root.contains(target));
  }

  /**
   * Whether some of the sheet can be pointed at. A chart or a page over it, a dialogue that makes the rest of the page
   * wait, and a panel over all of it are told apart from nothing by this alone, and so is what will be added one day.
   */
  isOnScreen(): boolean {
    const { left, top, width, height } = this.root.getBoundingClientRect();
    const parts = [1, 3, 5];
    return parts.some((x) =>
      parts.some((y) =>
        this.root.contains(document.elementFromPoint(left + (width * x) / 6, top + (height * y) / 6)),
      ),
    );
  }

  private readonly came = ({ target }: FocusEvent): void => {
    this.last = target instanceof Node && this.root.contains(target);
  };

  private readonly pressed = ({ target }: PointerEvent): void => {
    if (!(target instanceof Node && this.root.contains(target))) this.last = false;
  };

  /**
   * The focus went to nothing. A cell that was scrolled away or drawn anew has lost it against everybody's will; one that
   * could still have it gave it up.
   */
  private readonly left = ({ target, relatedTarget }: FocusEvent): void => {
    if (relatedTarget !== null || !(target instanceof HTMLElement)) return;
    setTimeout(() => {
      const could = target.isConnected && target.hasAttribute('tabindex') && document.hasFocus();
      if (could && document.activeElement === document.body) this.last = false;
    });
  };
}
