import type { Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';

/** Takes a notice away after a while. Answers how to leave it. */
function goneAfter(notice: Signal<unknown>): () => void {
  const timer = setTimeout(() => {
    notice.value = null;
  }, 5000);
  return () => clearTimeout(timer);
}

/** What just happened, shown for a while and told to screen readers. What is wrong stays until it is dismissed. */
export function NoticeLine() {
  const page = usePage();
  const notice = page.notice.value;
  const busy = page.busy.value;
  const progress = page.progress.value;
  const stop = page.stop.value;
  useEffect(() => {
    if (notice?.tone === 'plain') return goneAfter(page.notice);
  }, [notice]);
  return (
    <div class="notices">
      <div role="status" aria-live="polite">
        {(busy || progress) && (
          <p class="notice busy">
            {busy ?? progress?.about}…{progress && <progress value={progress.share} aria-label="Progress" />}
            {!progress && <progress aria-label="Progress" />}
            {stop && (
              <button type="button" class="notice-stop" onClick={stop}>
                Stop
              </button>
            )}
          </p>
        )}
        {notice?.tone === 'plain' && <p class="notice">{notice.text}</p>}
      </div>
      <div role="alert">
        {notice?.tone === 'wrong' && (
          <p class="notice wrong">
            <Icon name="doubts" />
            <span>{notice.text}</span>
            <button
              type="button"
              class="tool"
              aria-label="Dismiss"
              onClick={() => {
                page.notice.value = null;
              }}
            >
              <Icon name="close" />
            </button>
          </p>
        )}
      </div>
    </div>
  );
}
