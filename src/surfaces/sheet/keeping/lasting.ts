let asked = false;

/** Asks the browser, once something is kept, not to clear it by itself. */
export function askToLast(): void {
  if (asked) return;
  asked = true;
  void navigator.storage?.persist?.().catch(() => false);
}

/** What the browser says of that now. */
export async function lastingInWords(): Promise<string> {
  const agreed = await navigator.storage?.persisted?.().catch(() => false);
  return agreed
    ? 'This browser has agreed not to clear it by itself.'
    : 'This browser has not agreed to keep it for good: some clear what a page kept once it has not been visited for a week.';
}
