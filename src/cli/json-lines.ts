import { isIssue } from '../../functions/core/issue.ts';
import type { Session } from '../session/session.ts';

/** A JSON line for each row: `{"sheet","row","values"}`, columns by name, dates as ISO texts, errors as objects. */
export function* jsonLines(session: Session, sheet: string): Generator<string> {
  for (const { row, values } of session.records(sheet)) {
    const plain = Object.fromEntries(
      Object.entries(values).map(([name, value]) => [
        name,
        isIssue(value) ? { error: value.code, message: session.sentence(value) } : value,
      ]),
    );
    yield JSON.stringify({
      sheet: session.outline().sheets.find((s) => s.id === sheet)!.name,
      row: row + 1,
      values: plain,
    });
  }
}
