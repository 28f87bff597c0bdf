/** Locks as the Web Locks API has them (exclusive, abortable, stealing), for a runtime that has none. */
export class FakeLocks {
  private readonly held = new Map<string, { end(): void }>();
  private readonly queue: { name: string; start(): void }[] = [];

  request(name: string, options: LockOptions, callback: (lock: Lock) => Promise<unknown>): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const start = (): void => {
        const holder = { end: () => reject(new DOMException('stolen', 'AbortError')) };
        this.held.set(name, holder);
        callback({ name, mode: 'exclusive' })
          .then(resolve, reject)
          .finally(() => {
            if (this.held.get(name) !== holder) return;
            this.held.delete(name);
            this.next(name);
          });
      };
      const holder = this.held.get(name);
      if (options.steal || !holder) {
        holder?.end();
        start();
        return;
      }
      const waiting = { name, start };
      this.queue.push(waiting);
      options.signal?.addEventListener('abort', () => {
        const at = this.queue.indexOf(waiting);
        if (at < 0) return;
        this.queue.splice(at, 1);
        reject(options.signal?.reason);
      });
    });
  }

  query(): Promise<LockManagerSnapshot> {
    return Promise.resolve({
      held: [...this.held.keys()].map((name) => ({ name })),
      pending: this.queue.map(({ name }) => ({ name })),
    });
  }

  private next(name: string): void {
    const at = this.queue.findIndex((waiting) => waiting.name === name);
    if (at >= 0) this.queue.splice(at, 1)[0]!.start();
  }
}
