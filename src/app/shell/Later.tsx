import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A part of the page whose code is loaded when it is first shown; nothing stands there until then. */
export function Later<P extends object>({ load, of }: { load: () => Promise<ComponentType<P>>; of: P }) {
  const [Part, take] = useState<ComponentType<P> | null>(null);
  useEffect(() => {
    let gone = false;
    void load().then((part) => {
      if (!gone) take(() => part);
    });
    return () => {
      gone = true;
    };
  }, []);
  return Part && <Part {...of} />;
}
