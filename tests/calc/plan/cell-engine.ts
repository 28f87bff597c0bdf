import {
  type CellValue,
  CellValueDetailedType,
  DetailedCellError,
  FunctionPlugin,
  HyperFormula,
  SimpleRangeValue,
} from 'hyperformula';
import { invoke } from '../../../functions/core/invoke.ts';
import { registry } from '../../../functions/registry.ts';
import { cellEngineSettings } from '../../../src/calc/cell-engine/settings.ts';
import { argumentOf, innerOfOutcome } from '../../../src/calc/cells/convert.ts';
import { columnNames, type RandomSheet } from './data.ts';

/** Hands the functions of the domain to the cell engine as they are: raw arguments in, the outcome out. */
class Domain extends FunctionPlugin {
  static override implementedFunctions = Object.fromEntries(
    [...registry.keys()].map((name) => [
      name,
      { method: 'ask', parameters: [{ argumentType: 'ANY' as never, optionalArg: true }], repeatLastArgs: 1 },
    ]),
  );
  ask(
    tree: Parameters<FunctionPlugin['evaluateAst']>[0] & { procedureName: string; args: never[] },
    state: Parameters<FunctionPlugin['evaluateAst']>[1],
  ) {
    const definition = registry.get(tree.procedureName)!;
    const given = tree.args.map((arg) => argumentOf(this.evaluateAst(arg, state)));
    return innerOfOutcome(invoke(definition, given));
  }
}

/** Lets the cell engine's lookups answer a blank cell as it is: it would make 0 of it, where OpenFormula answers the cell. */
function keepLookedUpBlanks(): void {
  const lookup = HyperFormula.getFunctionPlugin('VLOOKUP')!.prototype as unknown as {
    zeroIfEmptyResult(value: unknown): unknown;
  };
  if (!lookup.zeroIfEmptyResult)
    throw new Error('the cell engine answers blanks of lookups in another way now');
  lookup.zeroIfEmptyResult = (value) => value;
}

let registered = false;

/** What the cell engine answers, in the terms of the book. */
export interface Answer {
  readonly value: number | string | boolean | null;
  /** The error code instead of a value. */
  readonly error?: string;
  readonly isDate: boolean;
  /** Part of an array of more than one cell, or refused because it is one. */
  readonly isArray: boolean;
}

/** Evaluates formulas in real cells: the sheet's columns stand in A, B, …; each formula gets a column of its own. */
export function inCells(sheet: RandomSheet, formulas: readonly ((row: number) => string)[]): Answer[][] {
  if (!registered) {
    const names = Object.fromEntries([...registry.keys()].map((name) => [name, name]));
    HyperFormula.registerFunctionPlugin(Domain as never, { enGB: names });
    keepLookedUpBlanks();
    registered = true;
  }
  const first = columnNames.length + 2;
  const apart = 8;
  const content: (string | number | boolean | null)[][] = [];
  for (let row = 0; row < sheet.rows; row++) {
    const line: (string | number | boolean | null)[] = columnNames.map(
      (name) => sheet.cells[name]![row]!.typed,
    );
    while (line.length < first) line.push(null);
    for (const text of formulas) line.push(`=${text(row)}`, ...new Array(apart - 1).fill(null));
    content.push(line);
  }
  const engine = HyperFormula.buildFromSheets({ data: content }, cellEngineSettings);
  try {
    return formulas.map((_, f) =>
      Array.from({ length: sheet.rows }, (_, row) => {
        const at = { sheet: 0, row, col: first + f * apart };
        const value: CellValue = engine.getCellValue(at);
        const isArray = engine.isCellPartOfArray(at);
        if (value instanceof DetailedCellError)
          return {
            value: null,
            error: value.value,
            isDate: false,
            isArray: isArray || value.value === '#SPILL!',
          };
        const type = engine.getCellValueDetailedType(at);
        const isDate =
          type === CellValueDetailedType.NUMBER_DATE || type === CellValueDetailedType.NUMBER_DATETIME;
        return { value: value as Answer['value'], isDate, isArray };
      }),
    );
  } finally {
    engine.destroy();
  }
}

export { SimpleRangeValue };
