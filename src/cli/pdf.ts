/** A page as PDF, printed by a browser of this machine. */
import { type ChildProcess, spawn } from 'node:child_process';
import { accessSync, constants, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { Refusal } from './exit.ts';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
/** Longest that one answer may take, ms. */
const longest = 60_000;

/** The Chromium named by LEVERBOOK_CHROMIUM (`off`: none is wanted), else one on PATH, else none. @throws Refusal where the one named is none */
export function findChromium(env: NodeJS.ProcessEnv = process.env): string | undefined {
  const named = env.LEVERBOOK_CHROMIUM;
  if (named === 'off') return undefined;
  if (named) {
    if (isRunnable(named)) return named;
    throw new Refusal(
      `LEVERBOOK_CHROMIUM names ${named}, which cannot be run. Give the path of a Chromium, or leave it empty.`,
    );
  }
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const places = folders.flatMap((folder) => names.map((name) => join(folder, name)));
  return places.find(isRunnable);
}

function isRunnable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Prints documents as PDF, one by one, in one Chromium with a fresh profile, spoken to by its debugging protocol over a
 * pipe: no port is opened.
 * @throws Refusal when that does not work
 */
export async function printAll(chromium: string, documents: readonly string[]): Promise<Uint8Array[]> {
  const profile = mkdtempSync(join(tmpdir(), 'leverbook-pdf-'));
  const child = start(chromium, profile);
  try {
    const ask = asking(child);
    const { targetId } = await ask('Target.createTarget', { url: 'about:blank' });
    const { sessionId } = await ask('Target.attachToTarget', { targetId, flatten: true });
    const tree = await ask('Page.getFrameTree', {}, sessionId);
    const frameId = (tree.frameTree as { frame: { id: string } }).frame.id;
    const pdfs: Uint8Array[] = [];
    for (const html of documents) {
      await ask('Page.setDocumentContent', { frameId, html }, sessionId);
      const print = { preferCSSPageSize: true, printBackground: true };
      const { data } = await ask('Page.printToPDF', print, sessionId);
      pdfs.push(Buffer.from(String(data), 'base64'));
    }
    return pdfs;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Refusal(
      `${chromium} made no PDF: ${reason}. No file was written; with LEVERBOOK_CHROMIUM=off the pages are written as HTML alone.`,
    );
  } finally {
    await ended(child);
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

function start(chromium: string, profile: string): ChildProcess {
  const flags = [
    '--headless',
    // The pages hold no script and load nothing; as root Chromium runs only without its sandbox.
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--no-first-run',
    `--user-data-dir=${profile}`,
    '--remote-debugging-pipe',
  ];
  return spawn(chromium, flags, { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
}

type Answer = Record<string, unknown>;
interface Waiting {
  readonly answered: (answer: Answer) => void;
  readonly failed: (reason: Error) => void;
}

/** Questions to a Chromium: JSON texts that end in a zero byte, answers by the number of the question. */
function asking(child: ChildProcess) {
  const [, , , to, from] = child.stdio as unknown as [null, null, null, Writable, Readable];
  const waiting = new Map<number, Waiting>();
  const fail = (reason: Error): void => {
    for (const { failed } of waiting.values()) failed(reason);
    waiting.clear();
  };
  child.on('error', fail);
  child.on('exit', (code) => fail(new Error(`it ended (${code})`)));
  to.on('error', fail);
  const parts: Buffer[] = [];
  from.on('data', (chunk: Buffer) => {
    let rest = chunk;
    for (let end = rest.indexOf(0); end >= 0; end = rest.indexOf(0)) {
      parts.push(rest.subarray(0, end));
      hear(Buffer.concat(parts.splice(0)).toString());
      rest = rest.subarray(end + 1);
    }
    if (rest.length > 0) parts.push(rest);
  });
  const hear = (text: string): void => {
    const { id, result, error } = JSON.parse(text) as {
      id?: number;
      result?: Answer;
      error?: { message: string };
    };
    const one = id === undefined ? undefined : waiting.get(id);
    if (!one) return;
    waiting.delete(id!);
    if (error) one.failed(new Error(error.message));
    else one.answered(result ?? {});
  };
  let last = 0;
  return (method: string, params: Answer, sessionId?: unknown): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const id = ++last;
      const late = setTimeout(() => reject(new Error(`${method} took more than a minute`)), longest);
      waiting.set(id, {
        answered: (answer) => {
          clearTimeout(late);
          resolve(answer);
        },
        failed: (reason) => {
          clearTimeout(late);
          reject(reason);
        },
      });
      to.write(`${JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) })}\0`);
    });
}

function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null || child.pid === undefined) return resolve();
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });
}
