import { readFile } from 'node:fs/promises';
import subsetFont from 'subset-font';
import face from '../workbook/face.json';

const folder = 'node_modules/@expo-google-fonts/arimo';

const weights = [
  { weight: 400, file: `${folder}/400Regular/Arimo_400Regular.ttf`, widths: face.regular },
  { weight: 700, file: `${folder}/700Bold/Arimo_700Bold.ttf`, widths: face.bold },
] as const;

/** Without hints and kerning: a text is then as wide as its letters added up, on any machine. The package's types lack the last three. */
const plain = {
  targetFormat: 'woff2',
  noLayoutClosure: true,
  noHinting: true,
  dropTables: ['GDEF', 'GPOS', 'GSUB', 'STAT', 'gasp'],
} as const;

/**
 * The face that the page carries, as a style sheet with data addresses. It has Arial's widths, and goes by the name that
 * the grid asks for first, so that it stands in for whatever a machine has under that name, or has not.
 */
export async function carriedFace(): Promise<string> {
  const faces = weights.map(async ({ weight, file, widths }) => {
    const font = await subsetFont(await readFile(file), Object.values(widths).join(''), plain);
    const source = `data:font/woff2;base64,${font.toString('base64')}`;
    return `@font-face{font-family:Roboto;font-weight:${weight};src:url(${source}) format('woff2')}`;
  });
  return (await Promise.all(faces)).join('\n');
}
