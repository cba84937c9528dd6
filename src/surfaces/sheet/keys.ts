import { part, wideEnough } from './page.ts';

interface Place {
  readonly element: HTMLElement;
  readonly enter: () => void;
}

const firstControl = 'button, input, select, textarea, a[href], [tabindex="0"]';

/** F6 goes on to the next of buttons, grid and panel, Shift+F6 back. The grid keeps Tab for itself, so this is the way out. */
export function moveWithF6(focusGrid: () => void): void {
  const focusFirst = (element: HTMLElement) => () => element.querySelector<HTMLElement>(firstControl)?.focus();
  const pane = part('aside', 'pane');
  const actions = part('div', 'actions');
  const places: readonly Place[] = [
    { element: actions, enter: focusFirst(actions) },
    { element: part('section', 'grid'), enter: focusGrid },
    { element: pane, enter: focusFirst(pane) },
  ];
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'F6' || document.querySelector('dialog[open]')) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const open = places.filter(({ element }) => !element.hidden);
    const here = open.findIndex(({ element }) => element.contains(document.activeElement));
    const step = event.shiftKey ? open.length - 1 : 1;
    open[(here + step) % open.length]?.enter();
  };
  window.addEventListener('keydown', onKey, { capture: true });
}

/** The panel stands beside the grid where there is room, and over it, when asked for, where there is not. */
export function foldPane(): void {
  const pane = part('aside', 'pane');
  const toggle = part('button', 'pane-toggle');
  const show = (open: boolean): void => {
    pane.hidden = !open;
    toggle.setAttribute('aria-expanded', String(open));
    window.dispatchEvent(new Event('resize'));
  };
  wideEnough.addEventListener('change', () => show(wideEnough.matches));
  toggle.addEventListener('click', () => show(pane.hidden !== false));
  show(wideEnough.matches);
}
