/** Figures of a table as arithmetic, for the lines of a working that tell in words what is looked up. */

/** Straight lines through points, flat outside them, as a sum of one term for each line. */
export function straightLines(points: readonly (readonly number[])[], x: string): string {
  const terms = points.slice(1).map(([right = 0, above = 0], k) => {
    const [left = 0, below = 0] = points[k] ?? [];
    return `(${above} - ${below}) / (${right} - ${left}) * (min(max(${x}, ${left}), ${right}) - ${left})`;
  });
  return [String(points[0]?.[1]), ...terms].join(' + ');
}

/** What stands beside a word in a list, which must be one of them; `noAnswer` where nothing is held for it. */
export function besideWord(figures: readonly (readonly [word: string, figure: number | undefined])[], word: string): string {
  const spelled = (figure: number | undefined): string => (figure === undefined ? 'noAnswer' : String(figure));
  const [last, ...others] = figures.toReversed();
  return others.reduce((otherwise, [name, figure]) => `${word} == '${name}' ? ${spelled(figure)} : (${otherwise})`, spelled(last?.[1]));
}
