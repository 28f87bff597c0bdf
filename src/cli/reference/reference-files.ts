import { pages } from '../../../functions/core/pages/index.ts';
import { guides } from '../../guides/index.ts';
import { functionReference } from './function-pages.ts';
import { guidePage } from './guides.ts';
import { textPage } from './pages.ts';
import { standardFunctions } from './standard-functions.ts';

/** The files of `docs/`, made from the definitions and the texts. */
export function referenceFiles(): readonly { readonly name: string; readonly text: string }[] {
  return [
    { name: 'reference.html', text: functionReference() },
    { name: 'standard-functions.html', text: standardFunctions() },
    ...pages.map((one) => ({ name: `${one.id}.html`, text: textPage(one) })),
    ...guides.map((one) => ({ name: `guide-${one.id}.html`, text: guidePage(one) })),
  ];
}
