/** The state of the page for every component in it. */
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Page } from './page.ts';

export const PageContext = createContext<Page | null>(null);

export function usePage(): Page {
  const page = useContext(PageContext);
  if (!page) throw new Error('no page around this part');
  return page;
}
