import { registries } from '@odoo/o-spreadsheet';

/** What cannot work on a page without server, or would not survive the way to a spreadsheet file. */
const dropped: Readonly<Record<string, readonly string[]>> = {
  file: ['print'],
  insert: ['insert_pivot', 'insert_image', 'insert_carousel', 'insert_link'],
  data: ['named_range', 'pivot_data_sources', 'reinsert_dynamic_pivot', 'reinsert_static_pivot'],
  view: ['view_irregularity_map'],
};

export function trimMenus(): void {
  const { topbarMenuRegistry, cellMenuRegistry } = registries;
  for (const [menu, ids] of Object.entries(dropped)) {
    const entry = topbarMenuRegistry.get(menu);
    entry.children = (entry.children ?? []).filter((child) => typeof child === 'function' || !ids.includes(child.id ?? ''));
  }
  cellMenuRegistry.remove('insert_link');
}
