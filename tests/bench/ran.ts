import { spawnSync } from 'node:child_process';

/* Whole processes, from start to end, with the memory that they took. */

/** Has a process say its own peak memory when it ends. */
const peakHook = `data:text/javascript,${encodeURIComponent(
  "import{readFileSync}from'node:fs';process.on('exit',()=>{let k;try{k=/VmHWM:\\s+(\\d+)/.exec(readFileSync('/proc/self/status','utf8'))?.[1]}catch{}process.stderr.write('PEAK '+(k??process.resourceUsage().maxRSS)+'\\n')})",
)}`;

export interface Ran {
  readonly ms: number;
  /** Peak memory. */
  readonly megabytes: number;
  readonly out: string;
}

/** Runs node with these arguments. @throws with what it said when it fails. */
export function ran(args: readonly string[]): Ran {
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', peakHook, ...args], {
    cwd: process.cwd(),
    encoding: 'utf8',
  });
  const ms = performance.now() - start;
  if (status !== 0) throw new Error(stderr);
  return { ms, megabytes: Number(/PEAK (\d+)/.exec(stderr)?.[1]) / 1024, out: stdout };
}
