/** Where the worker begins. */
import { expose } from 'comlink';
import { localeFor } from '../units/locale.ts';
import { Keeper } from './keeper.ts';
import type { Told, WorkerService } from './protocol.ts';
import { serviceOf } from './service.ts';

let tell: ((told: Told) => void) | undefined;
const keeper = new Keeper({ locale: localeFor(navigator.language), tell: (told) => tell?.(told) });

const service: WorkerService = {
  ...serviceOf(keeper),
  async begin(port, beginning) {
    tell = (told) => port.postMessage(told);
    keeper.begin(beginning);
  },
};

expose(service);
