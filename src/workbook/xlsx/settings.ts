import { escapeText, XML_HEAD } from './xml';

/** The small texts kept with the workbook, in a part that other programs leave as it is. */
export const SETTINGS_PART = 'customXml/item1.xml';
export const SETTINGS_PROPERTIES = 'customXml/itemProps1.xml';
/** The name space of the settings part's elements: by it a workbook of ours is told from any other. */
export const SETTINGS_SPACE = 'urn:archwright:workbook';
/** Of the settings part; the same in every file, so that the same workbook gives the same bytes. */
const SETTINGS_ID = '{C6B1B7B2-3E0A-4F0B-9C55-7D1B0C8E41A6}';
const CUSTOM_XML = 'http://schemas.openxmlformats.org/officeDocument/2006/customXml';

export function settingsXml(settings: Readonly<Record<string, string>>): string {
  const each = Object.entries(settings).map(
    ([key, value]) => `<setting key="${escapeText(key)}">${escapeText(value)}</setting>`,
  );
  return `${XML_HEAD}<settings xmlns="${SETTINGS_SPACE}">${each.join('')}</settings>`;
}

export function settingsPropertiesXml(): string {
  return (
    `${XML_HEAD}<ds:datastoreItem xmlns:ds="${CUSTOM_XML}" ds:itemID="${SETTINGS_ID}"><ds:schemaRefs>` +
    `<ds:schemaRef ds:uri="${SETTINGS_SPACE}"/></ds:schemaRefs></ds:datastoreItem>`
  );
}
