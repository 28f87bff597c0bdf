/** The page's side of the worker, with a worker that is a port of this process. */
import { expose } from 'comlink';
import { afterEach, expect, test } from 'vitest';
import { Refusal } from '../../src/book/refusal.ts';
import { Client } from '../../src/worker/client.ts';

let close = (): void => undefined;
afterEach(() => close());

/** A client whose worker answers `cell` so. */
function clientOf(cell: () => Promise<unknown>): Client {
  const { port1, port2 } = new MessageChannel();
  expose({ begin: async () => undefined, cell }, port2);
  port1.start();
  const worker = {
    addEventListener: port1.addEventListener.bind(port1),
    removeEventListener: port1.removeEventListener.bind(port1),
    postMessage: port1.postMessage.bind(port1),
    terminate: () => undefined,
  };
  const client = new Client(() => worker as unknown as Worker);
  close = () => {
    client.close();
    port1.close();
    port2.close();
  };
  return client;
}

const place = { sheet: 'sheet', column: 'column', row: 0 };

async function toldOf(cell: () => Promise<unknown>): Promise<readonly string[]> {
  const { service } = clientOf(cell);
  const told: string[] = [];
  await service.onFault((sentence) => told.push(sentence));
  // As what asks on the page does: it goes on with the next question.
  await service.cell(place).catch(() => undefined);
  return told;
}

test('a fault in a question is told, whatever its asker makes of it', async () => {
  const told = await toldOf(async () => {
    throw new TypeError('x is undefined');
  });
  expect(told).toEqual([
    'Part of the page could not be shown (x is undefined). Reload the page; the book is as last saved.',
  ]);
});

test('a question about what is gone from the book is refused, and nothing is told', async () => {
  expect(
    await toldOf(async () => {
      throw new Refusal('There is no such sheet.');
    }),
  ).toEqual([]);
});

test('an answer is told to nobody but its asker', async () => {
  expect(await toldOf(async () => ({ display: '1' }))).toEqual([]);
});
