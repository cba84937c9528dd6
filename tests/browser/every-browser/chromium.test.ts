import { everyBrowser } from './every-browser.ts';
import { startChromium } from './playwright.ts';

everyBrowser('Chromium', startChromium);
