import { CellKind } from '../../book/cells.ts';
import { note } from '../sentences/index.ts';
import { ColumnBuilder } from './column-builder.ts';

/** Yes and no. */
export class YesNoColumnBuilder extends ColumnBuilder {
  private readonly words: ReadonlyMap<string, boolean>;
  private readonly yes: readonly string[];
  private readonly no: readonly string[];

  constructor(missing: readonly string[], yes: readonly string[], no: readonly string[], expected: number) {
    super(missing, expected);
    this.yes = yes;
    this.no = no;
    this.words = new Map([
      ...no.map((word) => [word.toLowerCase(), false] as const),
      ...yes.map((word) => [word.toLowerCase(), true] as const),
    ]);
  }

  put(rows: readonly (readonly string[])[], at: number): void {
    this.reserve(rows.length);
    let row = this.length;
    for (let i = 0; i < rows.length; i++, row++) {
      const raw = rows[i]![at];
      const text = raw === undefined ? '' : raw.trim();
      if (text === '') {
        this.blank++;
        continue;
      }
      const value = this.words.get(text.toLowerCase());
      if (value !== undefined) {
        this.kinds[row] = CellKind.yesNo;
        this.numbers[row] = value ? 1 : 0;
        this.filled++;
      } else if (!this.isMissing(text))
        this.hold(row, raw!, note('not-yes-no', { text, yes: this.yes.join(', '), no: this.no.join(', ') }));
    }
    this.length = row;
  }
}
