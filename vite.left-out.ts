import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

const engine = 'hyperformula/es';

/**
 * Parts of packages that the page never asks for, by the end of their path, with what stands in their place. Each is
 * reached from code that is used, so no bundler can tell by itself.
 */
const leftOut: Readonly<Record<string, string | ((code: string) => string)>> = {
  // The grid's style sheet once more as a text, to write it into the page at run time: the page links the style sheet.
  'handsontable/styles/handsontableStyles.mjs': "export default ''; export const handsontableStyles = '';",

  // The cell engine's descriptions of its functions, for its own listing of them.
  [`${engine}/interpreter/functionMetadata/index.mjs`]: 'export const FUNCTION_DOCS = {};',

  // Its formula reader: formulas come to it as trees, made by the language's own parser.
  [`${engine}/parser/ParserWithCaching.mjs`]: 'export class ParserWithCaching {}',
  [`${engine}/parser/FormulaParser.mjs`]: 'export class FormulaLexer {}',
  [`${engine}/parser/LexerConfig.mjs`]: 'export const buildLexerConfig = undefined;',

  // Its editing of cells, with undo, clipboard and export: the engine holds no cells here, the book does.
  [`${engine}/Operations.mjs`]:
    'export class Operations {} export const normalizeAddedIndexes = undefined, normalizeRemovedIndexes = undefined;',
  [`${engine}/CrudOperations.mjs`]: 'export class CrudOperations {}',
  [`${engine}/UndoRedo.mjs`]: 'export class UndoRedo {}',
  [`${engine}/ClipboardOperations.mjs`]: 'export class ClipboardOperations {}',
  [`${engine}/Exporter.mjs`]:
    'export class Exporter {} export class ExportedCellChange {} export class ExportedNamedExpressionChange {}',
  // Its graph of cells and the order that it computes them in, for the same reason.
  [`${engine}/DependencyGraph/DependencyGraph.mjs`]:
    'export class DependencyGraph { static buildEmpty() { return { sheetReferenceRegistrar: { ensureSheetRegistered() {} } }; } }',
  [`${engine}/GraphBuilder.mjs`]: 'export class GraphBuilder { buildGraph() {} }',
  [`${engine}/Evaluator.mjs`]: 'export class Evaluator { run() {} }',

  // The engine's face to a program that keeps its cells in it: all that an instance answers. Only what is shared by all is asked.
  [`${engine}/HyperFormula.mjs`]: (code) => {
    const [start, end] = [code.indexOf('  getCellValue('), code.indexOf('\nHyperFormula.version')];
    const close = code.lastIndexOf('\n}\n', end);
    if (start < 0 || close < start) throw new Error('the face of the cell engine looks another way now');
    return `${code.slice(0, code.lastIndexOf('  /**', start))}${code.slice(close)}`;
  },

  // Its writer of numbers in formats: TEXT is written by another package.
  [`${engine}/format/format.mjs`]:
    'const no = () => undefined; export { no as format, no as defaultStringifyCurrency, no as defaultStringifyDateTime, no as defaultStringifyDuration }; export const padLeft = (number, size) => { let text = String(number); while (text.length < size) text = "0" + text; return text; };',

  // That package as ES modules, so that its readers of dates and numbers fall away, and in English alone.
  'numfmt/dist/index.js': () => inEnglish(readFileSync('node_modules/numfmt/dist/index.mjs', 'utf8')),

  // The checking library's writer of JSON schemas, which every shape carries along.
  'zod/v4/core/to-json-schema.js':
    'const no = () => undefined; export { no as createToJSONSchemaMethod, no as createStandardJSONSchemaMethod, no as extractDefs, no as finalize, no as initializeContext, no as process, no as processSchema };',
  'zod/v4/core/json-schema-processors.js': undefinedExports,
};

/** The number formats without the words of other languages. */
function inEnglish(code: string): string {
  const [start, end] = [
    code.indexOf('function initLocales() {'),
    code.indexOf('//#region lib/tokenHandlers.ts'),
  ];
  const english = code.slice(start, end).match(/addLocale\(\{(?:(?!addLocale)[\s\S])*?\}, "en"\);/)?.[0];
  if (start < 0 || end < start || !english) throw new Error('the number formats look another way now');
  const one = `${code.slice(0, start)}function initLocales() {\n${english}\n}\n${code.slice(end)}`;
  return one.replace(/const codeToLocale = Object\.freeze\(\{[^}]*\}\);/, 'const codeToLocale = {};');
}

/** Everything that a module exports, as nothing: who reads it through the module's name space is not warned of a gap. */
function undefinedExports(code: string): string {
  const names = [...code.matchAll(/^export (?:async )?(?:const|let|function|class) (\w+)/gm)];
  return names.map(([, name]) => `export const ${name} = undefined;`).join('\n');
}

/** Leaves those parts out of what is built, and stops a build with a package that no longer has one of them. */
export function leaveOut(...of: readonly string[]): Plugin {
  const parts = Object.entries(leftOut).filter(([path]) => of.some((name) => path.startsWith(`${name}/`)));
  const met = new Set<string>();
  const built = new Set<string>();
  return {
    name: `left-out-of-${of.join('-and-')}`,
    apply: 'build',
    enforce: 'pre',
    load(id) {
      for (const name of of) if (id.includes(`node_modules/${name}/`)) built.add(name);
      const part = parts.find(([path]) => id.endsWith(`node_modules/${path}`));
      if (!part) return null;
      met.add(part[0]);
      const [, instead] = part;
      return typeof instead === 'string' ? instead : instead(readFileSync(id, 'utf8'));
    },
    buildEnd(error) {
      const gone = parts
        .map(([path]) => path)
        .filter((path) => !met.has(path) && built.has(path.split('/')[0]!));
      if (!error && gone.length > 0)
        this.error(`vite.left-out.ts names what is not there: ${gone.join(', ')}`);
    },
  };
}
