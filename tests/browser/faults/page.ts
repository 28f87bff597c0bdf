import { Client } from '../../../src/worker/client.ts';
import type { BookService, Keeping, Restarted } from '../../../src/worker/protocol.ts';
import { channel, type Turned } from './phases.ts';
import { decisions, stepAt } from './work.ts';

/** What the tests reach from outside: the service as the page has it, and what it was told. */
export interface Reach {
  readonly service: BookService & { fill(on: boolean): Promise<void> };
  readonly keepings: Keeping[];
  readonly restarts: Restarted[];
  /** Every worker that was started, to end one. */
  readonly workers: Worker[];
  /** Called with every phase of the worker that begins or is over. */
  onTurn: ((turned: Turned) => void) | undefined;
  readonly stepAt: typeof stepAt;
  readonly decisions: typeof decisions;
}

const workers: Worker[] = [];
const client = new Client(
  () => {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    workers.push(worker);
    return worker;
  },
  { silence: 3_000 },
);
const reach: Reach = {
  service: client.service as Reach['service'],
  keepings: [],
  restarts: [],
  workers,
  onTurn: undefined,
  stepAt,
  decisions,
};
channel().onmessage = ({ data }: MessageEvent<Turned>) => reach.onTurn?.(data);
void client.service.follow((keeping) => reach.keepings.push(keeping));
void client.service.onRestart((restarted) => reach.restarts.push(restarted));
Object.assign(globalThis, { reach });
