import { describe, type FunctionHelp } from '../../functions/core/describe.ts';
import { registry } from '../../functions/registry.ts';
import { isFunctionName } from '../calc/index.ts';
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
    if (isFunctionName(name))
      throw new Refusal(
        `${name.toUpperCase()} is a standard spreadsheet function (OpenFormula, ISO/IEC 26300); this reference covers Leverbook’s own. 'leverbook functions' lists all ${registry.size}.`,
      );
    const near = nearest(name.toUpperCase(), [...registry.keys()]);
    throw new Refusal(
      `There is no function ${name}.${near ? ` Did you mean ${near}?` : ''} 'leverbook functions' lists all ${registry.size}.`,
    );
  }
  const help = describe(definition);
  return options.json ? JSON.stringify(help, null, 2) : whole(help);
}

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
    ...part('Rule', h.rule.split('\n')),
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
