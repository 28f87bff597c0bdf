import { describe, type FunctionHelp } from '../../functions/core/describe.ts';
import { registry } from '../../functions/registry.ts';
import { builtInHelp } from '../calc/builtins/api.ts';
import { functionNames } from '../calc/index.ts';
import { Refusal } from './exit.ts';
import { nearest } from './nearest.ts';
import { print } from './print.ts';

/** The reference, from the definitions: all functions a line each, or one whole. */
export function functionsCommand(name: string | undefined, options: { json?: boolean }): void {
  print(reference(name, options));
}

function reference(name: string | undefined, options: { json?: boolean }): string {
  if (name === undefined) {
    const all = [...registry.values()].map(describe);
    return options.json ? JSON.stringify(all, null, 2) : overview(all);
  }
  const definition = registry.get(name.toUpperCase());
  if (!definition) {
    const standard = standardHelp(name.toUpperCase());
    if (standard) return options.json ? JSON.stringify(standard, null, 2) : whole(standard);
    const near = nearest(name.toUpperCase(), [...functionNames()]);
    throw new Refusal(
      `There is no function ${name}.${near ? ` Did you mean ${near}?` : ''} 'leverbook functions' lists all ${registry.size}.`,
    );
  }
  const help = describe(definition);
  return options.json ? JSON.stringify(help, null, 2) : whole(help);
}

/** A built-in function by any of its names. */
const standardHelp = (name: string): FunctionHelp | undefined =>
  builtInHelp().find((help) => help.name === name || help.aliases?.includes(name));

function overview(all: readonly FunctionHelp[]): string {
  const families = new Map<string, FunctionHelp[]>();
  for (const help of all) families.set(help.family, [...(families.get(help.family) ?? []), help]);
  return [...families]
    .map(
      ([family, members]) =>
        `${family}\n${members.map((h) => `  ${h.signature}\n      ${h.summary}`).join('\n')}`,
    )
    .join('\n\n');
}

function whole(h: FunctionHelp): string {
  const part = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
  return [
    h.signature,
    h.summary,
    ...(h.aliases?.length ? [`Also called ${h.aliases.join(', ')}.`] : []),
    ...part(
      'Arguments',
      h.parameters.map((p) => {
        const fallback = p.fallback === undefined ? '' : `, default ${p.fallback}`;
        const because = p.because ? ` (${p.because})` : '';
        return `${p.name}: ${p.about}. Accepts ${p.accepts}${because}${p.optional ? `; optional${fallback}` : ''}`;
      }),
    ),
    ...part('Result', [
      `${h.result.about}${h.result.unit ? `, ${h.result.unit}` : ''}${h.result.oneOf ? `: ${h.result.oneOf.join(', ')}` : ''}`,
    ]),
    ...part('Rule', h.rule === '' ? [] : h.rule.split('\n')),
    ...part(
      'Constants',
      h.constants.map(
        (c) =>
          `${c.name} = ${c.value}${c.unit ? ` ${c.unit}` : ''} [${c.source.status}: ${c.source.citation}]`,
      ),
    ),
    ...part(
      'Sources',
      h.sources.map((s) => `[${s.status}] ${s.citation}`),
    ),
    ...part('Notes', h.notes),
    ...part('Cautions', h.cautions),
    ...part(
      'Examples',
      h.examples.map(
        (e) => `${e.formula}  returns ${JSON.stringify(e.gives)}${e.says ? `  (${e.says})` : ''}`,
      ),
    ),
    ...part('See also', h.seeAlso.length ? [h.seeAlso.join(', ')] : []),
  ].join('\n');
}
