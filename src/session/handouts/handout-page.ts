import { commonExtent, drawingOf } from '../figure/drawing/drawing.ts';
import { centimetres, degrees, isPosture } from '../figure/drawing/drawing-words.ts';
import { explainedShape } from '../figure/drawing/explained-drawing.ts';
import { el, type Shape } from '../figure/drawing/svg-shape.ts';
import type { Figure } from '../figure/figure-answers.ts';
import type { Handout, Open } from './handout.ts';

/**
 * One athlete's page, and a second one for an observed squat. `prefix` keeps the ids of several pages in one document
 * apart.
 */
export function handoutPages(handout: Handout, prefix: string): readonly Shape[] {
  const observed = observedPage(handout);
  return observed ? [firstPage(handout, prefix), observed] : [firstPage(handout, prefix)];
}

const heading = ({ book, athlete, tested }: Handout): Shape =>
  el(
    'header',
    {},
    el('p', { class: 'handout-book' }, book),
    el('h1', {}, athlete),
    tested !== null && el('p', { class: 'handout-tested' }, `Tested ${tested}`),
  );

/** Where the observed lean comes from: with its seven reasons too much for the first page. */
function observedPage(handout: Handout): Shape | null {
  const { explained } = handout.figure;
  if (!handout.parts.includes('observed') || !explained?.parts.length) return null;
  const day = explained.day === null ? '' : `, ${explained.day}`;
  return el(
    'article',
    { class: 'handout', 'aria-label': `${handout.athlete}: observed squat` },
    heading(handout),
    el(
      'section',
      { class: 'handout-observed' },
      el('h2', {}, `Observed lean${day}: where it comes from`),
      explainedShape(explained),
    ),
    caution(handout),
  );
}

function firstPage(handout: Handout, prefix: string): Shape {
  const has = (part: Handout['parts'][number]) => handout.parts.includes(part);
  const { athlete, retest } = handout;
  return el(
    'article',
    { class: 'handout', 'aria-label': athlete },
    heading(handout),
    has('figure') && figures(handout.figure, prefix),
    el(
      'div',
      { class: 'handout-columns' },
      has('numbers') && numbers(handout),
      el(
        'div',
        { class: 'handout-words' },
        has('findings') && list('Findings', handout.findings, none(handout, 'finding')),
        has('try') && list('Suggestions', handout.toTry, none(handout, 'try')),
        has('retest') && retest !== null && el('section', {}, el('h2', {}, 'Next test'), el('p', {}, retest)),
      ),
    ),
    caution(handout),
  );
}

/** Stands on every page: pages get separated. */
const caution = ({ cautions, contact }: Handout): Shape =>
  el(
    'footer',
    {},
    el('h2', {}, 'Please read'),
    el(
      'ul',
      {},
      cautions.map((sentence) => el('li', {}, sentence)),
    ),
    contact !== null && el('p', { class: 'handout-contact' }, `Contact: ${contact}`),
  );

/** What an empty part says. Where a sentence could not be decided, the page says so and does not sound like a result. */
function none({ open }: Handout, part: Open['part']): string {
  const reasons = [...new Set(open.filter((one) => one.part === part).map(({ reason }) => reason))];
  if (reasons.length > 0) return `Not assessed, because data are missing. ${reasons.slice(0, 2).join(' ')}`;
  return part === 'finding'
    ? 'No finding from these measurements.'
    : 'No suggestion from these measurements.';
}

function figures(figure: Figure, prefix: string): Shape {
  const extent = commonExtent(figure);
  const error = figure.leanError === null ? '' : ` ± ${Math.max(1, Math.round(figure.leanError))}°`;
  const one = (stand: Figure['flat'], only: 'flat' | 'lifted', name: string): Shape => {
    if (!isPosture(stand)) return el('p', { class: 'handout-none' }, `${name}: ${stand.sentence}`);
    return el(
      'figure',
      {},
      drawingOf(figure, { only, extent, prefix: `${prefix}${only}-` }),
      el('figcaption', {}, `${name}: minimum lean ${degrees(stand.lean)}${error}`),
    );
  };
  const { flat, lifted } = figure;
  return el(
    'div',
    { class: 'handout-figures' },
    one(flat, 'flat', 'Flat'),
    lifted !== null &&
      one(lifted, 'lifted', isPosture(lifted) ? `Heel lift ${centimetres(lifted.lift)}` : 'With heel lift'),
  );
}

const numbers = ({ numbers }: Handout): Shape =>
  el(
    'section',
    { class: 'handout-numbers' },
    el('h2', {}, 'Measurements and results'),
    el(
      'table',
      {},
      el(
        'tbody',
        {},
        numbers.map(({ label, value, error }) =>
          el(
            'tr',
            {},
            el('th', { scope: 'row' }, label),
            el('td', {}, value),
            el('td', { class: 'handout-error' }, error),
          ),
        ),
      ),
    ),
  );

const list = (title: string, sentences: readonly string[], none: string): Shape =>
  el(
    'section',
    {},
    el('h2', {}, title),
    sentences.length > 0
      ? el(
          'ul',
          {},
          sentences.map((sentence) => el('li', {}, sentence)),
        )
      : el('p', { class: 'handout-none' }, none),
  );
