// @vitest-environment happy-dom
import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { OfficeAddinManifest, validateManifest } from 'office-addin-manifest';
import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { DEVELOPMENT_URL, unifiedManifest, xmlManifest } from '../../src/generate/manifests.ts';
import { requirementSets } from '../../src/surfaces/excel/requirements.ts';
import { namespace } from '../../src/surfaces/namespace.ts';

const development = { url: DEVELOPMENT_URL, version };
const hosted = { url: 'https://farm.example/tools/bedding', version: '12.3.4' };
const committed = (name: string) => join(import.meta.dirname, '../../manifest', name);

async function written(name: string, content: string): Promise<string> {
  const file = join(await mkdtemp(join(tmpdir(), 'manifest-')), name);
  await writeFile(file, content);
  return file;
}

const all = (parent: Document | Element, name: string): Element[] => [...parent.getElementsByTagName(name)];
const attributes = (parent: Document | Element, name: string, attribute: string) =>
  all(parent, name).map((element) => element.getAttribute(attribute) ?? '');
const text = (parent: Document | Element, name: string) => all(parent, name)[0]?.textContent;

function read(release: typeof hosted): Document {
  const parsed = new DOMParser().parseFromString(xmlManifest(release), 'text/xml');
  expect(all(parsed, 'parsererror')).toEqual([]);
  return parsed;
}

/** What the manifest's own list of resources holds under an id. */
const resource = (xml: Document, id: string | null | undefined) =>
  ['bt:Url', 'bt:String', 'bt:Image']
    .flatMap((kind) => all(xml, kind))
    .find((element) => element.getAttribute('id') === id)
    ?.getAttribute('DefaultValue');

describe('the manifests in the repository', () => {
  it('manifest.xml is what the generator writes for development', async () => {
    await expect(xmlManifest(development)).toMatchFileSnapshot(committed('manifest.xml'));
  });

  it('manifest.json is what the generator writes for development', async () => {
    await expect(`${JSON.stringify(unifiedManifest(development), null, 2)}\n`).toMatchFileSnapshot(committed('manifest.json'));
  });

  it('every icon they name is there, a PNG of the size that its name says', async () => {
    const xml = read(development);
    const { icons } = unifiedManifest(development);
    const inXml = [
      ...attributes(xml, 'bt:Image', 'DefaultValue').filter(Boolean),
      ...['IconUrl', 'HighResolutionIconUrl'].flatMap((name) => attributes(xml, name, 'DefaultValue')),
    ];
    const named = new Set([...inXml.map((url) => url.replace(DEVELOPMENT_URL, '')), icons.color, icons.outline]);
    expect(named.size).toBe(6);
    for (const file of named) {
      const png = await readFile(committed(file));
      expect(png.subarray(1, 4).toString(), file).toBe('PNG');
      const size = Number(/-(\d+)\.png$/.exec(file)?.[1]);
      expect([png.readUInt32BE(16), png.readUInt32BE(20)], file).toEqual([size, size]);
    }
  });
});

describe('the unified manifest', () => {
  it.each([development, hosted])('passes the vendor’s validation against its own schema, for $url', async (release) => {
    const file = await written('manifest.json', JSON.stringify(unifiedManifest(release)));
    const validation = await validateManifest(file);
    expect(validation.report?.errors ?? []).toEqual([]);
    expect(validation.isValid).toBe(true);
  });

  it('would not pass with a description too long for the vendor, so that the check above can fail', async () => {
    const broken = { ...unifiedManifest(hosted), description: { short: 'x'.repeat(81), full: 'x' } };
    const validation = await validateManifest(await written('manifest.json', JSON.stringify(broken)));
    expect(validation.isValid).toBe(false);
    expect(validation.report?.errors).toHaveLength(1);
  });

  it('is the same add-in as the XML manifest: id, version, namespace, requirement set, pages, buttons and their words', async () => {
    const xml = read(hosted);
    const json = unifiedManifest(hosted);
    const [extension] = json.extensions;
    const functions = extension?.runtimes.find((runtime) => 'customFunctions' in runtime);
    expect([json.id, json.version]).toEqual([text(xml, 'Id'), text(xml, 'Version')]);
    expect(functions).toMatchObject({ customFunctions: { namespace: { id: namespace, name: namespace } } });
    expect(extension?.requirements.capabilities.map(({ name, minVersion }) => [name, minVersion])).toEqual(
      all(xml, 'Set').map((set) => [set.getAttribute('Name'), set.getAttribute('MinVersion')]),
    );
    const addresses = JSON.stringify(json).match(/https:\/\/farm\.example\/[^"#]*/g);
    const ribbonAndFunctions = ['bt:Url', 'bt:Image'].flatMap((kind) => attributes(xml, kind, 'DefaultValue')).filter(Boolean);
    expect(new Set(addresses)).toEqual(new Set(ribbonAndFunctions));
    const words = attributes(xml, 'bt:String', 'DefaultValue');
    for (const { label, supertip } of extension?.ribbons[0]?.tabs[0]?.groups[0]?.controls ?? []) {
      expect(words).toContain(label);
      expect(words).toContain(supertip.description);
    }
  });
});

describe('the XML manifest', () => {
  it('reads back through the vendor’s own reader with every value given', async () => {
    const info = await OfficeAddinManifest.readManifestFile(await written('manifest.xml', xmlManifest(hosted)));
    expect(info).toMatchObject({
      id: '6f0c2a57-3d41-4b8e-9a6b-5c1d27e4f083',
      displayName: 'Bedding Ledger',
      providerName: 'Bedding Ledger',
      version: '12.3.4',
      hosts: ['Workbook'],
      officeAppType: 'TaskPaneApp',
      permissions: 'ReadWriteDocument',
      defaultLocale: 'en-GB',
      iconUrl: 'https://farm.example/tools/bedding/icons/icon-32.png',
      highResolutionIconUrl: 'https://farm.example/tools/bedding/icons/icon-64.png',
      supportUrl: 'https://farm.example/tools/bedding/about.html',
      defaultSettings: { sourceLocation: 'https://farm.example/tools/bedding/taskpane.html' },
    });
  });

  it('gives the functions a runtime of their own, with script, page, metadata and namespace', async () => {
    const xml = read(hosted);
    const point = all(xml, 'ExtensionPoint').find((element) => element.getAttribute('xsi:type') === 'CustomFunctions') as Element;
    const source = (name: string) => resource(xml, all(point, name)[0]?.querySelector('SourceLocation')?.getAttribute('resid'));
    expect([source('Script'), source('Page'), source('Metadata')]).toEqual(
      ['functions.js', 'functions.html', 'functions.json'].map((file) => `https://farm.example/tools/bedding/${file}`),
    );
    expect(resource(xml, attributes(point, 'Namespace', 'resid')[0])).toBe(namespace);
    expect(all(xml, 'Runtimes')).toEqual([]);
  });

  it('asks for one requirement set only, the lowest that the functions can run on', async () => {
    const sets = all(read(hosted), 'Set').map((set) => [set.getAttribute('Name'), set.getAttribute('MinVersion')]);
    expect(sets).toEqual([['CustomFunctionsRuntime', requirementSets.CustomFunctionsRuntime]]);
  });

  it('names no resource that is not there, none that is not used, none longer than the vendor allows', async () => {
    const xml = read(hosted);
    const resources = all(xml, 'Resources')[0] as Element;
    const ids = ['bt:Image', 'bt:Url', 'bt:String'].flatMap((kind) => attributes(resources, kind, 'id'));
    const used = [...xmlManifest(hosted).matchAll(/resid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(used)).toEqual(new Set(ids));
    for (const id of ids) expect(id.length).toBeLessThanOrEqual(32);
    for (const words of attributes(all(resources, 'bt:ShortStrings')[0] as Element, 'bt:String', 'DefaultValue'))
      expect(words.length).toBeLessThanOrEqual(125);
    for (const words of attributes(all(resources, 'bt:LongStrings')[0] as Element, 'bt:String', 'DefaultValue'))
      expect(words.length).toBeLessThanOrEqual(250);
    expect(attributes(xml, 'Description', 'DefaultValue')[0]?.length).toBeLessThanOrEqual(250);
  });

  it('has ids for controls that differ from each other, and both buttons share one pane', async () => {
    const xml = read(hosted);
    expect(new Set(attributes(xml, 'Control', 'id')).size).toBe(2);
    expect(new Set(all(xml, 'TaskpaneId').map(({ textContent }) => textContent))).toEqual(new Set([namespace]));
  });

  it('survives an address with signs that XML reserves', async () => {
    const xml = read({ url: 'https://farm.example/a&b', version: '1.0.0' });
    expect(attributes(xml, 'SupportUrl', 'DefaultValue')).toEqual(['https://farm.example/a&b/about.html']);
  });

  it('refuses an address that Excel could not load, in words', () => {
    expect(() => xmlManifest({ url: 'http://farm.example', version: '1.0.0' })).toThrow('https');
  });
});
