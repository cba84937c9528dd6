// Draws the PNG icons from the two SVG files beside this script: node manifest/icons/draw.mjs [/usr/bin/chromium]
import { readFile } from 'node:fs/promises';
import { chromium } from 'playwright-core';

const here = (name) => new URL(name, import.meta.url);
const browser = await chromium.launch({ executablePath: process.argv[2] ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
const page = await browser.newPage();

async function draw(source, size, target) {
  const svg = await readFile(here(source), 'utf8');
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(`<style>*{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`);
  await page.screenshot({ path: here(target).pathname, omitBackground: true });
}

for (const size of [16, 32, 64, 80, 192]) await draw('icon.svg', size, `icon-${size}.png`);
await draw('outline.svg', 32, 'outline-32.png');
await browser.close();
