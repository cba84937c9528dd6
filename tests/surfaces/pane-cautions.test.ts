// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { FakeSpreadsheet, inputsSheet } from './fake-spreadsheet.ts';
import { openPane } from './open-pane.ts';

describe('conditions and cautions', () => {
  it('are one click from every part', async () => {
    const pane = await openPane(new FakeSpreadsheet({ Inputs: inputsSheet({}) }));
    for (const part of ['survey', 'readings', 'functions', 'explain', 'checks']) {
      document.getElementById(`part-${part}`)?.click();
      await pane.press('Cautions');
      expect(pane.root.querySelector('h2')?.textContent).toBe('Cautions');
    }
  });

  it('begin with the country of the inputs, and can show another', async () => {
    const pane = await openPane(new FakeSpreadsheet({ Inputs: inputsSheet({ Country: 'Germany' }) }), 'cautions');
    expect(pane.text()).toContain('A farm page says it is not permitted: ask.');
    await pane.enter('Country', 'Netherlands');
    expect(pane.text()).not.toContain('A farm page says it is not permitted');
  });

  it('say whom to ask for each hazard, and what the score is not', async () => {
    const pane = await openPane(new FakeSpreadsheet({ Inputs: inputsSheet({}) }), 'cautions');
    expect(pane.text()).toMatch(/slurry gas .*Ask your health and safety authority/);
    expect(pane.text()).toContain('Planning aid, no diagnosis: talk to your vet. Its weights are this project’s judgement');
  });
});
