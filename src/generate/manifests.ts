import { requirementSets } from '../surfaces/excel/requirements.ts';
import { namespace } from '../surfaces/namespace.ts';

/** Where the built files are served and which version they are; nothing else of a manifest varies. */
export interface Release {
  /** The address of the folder that holds functions.js, with or without its last slash. */
  readonly url: string;
  readonly version: string;
}

/** Where `npm run excel` serves the build: the vendor's own choice of port for add-ins under development. */
export const DEVELOPMENT_URL = 'https://localhost:3000/';

/** Never changed: Excel knows the add-in, and users' workbooks the functions, by it. Both manifests are one add-in. */
const ID = '6f0c2a57-3d41-4b8e-9a6b-5c1d27e4f083';

const NAME = 'Bedding Ledger';
const SUMMARY = 'Shows with figures whether bedding from your own slurry will work and pay.';
const DESCRIPTION =
  'Functions, a budget workbook and a panel for planning cubicle bedding made from a herd’s own slurry: how much is needed, what the kit can make, what it costs, and on what conditions it may be used.';

/** The two ribbon buttons. Each opens the pane; the second asks there before it writes, since a button alone cannot ask. */
const buttons = [
  {
    id: 'OpenPane',
    label: 'Bedding panel',
    page: 'taskpane.html',
    tip: 'Fill in the farm’s figures, find a function, see how a figure was worked out and what to check.',
  },
  {
    id: 'WriteWorkbook',
    label: 'Budget workbook',
    page: 'taskpane.html?open=workbook',
    tip: 'Adds the budget’s sheets beside those you have, after asking. Nothing that you have is overwritten.',
  },
] as const;

const ribbonSizes = [16, 32, 80] as const;
const iconFile = (size: number) => `icons/icon-${size}.png`;

function addresses({ url }: Release) {
  const base = new URL(url.endsWith('/') ? url : `${url}/`);
  if (base.protocol !== 'https:')
    throw new Error(`${url}: Excel loads an add-in over https only; give an address that begins with https://`);
  return { host: base.host, at: (file: string) => new URL(file, base).href };
}

const xml = (text: string) => text.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;');

/** The add-in only manifest, for every Excel that has custom functions. */
export function xmlManifest(release: Release): string {
  const { at } = addresses(release);
  const url = (id: string, file: string) => `        <bt:Url id="${id}" DefaultValue="${xml(at(file))}"/>`;
  const string = (id: string, text: string) => `        <bt:String id="${id}" DefaultValue="${xml(text)}"/>`;
  const lines = (made: readonly string[]) => made.join('\n');
  const icon = (indent: string) =>
    lines([
      `${indent}<Icon>`,
      ...ribbonSizes.map((size) => `${indent}  <bt:Image size="${size}" resid="Icon.${size}"/>`),
      `${indent}</Icon>`,
    ]);
  const control = (id: string) => `                <Control xsi:type="Button" id="${id}">
                  <Label resid="${id}.Label"/>
                  <Supertip>
                    <Title resid="${id}.Label"/>
                    <Description resid="${id}.Tip"/>
                  </Supertip>
${icon('                  ')}
                  <Action xsi:type="ShowTaskpane">
                    <TaskpaneId>${namespace}</TaskpaneId>
                    <SourceLocation resid="${id}.Url"/>
                  </Action>
                </Control>`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<OfficeApp xmlns="http://schemas.microsoft.com/office/appforoffice/1.1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xmlns:bt="http://schemas.microsoft.com/office/officeappbasictypes/1.0" xsi:type="TaskPaneApp">
  <Id>${ID}</Id>
  <Version>${xml(release.version)}</Version>
  <ProviderName>${NAME}</ProviderName>
  <DefaultLocale>en-GB</DefaultLocale>
  <DisplayName DefaultValue="${NAME}"/>
  <Description DefaultValue="${xml(DESCRIPTION)}"/>
  <IconUrl DefaultValue="${xml(at(iconFile(32)))}"/>
  <HighResolutionIconUrl DefaultValue="${xml(at(iconFile(64)))}"/>
  <SupportUrl DefaultValue="${xml(at('about.html'))}"/>
  <Hosts>
    <Host Name="Workbook"/>
  </Hosts>
  <Requirements>
    <Sets>
      <Set Name="CustomFunctionsRuntime" MinVersion="${requirementSets.CustomFunctionsRuntime}"/>
    </Sets>
  </Requirements>
  <DefaultSettings>
    <SourceLocation DefaultValue="${xml(at(buttons[0].page))}"/>
  </DefaultSettings>
  <Permissions>ReadWriteDocument</Permissions>
  <VersionOverrides xmlns="http://schemas.microsoft.com/office/taskpaneappversionoverrides" xsi:type="VersionOverridesV1_0">
    <Hosts>
      <Host xsi:type="Workbook">
        <AllFormFactors>
          <ExtensionPoint xsi:type="CustomFunctions">
            <Script>
              <SourceLocation resid="Functions.Script"/>
            </Script>
            <Page>
              <SourceLocation resid="Functions.Page"/>
            </Page>
            <Metadata>
              <SourceLocation resid="Functions.Metadata"/>
            </Metadata>
            <Namespace resid="Functions.Namespace"/>
          </ExtensionPoint>
        </AllFormFactors>
        <DesktopFormFactor>
          <GetStarted>
            <Title resid="GetStarted.Title"/>
            <Description resid="GetStarted.Description"/>
            <LearnMoreUrl resid="About.Url"/>
          </GetStarted>
          <ExtensionPoint xsi:type="PrimaryCommandSurface">
            <OfficeTab id="TabHome">
              <Group id="Ledger">
                <Label resid="Ledger.Label"/>
${icon('                ')}
${lines(buttons.map(({ id }) => control(id)))}
              </Group>
            </OfficeTab>
          </ExtensionPoint>
        </DesktopFormFactor>
      </Host>
    </Hosts>
    <Resources>
      <bt:Images>
${lines(ribbonSizes.map((size) => `        <bt:Image id="Icon.${size}" DefaultValue="${xml(at(iconFile(size)))}"/>`))}
      </bt:Images>
      <bt:Urls>
${lines([
  url('Functions.Script', 'functions.js'),
  url('Functions.Page', 'functions.html'),
  url('Functions.Metadata', 'functions.json'),
  url('About.Url', 'about.html'),
  ...buttons.map(({ id, page }) => url(`${id}.Url`, page)),
])}
      </bt:Urls>
      <bt:ShortStrings>
${lines([
  string('Functions.Namespace', namespace),
  string('GetStarted.Title', `${NAME} is ready`),
  string('Ledger.Label', NAME),
  ...buttons.map(({ id, label }) => string(`${id}.Label`, label)),
])}
      </bt:ShortStrings>
      <bt:LongStrings>
${lines([
  string('GetStarted.Description', `Type =${namespace}. in a cell to see the functions, or choose ${buttons[0].label} on the Home tab.`),
  ...buttons.map(({ id, tip }) => string(`${id}.Tip`, tip)),
])}
      </bt:LongStrings>
    </Resources>
  </VersionOverrides>
</OfficeApp>
`;
}

const SCHEMA = '1.30';

/** The unified manifest, for newer Excel; not every client takes custom functions from one yet. */
export function unifiedManifest(release: Release) {
  const { at, host } = addresses(release);
  const icons = ribbonSizes.map((size) => ({ size, url: at(iconFile(size)) }));
  const paneRuntime = ({ id, page }: (typeof buttons)[number]) => ({
    id: `${id}Runtime`,
    type: 'general',
    code: { page: at(page) },
    lifetime: 'short',
    actions: [{ id, type: 'openPage', view: namespace }],
  });
  return {
    $schema: `https://developer.microsoft.com/json-schemas/teams/v${SCHEMA}/MicrosoftTeams.schema.json`,
    manifestVersion: SCHEMA,
    version: release.version,
    id: ID,
    developer: {
      name: NAME,
      websiteUrl: at('about.html'),
      privacyUrl: at('about.html#privacy'),
      termsOfUseUrl: at('about.html#terms'),
    },
    name: { short: NAME, full: NAME },
    description: { short: SUMMARY, full: DESCRIPTION },
    icons: { color: iconFile(192), outline: 'icons/outline-32.png' },
    accentColor: '#24543A',
    localizationInfo: { defaultLanguageTag: 'en-gb', additionalLanguages: [] },
    authorization: { permissions: { resourceSpecific: [{ name: 'Document.ReadWrite.User', type: 'Delegated' }] } },
    validDomains: [host],
    extensions: [
      {
        requirements: {
          scopes: ['workbook'],
          capabilities: [{ name: 'CustomFunctionsRuntime', minVersion: requirementSets.CustomFunctionsRuntime }],
        },
        runtimes: [
          {
            id: 'FunctionsRuntime',
            type: 'general',
            code: { page: at('functions.html'), script: at('functions.js') },
            lifetime: 'short',
            customFunctions: { namespace: { id: namespace, name: namespace }, metadataUrl: at('functions.json') },
          },
          ...buttons.map(paneRuntime),
        ],
        ribbons: [
          {
            contexts: ['default'],
            tabs: [
              {
                builtInTabId: 'TabHome',
                groups: [
                  {
                    id: 'Ledger',
                    label: NAME,
                    icons,
                    controls: buttons.map(({ id, label, tip }) => ({
                      id,
                      type: 'button',
                      label,
                      icons,
                      supertip: { title: label, description: tip },
                      actionId: id,
                    })),
                  },
                ],
              },
            ],
          },
        ],
      },
    ],
  };
}
