import { reasonsOf } from '../figure/drawing/explained-drawing.ts';
import type { Working } from './working-answers.ts';

/** A working as plain text, for a mail or a lab book. */
export function workingText(working: Omit<Working, 'text'>): string {
  const lines = [`${working.title}: ${working.display || 'blank'}${spaced(working.unit, working.display)}`];
  const block = (title: string, items: readonly string[]): void => {
    if (items.length) lines.push('', title, ...items.map((item) => `  ${item}`));
  };
  if (working.sentence) lines.push(working.sentence);
  if (working.marked) lines.push(...working.marked);
  if (working.formula !== undefined) block('Formula', [`= ${working.formula}`, `= ${working.filled}`]);
  for (const call of working.calls) {
    block(`${call.formula} = ${call.result}`, [
      ...(call.sentence ? [call.sentence] : []),
      ...call.steps.map(
        ({ name, symbol, rule, text }) =>
          `${name}${symbol ? ` (${symbol})` : ''}: ${text}${rule ? `   [${rule}]` : ''}`,
      ),
    ]);
  }
  if (working.explained) block('Where the observed lean comes from', reasonsOf(working.explained));
  block(
    'Constants',
    working.constants.map(
      ({ name, text, source }) => `${name}: ${text}. ${source.citation} (${source.status})`,
    ),
  );
  block(
    'Sources',
    working.sources.map(({ citation, status }) => `${citation} (${status})`),
  );
  block('Take care', working.cautions);
  block('Checks', working.doubts);
  block(
    'Came from',
    working.cameFrom.map(({ label, text }) => `${label}: ${text}`),
  );
  return `${lines.join('\n')}\n`;
}

const spaced = (unit: string, display: string): string =>
  !display || !unit ? '' : unit === '°' ? unit : ` ${unit}`;
