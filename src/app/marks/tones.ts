import type { Tone } from '../../session/marks/mark-record.ts';

/**
 * Each tone has a shape of its own, drawn in a square of 12: they are told apart without colour, and in print. `filled`
 * is painted, `lined` is an outline.
 */
export const signs: Readonly<Record<Tone, { readonly filled?: string; readonly lined?: string }>> = {
  attend: { filled: 'M6 .8 11.6 11.2H.4Z' },
  watch: { filled: 'M1.4 1.4H6V10.6H1.4Z', lined: 'M1.4 1.4H10.6V10.6H1.4Z' },
  good: { filled: 'M6 1A5 5 0 0 1 6 11A5 5 0 0 1 6 1Z' },
  note: { filled: 'M.4 4H11.6V8H.4Z' },
  plain: { lined: 'M6 1.6A4.4 4.4 0 0 1 6 10.4A4.4 4.4 0 0 1 6 1.6Z' },
};

/** The shapes as characters, for lists that take nothing else. */
export const characters: Readonly<Record<Tone, string>> = {
  attend: '▲',
  watch: '◧',
  good: '●',
  note: '▬',
  plain: '○',
};

export const toneAbout: Readonly<Record<Tone, string>> = {
  attend: 'needs action',
  watch: 'watch',
  good: 'as intended',
  note: 'worth knowing',
  plain: 'neither good nor bad',
};
