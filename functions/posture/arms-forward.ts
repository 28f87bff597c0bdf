import { type Issue, issue } from '../core/issue.ts';
import type { Placement } from '../tables/placements.ts';

/** The issue of a bar where the arms are held forward, or undefined. */
export const noBarWithArmsForward = (placement: Placement, bar: number): Issue | undefined =>
  placement === 'arms-forward' && bar > 0
    ? issue('#VALUE!', 'arms-forward-with-bar', {
        parameter: 'placement',
        received: placement,
        details: { bar },
      })
    : undefined;
