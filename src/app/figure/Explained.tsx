/** The lean of an observed squat, part by part, as a bar and a table. */
import type { ExplainedLean } from '../../session/api.ts';
import { explainedShape } from '../../session/figure/drawing/explained-drawing.ts';
import { asElements } from './Drawing.tsx';
import './parts.css';

interface Props {
  readonly explained: ExplainedLean;
  /** Label of the sheet that has the observation, where it is another one. */
  readonly from?: string;
}

/** Where an observed lean comes from: a bar that adds up, and the reason of each part. */
export function Explained({ explained, from }: Props) {
  const { day, row, parts, sentence } = explained;
  const where = from ? `${from}, row ${row + 1}` : '';
  const when = [day, where].filter(Boolean).join(', ');
  return (
    <section class="parts">
      <h4>Where the observed lean comes from</h4>
      {when && <p class="soft">Observed {when}.</p>}
      {parts.length > 0 ? (
        asElements(explainedShape(explained))
      ) : (
        <p class="panel-note failure">{sentence}</p>
      )}
      <p class="soft">
        Errors: lengths and ankle range as measured, joints placed to ±1 cm. Lengths estimated from stature
        say nothing about build.
      </p>
    </section>
  );
}
