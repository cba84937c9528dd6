import { components, helpers, type Locale, stores } from '@odoo/o-spreadsheet';
import { onMounted } from '@odoo/owl';

interface Caret {
  readonly start: number;
  readonly end: number;
}

/** The box that an entry is typed into, and the entry itself. Private to the grid, so this much is told here; tests/browser/typing.test.ts fails if it moves. */
interface Box {
  props: {
    readonly focus: string;
    readonly isDefaultFocus: boolean;
    readonly composerStore: {
      readonly editionMode: string;
      readonly currentContent: string;
      readonly composerSelection: Caret;
      setCurrentContent(content: string, caret: Caret): void;
    };
  };
  readonly env: { readonly model: { readonly getters: { getActiveCell(): { readonly format?: string }; getLocale(): Locale } } };
  readonly contentHelper: {
    readonly el: HTMLElement;
    getText(): string;
    getCurrentSelection(): Caret;
    selectRange(start: number, end: number): void;
    removeAll(): void;
  };
  readonly compositionActive: boolean;
  setup(): void;
  processContent(): void;
  onInput(event: InputEvent): void;
  onKeydown(event: KeyboardEvent): void;
  onKeyup(event: KeyboardEvent): void;
  onClick(): void;
  onCompositionStart(): void;
  onCompositionEnd(): void;
}

type Focus = ReturnType<typeof stores.useStore<typeof stores.ComposerFocusStore>>;

const isOpen = ({ props }: Box): boolean => props.composerStore.editionMode !== 'inactive';

/** What the box shows while an entry is open in it: a text and a caret. */
const entryIn = (box: Box): string => {
  const { currentContent, composerSelection } = box.props.composerStore;
  return isOpen(box) ? JSON.stringify([currentContent, composerSelection]) : '';
};

/**
 * The grid writes into the box what it should show on the next frame, and takes from it what was typed at once. A key that
 * comes before that frame meets what the box held before: 77 typed over 260 became 77,260. So the box follows the entry
 * before each key, and tells from then on what is the user's own in it: the caret that an arrow key has moved.
 */
export function keepBoxInStep(): void {
  const box = (components.Composer as unknown as { readonly prototype: Box }).prototype;
  const { setup, processContent, onInput, onKeydown, onKeyup, onClick, onCompositionStart, onCompositionEnd } = box;
  const focusOf = new WeakMap<Box, Focus>();
  const drawn = new WeakMap<Box, string>();
  const begunByComposition = new WeakSet<Box>();

  /** The grid tells the box on the next frame that it has the focus, too. */
  const followFocus = (of: Box): void => {
    const { activeComposer, focusMode } = focusOf.get(of) as Focus;
    const focus = activeComposer.id === 'gridComposer' ? focusMode : 'inactive';
    if (of.props.isDefaultFocus && of.props.focus !== focus) of.props = { ...of.props, focus };
  };
  const agree = (of: Box): void => void drawn.set(of, entryIn(of));
  const catchUp = (of: Box): void => {
    followFocus(of);
    if (isOpen(of) && drawn.get(of) !== entryIn(of)) of.processContent();
  };
  /** What an entry begins with takes the place of all that the cell held. */
  const makeWay = (of: Box): void => {
    if (isOpen(of)) catchUp(of);
    else of.contentHelper.removeAll();
  };
  const beforeInput = (of: Box, event: InputEvent): void => {
    if (of.compositionActive) return;
    if (event.inputType === 'insertText' && event.data && !isOpen(of)) {
      // Safari's engine writes nothing into a box that is emptied at this moment, so that 400 became 00: it is written here.
      event.preventDefault();
      makeWay(of);
      of.contentHelper.el.textContent = event.data;
      of.contentHelper.selectRange(event.data.length, event.data.length);
      of.onInput(event);
    } else if (event.inputType.startsWith('insert')) makeWay(of);
    else catchUp(of);
  };

  const inStep: Partial<Box> & ThisType<Box> = {
    setup() {
      setup.call(this);
      focusOf.set(this, stores.useStore(stores.ComposerFocusStore));
      onMounted(() => this.contentHelper.el.addEventListener('beforeinput', (event) => beforeInput(this, event)));
    },
    processContent() {
      followFocus(this);
      const { contentHelper } = this;
      const moved = isOpen(this) && drawn.get(this) === entryIn(this) && document.activeElement === contentHelper.el;
      const caret = contentHelper.getCurrentSelection();
      processContent.call(this);
      if (this.compositionActive) return;
      if (moved && contentHelper.getText()) contentHelper.selectRange(caret.start, caret.end);
      agree(this);
    },
    onInput(event) {
      followFocus(this);
      onInput.call(this, event);
      if (this.compositionActive) agree(this);
      else this.processContent();
    },
    onKeydown(event) {
      catchUp(this);
      onKeydown.call(this, event);
    },
    onKeyup(event) {
      catchUp(this);
      onKeyup.call(this, event);
      agree(this);
    },
    onClick() {
      const wasOpen = isOpen(this);
      onClick.call(this);
      if (wasOpen) agree(this);
    },
    onCompositionStart() {
      if (!isOpen(this)) begunByComposition.add(this);
      makeWay(this);
      onCompositionStart.call(this);
    },
    onCompositionEnd() {
      onCompositionEnd.call(this);
      if (isOpen(this)) {
        const { getActiveCell, getLocale } = this.env.model.getters;
        const text = this.contentHelper.getText();
        const ofPercent = begunByComposition.has(this) && getActiveCell().format?.includes('%') && helpers.isNumber(text, getLocale());
        this.props.composerStore.setCurrentContent(ofPercent ? `${text}%` : text, this.contentHelper.getCurrentSelection());
        this.processContent();
      }
      begunByComposition.delete(this);
    },
  };
  Object.assign(box, inStep);
}
