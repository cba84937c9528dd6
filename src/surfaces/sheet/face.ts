/** The family that the grid asks for first, under which the build puts the face that the page carries. */
const family = 'Roboto';

/**
 * Waits for the face that the page carries. The grid measures and draws on canvases, which take whatever is loaded by then
 * and are not drawn again when a face comes later. Where faces are blocked, the machine's own Arial or the like stands in.
 */
export async function faceLoaded(): Promise<void> {
  await Promise.allSettled(['400', 'bold'].map((weight) => document.fonts.load(`${weight} 13px ${family}`)));
}

declare const Chart: { readonly defaults: { readonly font: { family: string } } };

/** Charts write in the same face as cells. */
export function chartsInFace(): void {
  Chart.defaults.font.family = `${family}, Arial, sans-serif`;
}
