/** Puts a question over the pane and waits for one of the buttons. Escape counts as the last one, which changes nothing. */
export async function choose<const Choices extends readonly [string, ...string[]]>(
  question: string,
  choices: Choices,
): Promise<Choices[number]> {
  const dialog = document.createElement('dialog');
  dialog.setAttribute('aria-labelledby', 'excel-question');
  const form = dialog.appendChild(document.createElement('form'));
  form.method = 'dialog';
  const text = form.appendChild(document.createElement('p'));
  text.id = 'excel-question';
  text.textContent = question;
  for (const choice of choices) {
    const button = form.appendChild(document.createElement('button'));
    button.value = choice;
    button.textContent = choice;
  }
  document.body.append(dialog);
  dialog.showModal();
  await new Promise((closed) => dialog.addEventListener('close', closed, { once: true }));
  dialog.remove();
  return choices.find((choice) => choice === dialog.returnValue) ?? (choices.at(-1) as Choices[number]);
}
