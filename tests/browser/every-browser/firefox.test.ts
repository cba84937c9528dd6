import { servedOnly } from '../sheet-page.ts';
import { everyBrowser } from './every-browser.ts';
import { startFirefox } from './playwright.ts';

everyBrowser('Firefox', startFirefox, servedOnly);
