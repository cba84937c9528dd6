import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { requirementSets } from '../../src/surfaces/excel/requirements.ts';

const folder = join(import.meta.dirname, '../../src/surfaces/excel');

/** The requirement set that the vendor's definitions state for each of its members that our files use. */
function statedSets(files: readonly string[]): { readonly set: string; readonly version: string; readonly member: string }[] {
  const program = ts.createProgram({
    rootNames: files,
    options: {
      strict: true,
      noEmit: true,
      skipLibCheck: true,
      types: ['office-js', 'custom-functions-runtime'],
      module: ts.ModuleKind.ESNext,
      moduleResolution: ts.ModuleResolutionKind.Bundler,
      allowImportingTsExtensions: true,
      resolveJsonModule: true,
      target: ts.ScriptTarget.ES2022,
    },
  });
  const checker = program.getTypeChecker();
  const found: { set: string; version: string; member: string }[] = [];
  const visit = (node: ts.Node): void => {
    const named = ts.isPropertyAccessExpression(node)
      ? node.name
      : ts.isBindingElement(node)
        ? (node.propertyName ?? node.name)
        : undefined;
    let symbol = named && checker.getSymbolAtLocation(named);
    if (named && ts.isBindingElement(node) && ts.isIdentifier(named))
      symbol = checker.getTypeAtLocation(node.parent).getProperty(named.text);
    for (const declaration of symbol?.declarations ?? []) {
      if (!/node_modules.@types.(office-js|custom-functions-runtime)/.test(declaration.getSourceFile().fileName)) continue;
      const stated = /\[Api set: (\w+) ([\d.]+)/.exec(declaration.getFullText());
      if (stated) found.push({ set: stated[1] as string, version: stated[2] as string, member: (named as ts.Identifier).text });
    }
    ts.forEachChild(node, visit);
  };
  for (const file of files) visit(program.getSourceFile(file) as ts.Node);
  return found;
}

const minor = (version: string) => Number(version.split('.')[1]);

describe('the requirement sets', () => {
  let used: ReturnType<typeof statedSets>;
  beforeAll(() => {
    used = statedSets(readdirSync(folder).map((name) => join(folder, name)));
  }, 60_000);

  it.each(Object.entries(requirementSets))(
    '%s %s is the lowest that states every member we use, by the vendor’s own definitions',
    (set, version) => {
      const ours = used.filter((member) => member.set === set);
      expect(ours.length).toBeGreaterThan(2);
      const highest = ours.reduce((a, b) => (minor(b.version) > minor(a.version) ? b : a));
      expect(`1.${minor(highest.version)} for ${highest.member}`).toBe(`${version} for ${highest.member}`);
    },
  );

  it('are the only ones: no member of any other set is used', () => {
    expect(used.filter(({ set }) => !(set in requirementSets)).map(({ set, member }) => `${set}: ${member}`)).toEqual([]);
  });
});
