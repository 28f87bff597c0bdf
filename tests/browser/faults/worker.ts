import { expose } from 'comlink';
import { type BuiltIn, builtIns } from '../../../src/calc/builtins/index.ts';
import { plainLocale } from '../../../src/units/locale.ts';
import { Keeper } from '../../../src/worker/keeper.ts';
import type { Told, WorkerService } from '../../../src/worker/protocol.ts';
import { serviceOf } from '../../../src/worker/service.ts';
import { telling } from './phases.ts';
import { NOW } from './work.ts';

// The worker of the app, but for five things: snapshots come often, one function never comes back, the storage can be made
// to have no room, files always come in at the same moment, and it tells what it is at, so that a kill can be aimed.

Date.prototype.toISOString = () => NOW;

(builtIns as Map<string, BuiltIn>).set('NEVER', {
  name: 'NEVER',
  aliases: [],
  measures: 'plain',
  export: null,
  implementation: {
    own: {
      minArgs: 0,
      maxArgs: 1,
      compute: () => {
        for (;;);
      },
    },
  },
});

const { is, over } = telling();

let full = false;
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...args: Parameters<typeof put>) {
  if (full) throw new DOMException('no room', 'QuotaExceededError');
  if (this.name === 'snapshots') is('snapshot');
  return put.apply(this, args);
};
// A segment of the second journal begins with an empty file, and ends with the emptying of the one before.
const { truncate } = FileSystemSyncAccessHandle.prototype;
FileSystemSyncAccessHandle.prototype.truncate = function (size) {
  if (size === 0) over('snapshot');
  if (size === 0) is('segment');
  return truncate.call(this, size);
};
const remove = IDBObjectStore.prototype.delete;
IDBObjectStore.prototype.delete = function (...args: Parameters<typeof remove>) {
  if (this.name === 'entries') {
    over('segment');
    is('compaction');
    this.transaction.addEventListener('complete', () => over('compaction'));
  }
  return remove.apply(this, args);
};

let tell: ((told: Told) => void) | undefined;
const keeper = new Keeper({
  locale: plainLocale,
  tell: (told) => {
    if (told.what === 'computing') (told.computing ? is : over)('recalculation');
    tell?.(told);
  },
  library: { policy: { entries: 6, bytes: 2_000_000 } },
});

const whole = serviceOf(keeper);
const service: WorkerService & { fill(on: boolean): Promise<void> } = {
  ...whole,
  readFile(...of) {
    is('import');
    return whole.readFile(...of);
  },
  importFile: () => whole.importFile().finally(() => over('import')),
  async begin(port, beginning) {
    tell = (told) => port.postMessage(told);
    keeper.begin(beginning);
  },
  async fill(on) {
    full = on;
  },
};

expose(service);
