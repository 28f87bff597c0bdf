export type CsvCell = string | number | null;

export interface CsvStyle {
  readonly delimiter: ',' | ';';
  readonly decimal: '.' | ',';
}

export const plain: CsvStyle = { delimiter: ',', decimal: '.' };
/** As spreadsheets of many countries write it. */
export const withCommas: CsvStyle = { delimiter: ';', decimal: ',' };

/** Lines of a file, as another program exports them. */
export function csvText(rows: readonly (readonly CsvCell[])[], { delimiter, decimal }: CsvStyle): string {
  const cell = (value: CsvCell): string => {
    const text =
      value === null ? '' : typeof value === 'number' ? String(value).replace('.', decimal) : value;
    return text.includes(delimiter) || text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return `${rows.map((row) => row.map(cell).join(delimiter)).join('\n')}\n`;
}

const day = 86_400_000;
export const isoDay = (from: string, days: number): string =>
  new Date(Date.parse(`${from}T00:00:00Z`) + days * day).toISOString().slice(0, 10);
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / day);
/** 08.09.2025 */
export const dottedDay = (iso: string): string => iso.split('-').reverse().join('.');
