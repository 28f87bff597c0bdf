import { Client } from '../worker/client.ts';
import type { BookService } from '../worker/protocol.ts';

/** Starts the worker that holds the book, and speaks with it. */
export function connect(): BookService {
  const make = () =>
    new Worker(new URL('../worker/worker.ts', import.meta.url), { type: 'module', name: 'book' });
  return new Client(make).service;
}
