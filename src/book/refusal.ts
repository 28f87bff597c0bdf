/** An edit or a command that cannot be done; the message is one sentence for the user. Nothing was changed. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
}

export function refuse(sentence: string): never {
  throw new Refusal(sentence);
}
