import { unzipSync } from 'fflate';
import { most } from '../most.ts';
import { atMost } from './refusing.ts';
import { childrenOf, decoded, treeOf } from './xml.ts';

const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/') + 1);

/** Where a relationship leads (ECMA-376 part 2, 6.2.2): from the package's root, or from the folder of the part. */
function resolved(target: string, folder: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith('/') ? target : folder + target).split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '' && step !== '.') steps.push(step);
  }
  return steps.join('/');
}

export interface Relation {
  readonly kind: string;
  readonly target: string;
}

/** The parts of a file that is an archive; each is unpacked when it is asked for. */
export class Archive {
  readonly #bytes: Uint8Array;
  readonly #sizes = new Map<string, number>();
  #room = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        this.#sizes.set(name, originalSize);
        return false;
      },
    });
  }

  get names(): readonly string[] {
    return [...this.#sizes.keys()];
  }

  /** Names are alike whatever their case (ECMA-376 part 2, 6.2.2.3). */
  #named(path: string): string | undefined {
    return this.#sizes.has(path) ? path : this.names.find((name) => name.toLowerCase() === path.toLowerCase());
  }

  /** A part as text. An archive that claims more room than any workbook that opens is not unpacked. */
  text(path: string): string | undefined {
    const name = this.#named(path);
    if (name === undefined) return undefined;
    this.#room += this.#sizes.get(name) ?? 0;
    atMost(
      this.#room,
      most.letters,
      (room, limit) => `the file unpacks to ${room} bytes of cells and texts, and this page opens up to ${limit}`,
    );
    const bytes = unzipSync(this.#bytes, { filter: (file) => file.name === name })[name];
    return bytes && decoded(bytes);
  }

  /** Where the relationships of a part lead, by their id; what lies outside the file is none. */
  relations(path: string): ReadonlyMap<string, Relation> {
    const folder = folderOf(path);
    const xml = this.text(`${folder}_rels/${path.slice(folder.length)}.rels`);
    const all = xml === undefined ? [] : childrenOf(treeOf(xml), 'Relationship');
    return new Map(
      all
        .filter(({ attributes }) => attributes['TargetMode'] !== 'External')
        .map(({ attributes: { Id = '', Type = '', Target = '' } }) => [
          Id,
          { kind: Type.slice(Type.lastIndexOf('/') + 1), target: resolved(Target, folder) },
        ]),
    );
  }
}
