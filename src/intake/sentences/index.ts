/** Everything that the import says, as data until the last moment: a reason with details, and the sentence for it. */
import { evidence } from './evidence.ts';
import { refusals } from './refusals.ts';
import { reportNotes } from './report-notes.ts';
import { unreadable } from './unreadable-reasons.ts';
import type { Details, Say } from './wording.ts';

/** Every sentence of the import, by its reason. */
export const sentences = { ...refusals, ...evidence, ...unreadable, ...reportNotes };

export type Reason = keyof typeof sentences;

/** Something to say about a file, as data. */
export interface Note {
  readonly reason: Reason;
  readonly details: Details;
}

export const note = (reason: Reason, details: Details = {}): Note => ({ reason, details });

/** The sentence for a note. */
export const sentence = (n: Note): string => (sentences[n.reason] as Say)(n.details);

/** A file or its import settings that cannot be imported; the message is one sentence for the user. */
export class IntakeRefusal extends Error {
  override readonly name = 'IntakeRefusal';
  readonly note: Note;
  constructor(reason: keyof typeof refusals, details: Details = {}) {
    const why = note(reason, details);
    super(sentence(why));
    this.note = why;
  }
}
