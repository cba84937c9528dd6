import type { SourceId } from '../../core/bibliography.ts';
import { referenceOf } from '../../core/bibliography.ts';
import studies from '../../data/udder-studies.json';
import type { SheetBuilder } from '../sheet-builder.ts';

/** What studies found of udder health by bedding, those that speak for fibre beside those that speak against. */
export function udderStudies(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'Udder health on fibre and on other beds: what studies found',
      'Both sides stand here; no study decides for your herd. In brackets the interval that the study gives. No difference shown is not the same as none there.',
    )
    .across(`A${page.row}`, ['beds compared', 'how studied', '', 'reads', 'what was looked at, and found', 'study', 'status'], 'heading');
  page.row++;
  const first = page.row;
  for (const { beds, design, outcome, effect, reads, source, status } of studies) {
    const row = page.row++;
    page
      .put(`A${row}`, beds, 'note', { wrap: true })
      .block(`B${row}:C${row}`, design, 'note', { wrap: true })
      .put(`D${row}`, reads, 'note', { wrap: true })
      .put(`E${row}`, `${outcome}: ${effect}`, 'note', { wrap: true })
      .put(`F${row}`, referenceOf(source as SourceId).name, 'note', { wrap: true })
      .put(`G${row}`, status, 'note', { wrap: true });
  }
  page.rule(`D${first}:D${page.row - 1}`, `D${first}="worse"`, 'watch');
}
