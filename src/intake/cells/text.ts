import { CellKind } from '../../book/cells.ts';
import { choiceMeant } from '../../book/choices.ts';
import { note } from '../sentences/index.ts';
import { bare, ColumnBuilder, type First, MEMORY, ownText } from './column-builder.ts';

/** Texts as they came; equal ones are kept once. */
export class TextColumnBuilder extends ColumnBuilder {
  apostrophes = 0;
  firstApostrophe: First | null = null;
  formulaLike = 0;
  firstFormulaLike: First | null = null;
  /** Letters that stood for a choice. */
  letters = 0;
  firstLetter: (First & { readonly choice: string }) | null = null;
  private texts: (string | undefined)[];
  private readonly known = new Map<string, string>();
  private readonly choices: readonly string[] | null;
  /** What each text of the file means of them. */
  private readonly meant = new Map<string, string | undefined>();

  private readonly hasMissing: boolean;

  /** `missing` are words that somebody chose: by themselves all words of a text stay. */
  constructor(choices: readonly string[] | null, missing: readonly string[], expected: number) {
    super(missing, 0);
    this.hasMissing = missing.length > 0;
    this.kinds = new Uint8Array(expected);
    this.texts = new Array<string | undefined>(expected);
    this.choices = choices;
  }

  protected override reserve(count: number): void {
    const need = this.length + count;
    if (need <= this.kinds.length) return;
    const kinds = new Uint8Array(Math.max(need, Math.ceil(this.kinds.length * 1.5)));
    kinds.set(this.kinds);
    this.kinds = kinds;
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    const { kinds, texts, known } = this;
    let row = this.length;
    for (let i = 0; i < rows.length; i++, row++) {
      const text = rows[i]![at];
      if (text === undefined || text === '' || (text.charCodeAt(0) <= 32 && text.trim() === '')) {
        this.blank++;
        continue;
      }
      if (this.hasMissing && this.isMissing(text.trim())) continue;
      let own = known.get(text);
      if (own === undefined) {
        own = ownText(bare(text));
        if (known.size < MEMORY) known.set(own === text ? own : ownText(text), own);
      }
      const choice = this.choices ? this.choiceFor(own, this.choices) : own;
      if (choice === undefined) {
        this.hold(row, own, note('not-a-choice', { text: own, choices: this.choices!.join(', ') }));
        continue;
      }
      kinds[row] = CellKind.text;
      texts[row] = choice;
      if (this.choices && own.trim().length === 1 && choice.length > 1) {
        this.letters++;
        this.firstLetter ??= { row, text: own, choice };
      }
      this.filled++;
      if (own.length < text.length) {
        this.apostrophes++;
        this.firstApostrophe ??= { row, text: ownText(text) };
      }
      const c = own.charCodeAt(0);
      if ((c === 61 || c === 64) && own.length > 1) {
        this.formulaLike++;
        this.firstFormulaLike ??= { row, text: own };
      }
    }
    this.length = row;
  }

  private choiceFor(text: string, choices: readonly string[]): string | undefined {
    if (!this.meant.has(text)) {
      if (this.meant.size >= MEMORY) return choiceMeant(choices, text);
      this.meant.set(text, choiceMeant(choices, text));
    }
    return this.meant.get(text);
  }

  override finish(): ReturnType<ColumnBuilder['finish']> {
    this.numbers = new Float64Array(this.length);
    return super.finish();
  }

  protected override textList(): readonly (string | undefined)[] | null {
    this.texts.length = this.length;
    return this.filled > 0 ? this.texts : null;
  }
}
