import { effect } from '@preact/signals';
import { useEffect } from 'preact/hooks';

/**
 * Runs `work` at once whenever a signal that it reads changes. The hook of the signals' own package waits for the next
 * frame; what hands type into must not be a frame behind, or a text arrives over what was typed meanwhile.
 */
export function useFollow(work: () => void): void {
  useEffect(() => effect(work), []);
}

/**
 * For a question about something that is gone by the time it is answered: another book was opened, a column removed. What
 * took it away has changed what the page shows, and the question is asked again about that. A fault is said by the client.
 */
export function gone(): void {}
