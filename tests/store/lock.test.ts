import { beforeEach, expect, test, vi } from 'vitest';
import { hold } from '../../src/store/lock.ts';
import { FakeLocks } from './locks.ts';

/** A browser on a busy machine: every lock is granted a second late. */
class SlowLocks extends FakeLocks {
  override request(...[name, options, callback]: Parameters<FakeLocks['request']>): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => super.request(name, options, callback).then(resolve, reject), 1_000);
      options.signal?.addEventListener('abort', () => {
        clearTimeout(timer);
        reject(options.signal?.reason);
      });
    });
  }
}

beforeEach(() => vi.unstubAllGlobals());

test('a book that nobody holds is locked however late the browser answers', async () => {
  vi.stubGlobal('navigator', { locks: new SlowLocks() });
  expect(await hold('new', false, () => undefined)).not.toBeNull();
});

test('a book that another tab holds is told to be held, and can be had once it is released', async () => {
  vi.stubGlobal('navigator', { locks: new FakeLocks() });
  const first = await hold('one', false, () => undefined);
  expect(await hold('one', false, () => undefined)).toBeNull();
  first?.release();
  expect(await hold('one', false, () => undefined)).not.toBeNull();
});
