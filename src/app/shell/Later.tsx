/** A part of the page whose code is loaded when it is shown. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { usePage } from '../state/context.ts';
import { say } from '../state/page.ts';

interface Props<P> {
  readonly load: () => Promise<ComponentType<P>>;
  readonly of: P;
  /** Told where the code did not come: the page was closed to the network, or it is of an older build. */
  readonly failed?: () => void;
}

/** A part of the page whose code is loaded when it is first shown; nothing is shown until then. */
export function Later<P extends object>({ load, of, failed }: Props<P>) {
  const page = usePage();
  const [Part, take] = useState<ComponentType<P> | null>(null);
  useEffect(() => {
    let gone = false;
    load().then(
      (part) => {
        if (!gone) take(() => part);
      },
      () => {
        if (gone) return;
        say(page, 'This panel could not be loaded. Connect to the network, then try again.', 'wrong');
        failed?.();
      },
    );
    return () => {
      gone = true;
    };
  }, []);
  return Part && <Part {...of} />;
}
