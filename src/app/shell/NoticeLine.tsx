import { useEffect } from 'preact/hooks';
import { usePage } from './context.ts';
import { Icon } from './icons.tsx';

/** What just happened, shown for a while and told to screen readers. What is wrong stays until it is put away. */
export function NoticeLine() {
  const page = usePage();
  const notice = page.notice.value;
  const busy = page.busy.value;
  const progress = page.progress.value;
  const stop = page.stop.value;
  useEffect(() => {
    if (!notice || notice.tone === 'wrong') return;
    const timer = setTimeout(() => {
      page.notice.value = null;
    }, 5000);
    return () => clearTimeout(timer);
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
              aria-label="Put away"
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
