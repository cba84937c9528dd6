import { html, type TemplateResult } from 'lit-html';
import type { Pane } from './context.ts';

/** What a part shows in a workbook that has no Inputs sheet. */
export function offerBudget(pane: Pane, then: () => Promise<void>): TemplateResult {
  const start = (inputs: 'blank' | 'example') => () =>
    pane.act(async () => {
      await pane.host.startBudget(inputs);
      await then();
    });
  return html`
    <p>This workbook has no Inputs sheet yet: the figures of the budget go there, one item a row.</p>
    <div class="buttons">
      <button type="button" id="start-blank" @click=${start('blank')}>Start a blank budget</button>
      <button type="button" id="start-example" @click=${start('example')}>Look at an invented herd</button>
    </div>`;
}
