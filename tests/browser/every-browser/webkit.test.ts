import { servedOnly } from '../sheet-page.ts';
import { everyBrowser } from './every-browser.ts';
import { startWebKit } from './webkit.ts';

everyBrowser('WebKit', startWebKit, servedOnly);
