import { columnLetters, sheetReference } from '../address';
import type { BookSheet } from '../sheet';
import { SETTINGS_PART, SETTINGS_PROPERTIES } from './settings';
import { escapeText, MAIN, RELATIONS, XML_HEAD } from './xml';

const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const OFFICE_TYPE = 'application/vnd.openxmlformats-officedocument';
const TYPE = `${OFFICE_TYPE}.spreadsheetml`;

const WEB = 'http://schemas.microsoft.com/office/2011/relationships';

/** What a file has of the parts that not every file has. */
export interface Parts {
  readonly sheets: number;
  /** Numbers, from 1, of the sheets with comments. */
  readonly commented: readonly number[];
  /** Numbers, from 1, of the sheets with pictures. */
  readonly pictured: readonly number[];
  /** Some formula gives an array. */
  readonly arrays: boolean;
  /** Some formula calls a worksheet function of the add-in. */
  readonly addIn: boolean;
  /** Small texts are kept with it. */
  readonly settings: boolean;
}

/** What each part of the file is. */
export function contentTypes({ sheets, commented, pictured, arrays, addIn, settings }: Parts): string {
  const part = (name: string, type: string) => `<Override PartName="/xl/${name}" ContentType="${type}+xml"/>`;
  const own = (name: string, kind: string) => part(name, `${TYPE}.${kind}`);
  return (
    `${XML_HEAD}<Types xmlns="${PACKAGE}/content-types">` +
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    '<Default Extension="xml" ContentType="application/xml"/>' +
    '<Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>' +
    own('workbook.xml', 'sheet.main') +
    own('styles.xml', 'styles') +
    numbers(sheets)
      .map((at) => own(`worksheets/sheet${at}.xml`, 'worksheet'))
      .join('') +
    commented.map((at) => own(`comments${at}.xml`, 'comments')).join('') +
    pictured.map((at) => part(`drawings/drawing${at}.xml`, `${OFFICE_TYPE}.drawing`)).join('') +
    (arrays ? own('metadata.xml', 'sheetMetadata') : '') +
    (addIn
      ? part('webextensions/webextension1.xml', 'application/vnd.ms-office.webextension') +
        part('webextensions/taskpanes.xml', 'application/vnd.ms-office.webextensiontaskpanes')
      : '') +
    (settings
      ? `<Override PartName="/${SETTINGS_PROPERTIES}" ContentType="${OFFICE_TYPE}.customXmlProperties+xml"/>`
      : '') +
    '</Types>'
  );
}

export function packageRelations({ addIn }: Parts): string {
  return relations([
    [`${RELATIONS}/officeDocument`, 'xl/workbook.xml'],
    ...(addIn ? [[`${WEB}/webextensiontaskpanes`, 'xl/webextensions/taskpanes.xml'] as const] : []),
  ]);
}

export function taskPaneRelations(): string {
  return relations([[`${WEB}/webextension`, 'webextension1.xml']]);
}

export function workbookRelations({ sheets, arrays, settings }: Parts): string {
  return relations([
    ...numbers(sheets).map((at) => [`${RELATIONS}/worksheet`, `worksheets/sheet${at}.xml`] as const),
    [`${RELATIONS}/styles`, 'styles.xml'],
    ...(arrays ? [[`${RELATIONS}/sheetMetadata`, 'metadata.xml'] as const] : []),
    ...(settings ? [[`${RELATIONS}/customXml`, `../${SETTINGS_PART}`] as const] : []),
  ]);
}

/** `has`: comments and the boxes they are shown in; pictures. */
export function sheetRelations(sheet: number, has: { readonly comments: boolean; readonly pictures: boolean }): string {
  return relations([
    has.comments ? [`${RELATIONS}/comments`, `../comments${sheet}.xml`] : null,
    has.comments ? [`${RELATIONS}/vmlDrawing`, `../drawings/vmlDrawing${sheet}.vml`] : null,
    has.pictures ? [`${RELATIONS}/drawing`, `../drawings/drawing${sheet}.xml`] : null,
  ]);
}

export function settingsRelations(): string {
  return relations([[`${RELATIONS}/customXmlProps`, 'itemProps1.xml']]);
}

/** A relation's id says its place in the list; null: the part is not there. */
function relations(targets: readonly (readonly [type: string, target: string] | null)[]): string {
  const each = targets.map((one, at) =>
    one === null ? '' : `<Relationship Id="rId${at + 1}" Type="${one[0]}" Target="${one[1]}"/>`,
  );
  return `${XML_HEAD}<Relationships xmlns="${PACKAGE}/relationships">${each.join('')}</Relationships>`;
}

/**
 * The list of sheets and names. The figures are stored as they are: no calculation is forced at opening, for where the add-in
 * is missing that would put #NAME? over every one of them. The calculation engine named is the one of current Excel, which
 * recalculates what an older one saved.
 */
export function workbookXml(sheets: readonly BookSheet[]): string {
  const listed = sheets.map(
    ({ name, hidden }, at) =>
      `<sheet name="${escapeText(name)}" sheetId="${at + 1}"${hidden ? ' state="hidden"' : ''} r:id="rId${at + 1}"/>`,
  );
  const names = sheets.flatMap((sheet) => sheet.names ?? []);
  const defined = [
    ...names.map(({ name, ref }) => `<definedName name="${name}">${escapeText(ref)}</definedName>`),
    ...sheets.flatMap(namesOfOneSheet),
  ];
  return (
    `${XML_HEAD}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><workbookPr/>` +
    `<bookViews><workbookView/></bookViews><sheets>${listed.join('')}</sheets>` +
    (defined.length > 0 ? `<definedNames>${defined.join('')}</definedNames>` : '') +
    '<calcPr calcId="191029"/></workbook>'
  );
}

/** Names that Excel keeps for a sheet's own set-up. */
function namesOfOneSheet(sheet: BookSheet, at: number): string[] {
  const { autoFilter, printArea } = sheet;
  const name = sheetReference(sheet.name);
  const own = (kind: string, ref: string, more = '') =>
    `<definedName name="_xlnm.${kind}" localSheetId="${at}"${more}>${escapeText(ref)}</definedName>`;
  const titles = printTitles(sheet);
  return [
    ...(autoFilter === undefined ? [] : [own('_FilterDatabase', `${name}!${absolute(autoFilter)}`, ' hidden="1"')]),
    ...(printArea === undefined ? [] : [own('Print_Area', `${name}!${absolute(printArea)}`)]),
    ...(titles === '' ? [] : [own('Print_Titles', titles)]),
  ];
}

/** A1:C9 → $A$1:$C$9. */
function absolute(range: string): string {
  return range.replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');
}

/** Rows repeated on every page; where a sheet is printed several pages wide, its frozen columns too. */
function printTitles({ name, repeatRows, pagesWide = 1, frozenColumns }: BookSheet): string {
  const sheet = sheetReference(name);
  return [
    ...(pagesWide > 1 && frozenColumns > 0 ? [`${sheet}!$A:$${columnLetters(frozenColumns - 1)}`] : []),
    ...(repeatRows ? [`${sheet}!$${repeatRows[0]}:$${repeatRows[1]}`] : []),
  ].join(',');
}

function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}
