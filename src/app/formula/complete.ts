import {
  type Completion,
  type CompletionContext,
  type CompletionResult,
  insertBracket,
  pickedCompletion,
} from '@codemirror/autocomplete';
import type { EditorView } from '@codemirror/view';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { Outline, SheetOutline } from '../../session/api.ts';
import { callAt, writtenArguments } from './signature.ts';

/** What can stand in a formula here. */
export interface Vocabulary {
  readonly functions: readonly FunctionHelp[];
  readonly builtIns: readonly FunctionHelp[];
  readonly outline: Outline | null;
  readonly sheet: SheetOutline | null;
  /** False while the text is a plain value. */
  readonly inFormula: boolean;
}

/** Completion of functions, columns of this sheet, sheets, named cells; after `sheet.` the columns of that sheet. */
export function completeFrom(context: CompletionContext, words: Vocabulary): CompletionResult | null {
  if (!words.inFormula) return null;
  const word = context.matchBefore(/[\p{L}_][\p{L}\p{N}_.]*/u);
  if (!word && !context.explicit) return null;
  const text = word?.text ?? '';
  const from = word?.from ?? context.pos;
  const before = context.state.sliceDoc(0, from);
  if ((before.match(/"/g)?.length ?? 0) % 2 === 1) return null;
  const dot = text.indexOf('.');
  const other = dot > 0 ? sheetNamed(words.outline, text.slice(0, dot)) : undefined;
  if (other)
    return {
      from: from + dot + 1,
      options: other.columns.map((column) => ({
        label: column.name,
        detail: detailOf(column.label, column.unit),
        type: 'column',
      })),
      validFor: /^[\p{L}\p{N}_]*$/u,
    };
  const wanted = wantedHere(before, words);
  return { from, options: optionsOf(words, wanted), validFor: /^[\p{L}\p{N}_.]*$/u };
}

/** The column that the argument at the caret asks for: the one that is what the parameter says, whatever its name. */
function wantedHere(before: string, { functions, sheet }: Vocabulary): string | undefined {
  const call = callAt(before, before.length);
  const parameter = call && functions.find(({ name }) => name === call.name)?.parameters[call.argument];
  return parameter && sheet ? columnInRole(sheet, parameter.name.toLowerCase())?.id : undefined;
}

function optionsOf(
  { functions, builtIns, outline, sheet }: Vocabulary,
  wanted: string | undefined,
): readonly Completion[] {
  const columns = (sheet?.columns ?? []).map(
    (column): Completion => ({
      label: column.name,
      detail: detailOf(column.label, column.unit),
      type: 'column',
      boost: column.id === wanted ? 99 : 90,
    }),
  );
  const names = (outline?.names ?? []).map(
    (named): Completion => ({
      label: named.name,
      detail: `setting, ${named.display}`,
      type: 'name',
      boost: 60,
    }),
  );
  const sheets = (outline?.sheets ?? []).map(
    (one): Completion => ({
      label: one.name,
      apply: `${one.name}.`,
      detail: `sheet ${one.label}`,
      type: 'sheet',
    }),
  );
  const calls = functions.map(
    (help): Completion => ({
      label: help.name,
      apply: call,
      detail: help.signature.slice(help.name.length),
      info: help.summary,
      type: 'function',
    }),
  );
  return [...columns, ...names, ...sheets, ...calls, ...builtIns.flatMap(builtInOptions)];
}

/** How far a family that few ask for is behind the first, in the boost that the list knows. */
const FURTHER = 1 / 40;

/** A function and its other names; the domain's own come first, then those that more people use. */
function builtInOptions(help: FunctionHelp, place: number): readonly Completion[] {
  const { name, aliases = [], summary } = help;
  const detail = `(${writtenArguments(help)
    .map(({ text }) => text)
    .join(', ')})`;
  const option = (label: string, info: string, boost: number): Completion => ({
    label,
    apply: call,
    detail,
    info,
    type: 'function',
    boost,
  });
  const boost = -1 - place * FURTHER;
  return [
    option(name, summary, boost),
    ...aliases.map((alias) => option(alias, `The same as ${name}. ${summary}`, boost - 10)),
  ];
}

/** Writes a function's name with its brackets, and the caret goes between them: as if they had been typed. */
function call(view: EditorView, completion: Completion, from: number, to: number): void {
  view.dispatch({
    changes: { from, to, insert: completion.label },
    selection: { anchor: from + completion.label.length },
    annotations: pickedCompletion.of(completion),
    userEvent: 'input.complete',
  });
  view.dispatch(insertBracket(view.state, '(') ?? view.state.replaceSelection('('));
}

const sheetNamed = (outline: Outline | null, name: string): SheetOutline | undefined =>
  outline?.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());

const detailOf = (label: string, unit: string | undefined): string => (unit ? `${label}, ${unit}` : label);
