import type { Figure } from '../api.ts';
import { commonExtent, drawingOf } from '../drawing/drawing.ts';
import { el, type Shape } from '../drawing/shape.ts';
import { centimetres, degrees, isPosture } from '../drawing/words.ts';
import type { Handout } from './handout.ts';

/** One athlete's page. `prefix` keeps the ids of several pages in one document apart. */
export function handoutPage(handout: Handout, prefix: string): Shape {
  const has = (part: Handout['parts'][number]) => handout.parts.includes(part);
  const { athlete, book, tested, retest, contact } = handout;
  return el(
    'article',
    { class: 'handout', 'aria-label': athlete },
    el(
      'header',
      {},
      el('p', { class: 'handout-book' }, book),
      el('h1', {}, athlete),
      tested !== null && el('p', { class: 'handout-tested' }, `Tested ${tested}`),
    ),
    has('figure') && figures(handout.figure, prefix),
    el(
      'div',
      { class: 'handout-columns' },
      has('numbers') && numbers(handout),
      el(
        'div',
        { class: 'handout-words' },
        has('findings') && list('What was found', handout.findings, 'Nothing that the rules speak of.'),
        has('try') && list('What to try', handout.toTry, 'Nothing to change for now.'),
        has('retest') && retest !== null && el('section', {}, el('h2', {}, 'Next test'), el('p', {}, retest)),
      ),
    ),
    el(
      'footer',
      {},
      el('h2', {}, 'Please read'),
      el(
        'ul',
        {},
        handout.cautions.map((caution) => el('li', {}, caution)),
      ),
      contact !== null && el('p', { class: 'handout-contact' }, `Questions: ${contact}`),
    ),
  );
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
      el('figcaption', {}, `${name}: lean ${degrees(stand.lean)}${error}`),
    );
  };
  const { flat, lifted } = figure;
  return el(
    'div',
    { class: 'handout-figures' },
    one(flat, 'flat', 'Flat'),
    lifted !== null &&
      one(lifted, 'lifted', isPosture(lifted) ? `Heels on ${centimetres(lifted.lift)}` : 'With the lift'),
  );
}

const numbers = ({ numbers }: Handout): Shape =>
  el(
    'section',
    { class: 'handout-numbers' },
    el('h2', {}, 'Measured and worked out'),
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
