/** Puts a question over the pane, in its look, and waits for one of the buttons. Escape counts as the last, which changes nothing. */
export async function choose<const Choices extends readonly [string, ...string[]]>(
  question: string,
  choices: Choices,
): Promise<Choices[number]> {
  const around = document.body.appendChild(document.createElement('div'));
  around.className = 'bedding-pane';
  const dialog = around.appendChild(document.createElement('dialog'));
  dialog.setAttribute('aria-labelledby', 'excel-question');
  const form = dialog.appendChild(document.createElement('form'));
  form.method = 'dialog';
  const text = form.appendChild(document.createElement('p'));
  text.id = 'excel-question';
  text.textContent = question;
  const buttons = form.appendChild(document.createElement('div'));
  buttons.className = 'buttons';
  for (const [k, choice] of choices.entries()) {
    const button = buttons.appendChild(document.createElement('button'));
    button.value = choice;
    button.textContent = choice;
    if (k > 0 && k === choices.length - 1) button.className = 'quiet';
  }
  dialog.showModal();
  await new Promise((closed) => dialog.addEventListener('close', closed, { once: true }));
  around.remove();
  return choices.find((choice) => choice === dialog.returnValue) ?? (choices.at(-1) as Choices[number]);
}
