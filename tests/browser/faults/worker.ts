import { expose } from 'comlink';
import { type Builtin, builtins } from '../../../src/calc/builtins/index.ts';
import { plainLocale } from '../../../src/units/locale.ts';
import { Keeper } from '../../../src/worker/keeper.ts';
import type { Told, WorkerService } from '../../../src/worker/protocol.ts';
import { serviceOf } from '../../../src/worker/service.ts';
import { NOW } from './work.ts';

// The worker of the app, but for four things: snapshots come often, one function never comes back, the storage can be made
// to have no room, and files always come in at the same moment.

Date.prototype.toISOString = () => NOW;

(builtins as Map<string, Builtin>).set('NEVER', {
  name: 'NEVER',
  minArgs: 0,
  maxArgs: 1,
  parameters: '',
  about: 'Never comes back.',
  compute: () => {
    for (;;);
  },
});

let full = false;
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...args: Parameters<typeof put>) {
  if (full) throw new DOMException('no room', 'QuotaExceededError');
  return put.apply(this, args);
};

let tell: ((told: Told) => void) | undefined;
const keeper = new Keeper({
  locale: plainLocale,
  tell: (told) => tell?.(told),
  shelf: { policy: { entries: 6, bytes: 2_000_000 } },
});

const service: WorkerService & { fill(on: boolean): Promise<void> } = {
  ...serviceOf(keeper),
  async begin(port, beginning) {
    tell = (told) => port.postMessage(told);
    keeper.begin(beginning);
  },
  async fill(on) {
    full = on;
  },
};

expose(service);
