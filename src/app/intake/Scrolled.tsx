import type { ComponentChildren } from 'preact';

/** A part that scrolls by itself: it can have the focus, so that keys scroll it, and it has a name. */
export function Scrolled({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1)
    <section class="intake-table" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
