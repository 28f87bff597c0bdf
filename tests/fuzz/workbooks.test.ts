import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { IntakeRefusal, prepare } from '../../src/intake/index.ts';
import { preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';
import { type Chance, mutate, mutateBytes } from './mutate.ts';
import { fuzz } from './run.ts';

const folder = join(import.meta.dirname, '..', 'intake', 'workbooks');
const files = readdirSync(folder)
  .filter((name) => /\.(xlsx|ods)$/.test(name))
  .map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }));

/** What a workbook must not cost, whatever it claims to unpack to. */
const LARGEST_UNPACKED = 20_000_000;

/** Parts of markup that have troubled readers of it. */
const parts: readonly string[] = [
  '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>',
  '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]>&f;',
  '<c r="XFD1048576"><v>1</v></c>',
  '<row r="1048576"/>',
  '<row r="99999999999"><c r="A1"><v>1</v></c></row>',
  '<c r="A1" t="s"><v>999999999</v></c>',
  '<c r="A1" t="s"><v>-1</v></c>',
  '<c r="A1"><f>HYPERLINK("javascript:alert(1)")</f><v>x</v></c>',
  '<table:table-cell table:number-columns-repeated="2000000000"/>',
  '<table:table-row table:number-rows-repeated="2000000000"><table:table-cell office:value="1"/></table:table-row>',
  '<a>'.repeat(2_000),
  '<![CDATA[',
  '-->',
  '&#x0;',
  '&#99999999;',
  '&unknown;',
];

/** A workbook whose bytes, or whose parts under the packing, are changed. */
function workbook(chance: Chance): { readonly name: string; readonly bytes: Uint8Array } {
  const { name, bytes } = chance.of(files);
  if (chance.n(4) === 0) return { name, bytes: mutateBytes(bytes, chance) };
  const inside = unzipSync(bytes);
  const names = Object.keys(inside);
  const texts = [...names.map((one) => new TextDecoder().decode(inside[one])), ...parts];
  for (let times = 1 + chance.n(2); times > 0; times--) {
    const one = chance.of(names);
    const text = new TextDecoder().decode(inside[one]);
    const at = chance.n(text.length + 1);
    const changed =
      chance.n(2) === 0 ? text.slice(0, at) + chance.of(parts) + text.slice(at) : mutate(text, texts, chance);
    inside[one] = new TextEncoder().encode(changed);
  }
  if (chance.n(10) === 0) delete inside[chance.of(names)];
  return { name, bytes: zipSync(inside, { level: 1 }) };
}

describe('hostile workbooks', () => {
  test('are brought in or refused in a sentence; no formula, link or entity comes of them, and they unpack to no more than is allowed', async () => {
    const { counts } = await fuzz('workbooks', 0.1, async (chance) => {
      const { name, bytes } = workbook(chance);
      const session = Session.create();
      try {
        const prepared = await prepare(bytes, { name, largestUnpacked: LARGEST_UNPACKED });
        expect(prepared.bytes.length).toBeLessThan(LARGEST_UNPACKED * 2);
        const work = preparing(session, {
          bytes: prepared.bytes,
          name,
          sheet: null,
          now: '2025-06-01',
          ...prepared.options,
        });
        let step = work.next();
        while (!step.done) step = work.next();
        const done = session.writePlanned(step.value);
        expect(done.ok ? '' : done.sentence).toBe('');
      } catch (reason) {
        if (!(reason instanceof IntakeRefusal)) throw reason;
        expect(reason.message).not.toBe('');
        return 'refused';
      }
      const saved = session.save();
      expect(saved).not.toContain('"formula":');
      expect(saved).not.toContain('root:');
      expect(Session.open(saved).save()).toBe(saved);
      return 'brought in';
    });
    expect(counts['brought in']).toBeGreaterThan(0);
  });
});
