import { handoutDocument, handoutShapes } from '../../session/handouts/handout-document.ts';
import { handoutStyle } from '../../session/handouts/handout-style.ts';
import type { Handouts } from '../../session/handouts/handouts.ts';
import { asElements } from '../figure/Drawing.tsx';
import { PrintPreview } from '../print/PrintPreview.tsx';

/** Handouts as they will be printed. */
export function HandoutView({ made, close }: { made: Handouts; close: () => void }) {
  const { length } = made.handouts;
  const name = length === 1 ? made.handouts[0]!.athlete : made.title;
  return (
    <PrintPreview
      label="Handouts"
      amount={length === 1 ? 'One page' : `${length} pages`}
      file={`${name}-handout`}
      style={handoutStyle}
      html={(paper) => handoutDocument(made, paper)}
      close={close}
      notes={made.notes}
    >
      {handoutShapes(made).map(asElements)}
    </PrintPreview>
  );
}
