/** Reads the XML of workbook files bit by bit, within limits. */
import { SaxesParser } from 'saxes';
import { IntakeRefusal } from '../../sentences/index.ts';

export type Attributes = Readonly<Record<string, string>>;

/** What is told about a document; names come without their prefix. */
export interface XmlReader {
  open?(name: string, attributes: Attributes): void;
  close?(name: string): void;
  text?(text: string): void;
}

const local = (name: string): string => name.slice(name.indexOf(':') + 1);

function withoutPrefixes(attributes: Attributes): Attributes {
  const out: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) {
    // r:id and id can stand together: the bare one is kept for its name, the other for its prefix, too.
    out[name] = value;
    const bare = local(name);
    if (!(bare in out)) out[bare] = value;
  }
  return out;
}

/**
 * Reads an XML document piece by piece, as it is unpacked; a part that the archive does not have tells nothing. Entities that the document defines itself are not followed.
 * @throws IntakeRefusal when it is not well formed
 */
export function* readXml(
  pieces: Iterable<Uint8Array> | undefined,
  reader: XmlReader,
  name: string,
): Generator<void> {
  if (!pieces) return;
  const parser = new SaxesParser();
  const damaged = (): never => {
    throw new IntakeRefusal('workbook-damaged', { name });
  };
  parser.on('error', damaged);
  parser.on('opentag', (tag) => reader.open?.(local(tag.name), withoutPrefixes(tag.attributes)));
  parser.on('closetag', (tag) => reader.close?.(local(tag.name)));
  parser.on('text', (text) => reader.text?.(text));
  parser.on('cdata', (text) => reader.text?.(text));
  const utf8 = new TextDecoder();
  for (const piece of pieces) {
    // Large pieces are read in parts, so that the work can be stopped in between.
    for (let from = 0; from < piece.length; from += 1 << 17) {
      parser.write(utf8.decode(piece.subarray(from, from + (1 << 17)), { stream: true }));
      yield;
    }
  }
  parser.write(utf8.decode());
  parser.close();
}
