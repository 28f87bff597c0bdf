/** The reference of functions, from their definitions. */
import { describe, type FunctionHelp } from '../../../functions/core/describe.ts';
import { registry } from '../../../functions/registry.ts';
import { anchor, list, page, safe, table } from './html.ts';

const code = (text: string): string => `<code>${safe(text)}</code>`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const part = (title: string, html: string): string => (html === '' ? '' : `<h4>${title}</h4>\n${html}`);
const status = (text: string): string => `<span class="status">[${safe(text)}]</span>`;

/** Another function, as a link where the reference has it. */
export const functionLink = (name: string, file = ''): string =>
  registry.has(name) ? `<a href="${file}#${anchor(name)}">${safe(name)}</a>` : safe(name);

function argumentsTable(h: FunctionHelp): string {
  if (h.parameters.length === 0) return '';
  return table({
    caption: `Arguments of ${h.name}`,
    headings: ['Argument', 'What it is', 'Accepts', 'Default'],
    rows: h.parameters.map((p) => [
      code(p.name),
      safe(p.about),
      safe(p.accepts) + (p.because ? `<br><span class="status">${safe(p.because)}</span>` : ''),
      p.optional ? safe(p.fallback === undefined ? 'optional' : String(round(p.fallback))) : 'required',
    ]),
  });
}

const round = (value: number | string | boolean): number | string | boolean =>
  typeof value === 'number' ? Math.round(value * 1e4) / 1e4 : value;

function exampleLine(example: FunctionHelp['examples'][number]): string {
  const gives = Array.isArray(example.gives)
    ? `{${(example.gives as readonly (readonly number[])[]).map((row) => row.join(', ')).join('; ')}}`
    : String(example.gives);
  return `${code(example.formula)} returns <strong>${safe(gives)}</strong>${example.says ? ` (${safe(example.says)})` : ''}`;
}

function constantsDetails(h: FunctionHelp): string {
  if (h.constants.length === 0) return '';
  const rows = h.constants.map((c) => [
    safe(c.name),
    `${c.value}${c.unit ? ` ${safe(c.unit)}` : ''}`,
    `${status(c.source.status)} ${safe(c.source.citation)}`,
  ]);
  const words = h.constants.length === 1 ? '1 constant' : `${h.constants.length} constants`;
  return `<details><summary>${words} of ${safe(h.name)}, with sources</summary>\n${table({
    caption: `Constants of ${h.name}`,
    headings: ['Constant', 'Value', 'Source'],
    rows,
  })}\n</details>`;
}

function functionSection(h: FunctionHelp): string {
  const result = `${capital(h.result.about)}${h.result.unit ? `, ${h.result.unit}` : ''}${
    h.result.oneOf ? `: ${h.result.oneOf.map((word) => `"${word}"`).join(', ')}` : ''
  }.`;
  return [
    `<section aria-labelledby="${anchor(h.name)}">`,
    `<h3 id="${anchor(h.name)}">${safe(h.name)}</h3>`,
    `<p>${safe(h.summary)}</p>`,
    `<p class="signature">${safe(h.signature)}</p>`,
    argumentsTable(h),
    part('Result', `<p>${safe(result)}</p>`),
    part('Rule', `<pre>${safe(h.rule)}</pre>`),
    h.cautions.length > 0 ? `<div class="caution">${part('Cautions', list(h.cautions.map(safe)))}</div>` : '',
    part('Notes', list(h.notes.map(safe))),
    part('Examples', list(h.examples.map(exampleLine))),
    part('Sources', list(h.sources.map((s) => `${status(s.status)} ${safe(s.citation)}`))),
    constantsDetails(h),
    part(
      'See also',
      h.seeAlso.length > 0 ? `<p>${h.seeAlso.map((name) => functionLink(name)).join(', ')}</p>` : '',
    ),
    '</section>',
  ]
    .filter((line) => line !== '')
    .join('\n');
}

/** The whole function reference as one page, family by family, from the definitions. */
export function functionReference(): string {
  const families = new Map<string, FunctionHelp[]>();
  for (const definition of registry.values()) {
    const help = describe(definition);
    families.set(help.family, [...(families.get(help.family) ?? []), help]);
  }
  const menu = [...families]
    .map(
      ([family, members]) =>
        `<p><strong>${safe(capital(family))}</strong></p>\n${list(members.map(({ name }) => functionLink(name)))}`,
    )
    .join('\n');
  const body = [...families]
    .map(
      ([family, members]) =>
        `<h2 id="${family.replaceAll(' ', '-')}">${safe(capital(family))}</h2>\n${members.map(functionSection).join('\n')}`,
    )
    .join('\n');
  return page(
    'Functions',
    `${registry.size} functions for squats, tests and training logs. Lengths are in cm, masses in kg, angles in degrees, forces in N, moments in N·m, times in min, velocities in m/s, dates as days.`,
    menu,
    body,
  );
}
