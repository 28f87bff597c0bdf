import type { HandoutRequest } from '../../session/handouts/handouts.ts';
import { openPreview } from '../print/PrintPreview.tsx';
import { guarded } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { HandoutView } from './HandoutView.tsx';

/** Shows handouts over the page, ready for the printer. */
export async function openHandouts(page: Page, request: HandoutRequest): Promise<void> {
  await guarded(page, async () => {
    const made = await page.service.handouts(request);
    openPreview(page, (close) => <HandoutView made={made} close={close} />);
    return true;
  });
}
