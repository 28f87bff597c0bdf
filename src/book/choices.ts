/**
 * The choice that a text means: the same word in any case, or a letter alone that begins one of them and no other (F for
 * female). Undefined where it means none.
 */
export function choiceMeant(choices: readonly string[], text: string): string | undefined {
  const key = text.trim().toLowerCase();
  const same = choices.find((choice) => choice.trim().toLowerCase() === key);
  if (same !== undefined || key.length !== 1) return same;
  const begun = choices.filter((choice) => choice.trim().toLowerCase().startsWith(key));
  return begun.length === 1 ? begun[0] : undefined;
}
