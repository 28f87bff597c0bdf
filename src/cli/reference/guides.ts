/** The guides as pages of the reference. */
import { type Guide, pictureName, piecesOf, type Step } from '../../guides/index.ts';
import { list, page, safe } from './html.ts';

const words = (text: string): string =>
  piecesOf(text)
    .map(({ as, text: piece }) =>
      as === 'plain' ? safe(piece) : as === 'press' ? `<b>${safe(piece)}</b>` : `<code>${safe(piece)}</code>`,
    )
    .join('');

function stepItem(guide: Guide, step: Step): string {
  return [
    `<li id="${step.id}"><p>${words(step.text)}</p>`,
    ...(step.sees ? [`<p class="status">${words(step.sees)}</p>`] : []),
    ...(step.lines ? [`<pre>${safe(step.lines.join('\n'))}</pre>`] : []),
    ...(step.picture
      ? [
          `<img src="pictures/${pictureName(guide, step)}" alt="${safe(step.picture)}" width="1200" height="740" loading="lazy">`,
        ]
      : []),
    '</li>',
  ].join('\n');
}

/** A guide as one page; its pictures stand beside it. */
export function guidePage(guide: Guide): string {
  const { title, lead, book, files, parts, cautions } = guide;
  const id = (i: number) => `part-${i + 1}`;
  const menu = list([
    ...parts.map((part, i) => `<a href="#${id(i)}">${safe(part.title)}</a>`),
    '<a href="#take-care">Take care</a>',
  ]);
  const body = [
    `<p>The files are in <code>sample-books/${book}/</code>; the same guide in the app, under <b>Help</b>, offers them too. All people in them are invented; with your own files the steps are the same.</p>`,
    list(Object.entries(files).map(([name, about]) => `<code>${safe(name)}</code>: ${safe(about)}`)),
    ...parts.map((part, i) =>
      [
        `<section aria-labelledby="${id(i)}">`,
        `<h2 id="${id(i)}">${safe(part.title)}</h2>`,
        '<ol>',
        ...part.steps.map((step) => stepItem(guide, step)),
        '</ol>',
        '</section>',
      ].join('\n'),
    ),
    '<section aria-labelledby="take-care" class="caution">\n<h2 id="take-care">Take care</h2>',
    list(cautions.map(safe)),
    '</section>',
  ].join('\n');
  return page(`Step by step: ${title.charAt(0).toLowerCase()}${title.slice(1)}`, lead, menu, body);
}
