/** The words about a figure that the page needs, from where they are made. */
export * from '../../session/figure/drawing/drawing-words.ts';
