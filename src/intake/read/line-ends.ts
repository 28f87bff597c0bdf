/**
 * One line end for every file: carriage returns, alone or before a line feed, become line feeds, inside quoted cells too
 * (as XML 1.0, section 2.11, does it), so that files that mix the three lose no row. A pair across two pieces is one end.
 */
export function* withOneLineEnd(pieces: Iterable<string>): Generator<string> {
  let waiting = '';
  for (const piece of pieces) {
    const text = waiting + piece;
    waiting = text.endsWith('\r') ? '\r' : '';
    const whole = waiting === '' ? text : text.slice(0, -1);
    if (whole !== '') yield whole.includes('\r') ? whole.replace(/\r\n?/g, '\n') : whole;
  }
  if (waiting !== '') yield '\n';
}

/** The same for a text at once. */
export const oneLineEnd = (text: string): string => [...withOneLineEnd([text])].join('');
