import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dependencies } from '../../package.json';

/**
 * MIT, BSD, ISC and OFL alike: the copyright notice and the permission go with every copy. Font Awesome states its own in
 * its style sheet; the package of the carried face has one licence for itself and one for the font, and the font is what goes on.
 */
function copyrightOf(name: string): string {
  const file = ['LICENSE_FONT', 'LICENSE', 'LICENSE.md', 'LICENSE.txt', 'LICENCE']
    .map((one) => `node_modules/${name}/${one}`)
    .find(existsSync);
  const words = readFileSync(file ?? `node_modules/${name}/css/font-awesome.min.css`, 'utf8');
  return /^.*(?:Copyright|License - ).*$/m.exec(words)?.[0].trim() ?? expect.fail(`${name} states no licence`);
}

describe('what is handed on', () => {
  it.each(Object.keys(dependencies))('%s goes with the words of its licence: under About in the one-file page, and as a file', (name) => {
    const about = readFileSync('dist/bedding-ledger.html', 'utf8').replaceAll('&lt;', '<').replaceAll('&amp;', '&');
    expect(about).toContain(copyrightOf(name));
    expect(readFileSync(`dist/licences/${name.split('/').at(-1)}.txt`, 'utf8')).toContain(copyrightOf(name));
  });
});
