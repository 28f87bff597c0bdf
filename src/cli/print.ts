/** Writes a line to standard output; a reader that stopped reading (`| head`) is no error. */
export function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});
