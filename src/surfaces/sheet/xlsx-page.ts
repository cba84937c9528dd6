import type { Sheet } from '../../workbook/model.ts';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

export function element(within: Document, name: string, attributes: Record<string, string>): Element {
  const made = within.createElementNS(main, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** What stands behind the page set-up in a worksheet part, in this order (ECMA-376 part 1, 18.3.1.99, CT_Worksheet). */
const behindPageSetup = ['headerFooter', 'rowBreaks', 'colBreaks', 'ignoredErrors', 'drawing', 'legacyDrawing', 'tableParts', 'extLst'];

/** Words in a header or footer, where `&` begins a code (18.3.1.46). */
const words = (text: string): string => text.replaceAll('&', '&&');

/** What each page says of itself: whose budget of which day, which sheet, which page of how many. */
function headAndFoot(worksheet: Document, title: string): Element {
  const made = element(worksheet, 'headerFooter', {});
  const line = (name: string, content: string): Element => {
    const part = element(worksheet, name, {});
    part.textContent = content;
    return part;
  };
  made.append(
    line('oddHeader', `&L${words(title)}&R&A`),
    line('oddFooter', `&LBedding Ledger: a planning aid, no diagnosis&RPage &P of &N`),
  );
  return made;
}

/** A4, as wide as the page, with head and foot; a sheet that the budget brings lies on it as it is meant to. */
export function setUpPage(worksheet: Document, sheet: Sheet | undefined, title: string): void {
  const root = worksheet.documentElement;
  const properties = root.querySelector('sheetPr') ?? root.insertBefore(element(worksheet, 'sheetPr', {}), root.firstChild);
  properties.append(element(worksheet, 'pageSetUpPr', { fitToPage: '1' }));
  for (const made of root.querySelectorAll('pageSetup, headerFooter')) made.remove();
  const setup = element(worksheet, 'pageSetup', {
    paperSize: '9',
    orientation: sheet?.landscape ? 'landscape' : 'portrait',
    fitToWidth: '1',
    fitToHeight: sheet?.onePage ? '1' : '0',
  });
  const behind = (parts: readonly string[]): Element | null => root.querySelector(parts.map((name) => `worksheet > ${name}`).join(', '));
  root.insertBefore(setup, behind(behindPageSetup));
  root.insertBefore(headAndFoot(worksheet, title), behind(behindPageSetup.slice(1)));
  const { pagesFrom = [] } = sheet ?? {};
  if (pagesFrom.length === 0) return;
  const count = String(pagesFrom.length);
  const breaks = element(worksheet, 'rowBreaks', { count, manualBreakCount: count });
  // A break is known by the row above it (ECMA-376 part 1, 18.3.1.3).
  breaks.append(...pagesFrom.map((row) => element(worksheet, 'brk', { id: String(row - 1), max: '16383', man: '1' })));
  root.insertBefore(breaks, behind(behindPageSetup.slice(2)));
}
