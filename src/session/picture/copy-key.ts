/** Largest small copy of a picture that a book takes, bytes. */
export const COPY_MOST = 200_000;

/** The key of a picture's small copy: its fingerprint, with the time of the frame for a film. */
export const copyKey = (hash: string, time: number | null): string =>
  time === null ? hash : `${hash} ${time.toFixed(4)}`;
