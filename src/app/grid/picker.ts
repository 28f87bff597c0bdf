/** The list of choices under a cell that is being edited: arrows choose, typing narrows it. */
export class Picker {
  private readonly list: HTMLUListElement;
  private shown: readonly string[] = [];
  private at = -1;

  constructor(
    parent: HTMLElement,
    private readonly input: HTMLTextAreaElement | HTMLInputElement,
    private readonly choices: readonly string[],
    private readonly take: (choice: string) => void,
  ) {
    this.list = document.createElement('ul');
    this.list.className = 'picker';
    this.list.id = 'cell-choices';
    this.list.setAttribute('role', 'listbox');
    this.list.setAttribute('aria-label', 'Choices');
    input.setAttribute('role', 'combobox');
    input.setAttribute('aria-expanded', 'true');
    input.setAttribute('aria-controls', this.list.id);
    input.addEventListener('input', this.narrow);
    // The field keeps the focus while the list is clicked.
    this.list.addEventListener('mousedown', (event) => event.preventDefault());
    this.list.addEventListener('click', (event) => {
      const item = (event.target as HTMLElement).closest('li');
      if (item) this.take(item.textContent ?? '');
    });
    parent.append(this.list);
    this.all();
  }

  /** Shows every choice, the present one chosen. */
  all(): void {
    this.show(this.choices, this.choices.indexOf(this.input.value));
  }

  /** Answers true when the key was the list's. */
  key(event: KeyboardEvent): boolean {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return false;
    if (this.shown.length === 0) return false;
    const step = event.key === 'ArrowDown' ? 1 : -1;
    this.show(this.shown, (this.at + step + this.shown.length) % this.shown.length);
    return true;
  }

  /** The choice that Enter would take; what is typed when none is. */
  chosen(): string {
    return this.shown[this.at] ?? this.input.value;
  }

  close(): void {
    this.input.removeEventListener('input', this.narrow);
    for (const name of ['role', 'aria-expanded', 'aria-controls', 'aria-activedescendant'])
      this.input.removeAttribute(name);
    this.list.remove();
  }

  /** Shows the choices that have what is typed in them. */
  readonly narrow = (): void => {
    const typed = this.input.value.trim().toLowerCase();
    const found = this.choices.filter((choice) => choice.toLowerCase().includes(typed));
    const begins = found.findIndex((choice) => choice.toLowerCase().startsWith(typed));
    this.show(found, typed === '' ? -1 : Math.max(begins, found.length ? 0 : -1));
  };

  private show(choices: readonly string[], at: number): void {
    this.shown = choices;
    this.at = at;
    this.list.hidden = choices.length === 0;
    this.list.replaceChildren(
      ...choices.map((choice, index) => {
        const item = document.createElement('li');
        item.id = `cell-choice-${index}`;
        item.setAttribute('role', 'option');
        item.setAttribute('aria-selected', String(index === at));
        item.textContent = choice;
        return item;
      }),
    );
    if (at >= 0) {
      this.input.setAttribute('aria-activedescendant', `cell-choice-${at}`);
      this.list.children[at]?.scrollIntoView({ block: 'nearest' });
    } else this.input.removeAttribute('aria-activedescendant');
  }
}
