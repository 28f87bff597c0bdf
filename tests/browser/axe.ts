import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

/** Rules of WCAG 2.0 to 2.2, levels A and AA, as axe-core checks them (W3C Recommendation 2023-10-05). */
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core finds wrong on the page, or in the dialogue in front of it, one line each. */
export async function violations(
  page: Page,
  {
    enhanced = false,
  }: { /** Text at 7 to 1 as well (success criterion 1.4.6). */ readonly enhanced?: boolean } = {},
): Promise<readonly string[]> {
  // Read once per page: its half a megabyte takes as long as a look.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe);
  const results = await page.evaluate(
    ([tags, more]) =>
      (window as unknown as { axe: { run(where: Node, options: object): Promise<AxeResults> } }).axe.run(
        // Behind a dialogue the page is inert, and was looked at by itself.
        document.querySelector('dialog:modal, [aria-modal="true"]') ?? document,
        {
          runOnly: { type: 'tag', values: tags },
          // Of what passed and does not apply it need not name every node.
          resultTypes: ['violations'],
          rules: { 'color-contrast-enhanced': { enabled: more } },
        },
      ),
    [levels, enhanced] as const,
  );
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help} at ${target.join(' ')} (${failureSummary})`),
  );
}
