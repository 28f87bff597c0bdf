/**
 * Tab-separated text, as programs with tables put it on the clipboard: a field with a tab, a line break or a quote in it
 * stands in double quotes, quotes inside doubled.
 */
export function parseTsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const end = text.length;
  while (at <= end) {
    let field = '';
    if (text[at] === '"') {
      const close = closingQuote(text, at);
      if (close === -1) {
        // A lone quote at the start is just a quote (5" deep, say).
        [field, at] = plainField(text, at);
      } else {
        field = text.slice(at + 1, close).replaceAll('""', '"');
        at = close + 1;
      }
    } else [field, at] = plainField(text, at);
    row.push(field);
    if (text[at] === '\t') {
      at++;
      continue;
    }
    rows.push(row);
    row = [];
    if (text[at] === '\r') at++;
    if (text[at] === '\n') at++;
    if (at >= end) break;
  }
  return rows;
}

/** The quote that closes a field: one that a tab, a line break or the end follows. */
function closingQuote(text: string, open: number): number {
  for (let at = open + 1; ; at++) {
    at = text.indexOf('"', at);
    if (at === -1) return -1;
    const next = text[at + 1];
    if (next === '"') at++;
    else return next === undefined || next === '\t' || next === '\r' || next === '\n' ? at : -1;
  }
}

function plainField(text: string, from: number): [field: string, end: number] {
  let at = from;
  while (at < text.length && text[at] !== '\t' && text[at] !== '\r' && text[at] !== '\n') at++;
  return [text.slice(from, at), at];
}

/** The same the other way. */
export function writeTsv(rows: readonly (readonly string[])[]): string {
  const quote = (field: string) => (/["\t\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field);
  return rows.map((row) => row.map(quote).join('\t')).join('\n');
}
