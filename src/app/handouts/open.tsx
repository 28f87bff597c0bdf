import { render } from 'preact';
import type { HandoutRequest } from '../../session/handouts/handouts.ts';
import { guarded } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';
import { HandoutView } from './HandoutView.tsx';

/** Shows handouts over the page, ready for the printer; the page behind rests until they are closed. */
export async function openHandouts(page: Page, request: HandoutRequest): Promise<void> {
  await guarded(page, async () => {
    const made = await page.service.handouts(request);
    if (made.notes.length > 0) say(page, made.notes.join(' '), 'wrong');
    const box = document.createElement('div');
    box.className = 'handout-view';
    const before = document.activeElement;
    const behind = [...document.body.children].filter((element) => !element.hasAttribute('inert'));
    for (const element of behind) element.setAttribute('inert', '');
    document.body.append(box);
    const close = () => {
      render(null, box);
      box.remove();
      for (const element of behind) element.removeAttribute('inert');
      if (before instanceof HTMLElement) before.focus();
    };
    render(<HandoutView made={made} close={close} />, box);
    return true;
  });
}
