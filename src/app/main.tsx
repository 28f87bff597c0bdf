/** Where the page begins. */
import './theme/tokens.css';
import './theme/base.css';
import './theme/forced.css';
import { render } from 'preact';
import { connect } from './connect.ts';
import { keepOffline } from './offline/offline.ts';
import { App } from './shell/App.tsx';
import { openFirstBook } from './start.ts';
import { followKeeping } from './state/keeping.ts';
import { recallLook } from './state/look.ts';
import { createPage } from './state/page.ts';

recallLook();
const page = createPage(connect());
followKeeping(page);
render(<App page={page} />, document.getElementById('app')!);
void keepOffline(openFirstBook(page));
