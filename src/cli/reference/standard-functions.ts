/** The reference of the built-in functions, family by family, from their records. */
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import { builtInHelp } from '../../calc/builtins/api.ts';
import { anchor, list, page, safe, table } from './html.ts';

const row = ({
  name,
  aliases = [],
  inXlsx,
  signature,
  summary,
  notes,
  result,
}: FunctionHelp): readonly string[] => [
  `<code id="${anchor(name)}">${safe(signature)}</code>`,
  [summary, ...notes].map((text) => safe(text)).join('<br>'),
  safe(result.about),
  inXlsx ?? '',
  safe(aliases.join(', ')),
];

export function standardFunctions(): string {
  const all = builtInHelp();
  const families = [...new Set(all.map(({ family }) => family))];
  const id = (family: string) => `family-${families.indexOf(family) + 1}`;
  const menu = list(families.map((family) => `<a href="#${id(family)}">${safe(family)}</a>`));
  const body = families
    .map((family) => {
      const members = all.filter((help) => help.family === family);
      const sources = [...new Set(members.flatMap(({ sources }) => sources.map(({ citation }) => citation)))];
      return [
        `<section aria-labelledby="${id(family)}">`,
        `<h2 id="${id(family)}">${safe(family)}</h2>`,
        table({
          caption: family,
          headings: ['Function', 'What it gives', 'Result', 'In XLSX', 'Also called'],
          rows: members.map(row),
        }),
        '<h3>Sources</h3>',
        list(sources.map(safe)),
        '</section>',
      ].join('\n');
    })
    .join('\n');
  return page(
    'Standard functions',
    `${all.length} functions of spreadsheets at large. They work in every formula, beside the functions for squats.`,
    menu,
    body,
  );
}
