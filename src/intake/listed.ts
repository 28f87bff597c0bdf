/** A list for a sentence, not longer than a reader bears. */
export const listed = (names: readonly string[]): string =>
  names.length > 12 ? `${names.slice(0, 12).join(', ')} and ${names.length - 12} more` : names.join(', ');
