import { wrap } from 'comlink';
import type { BookService } from '../worker/protocol.ts';

/** Starts the worker that holds the book, and speaks with it. */
export function connect(): BookService {
  const worker = new Worker(new URL('../worker/worker.ts', import.meta.url), {
    type: 'module',
    name: 'book',
  });
  return wrap<BookService>(worker) as unknown as BookService;
}
