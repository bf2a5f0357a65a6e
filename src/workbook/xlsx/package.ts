import { columnLetters } from '../address';
import type { SheetSource } from '../sheet';
import { escapeText, MAIN, RELATIONS, XML_HEAD } from './xml';

const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** What each part of the file is. `commented`: numbers, from 1, of the sheets with comments. */
export function contentTypes(sheets: number, commented: readonly number[]): string {
  const part = (name: string, kind: string) => `<Override PartName="/xl/${name}" ContentType="${TYPE}.${kind}+xml"/>`;
  return (
    `${XML_HEAD}<Types xmlns="${PACKAGE}/content-types">` +
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    '<Default Extension="xml" ContentType="application/xml"/>' +
    '<Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>' +
    part('workbook.xml', 'sheet.main') +
    part('styles.xml', 'styles') +
    numbers(sheets)
      .map((at) => part(`worksheets/sheet${at}.xml`, 'worksheet'))
      .join('') +
    commented.map((at) => part(`comments${at}.xml`, 'comments')).join('') +
    '</Types>'
  );
}

export function packageRelations(): string {
  return relations([['officeDocument', 'xl/workbook.xml']]);
}

export function workbookRelations(sheets: number): string {
  return relations([
    ...numbers(sheets).map((at): [string, string] => ['worksheet', `worksheets/sheet${at}.xml`]),
    ['styles', 'styles.xml'],
  ]);
}

export function sheetRelations(sheet: number): string {
  return relations([
    ['comments', `../comments${sheet}.xml`],
    ['vmlDrawing', `../drawings/vmlDrawing${sheet}.vml`],
  ]);
}

function relations(targets: readonly (readonly [kind: string, target: string])[]): string {
  const each = targets.map(
    ([kind, target], at) => `<Relationship Id="rId${at + 1}" Type="${RELATIONS}/${kind}" Target="${target}"/>`,
  );
  return `${XML_HEAD}<Relationships xmlns="${PACKAGE}/relationships">${each.join('')}</Relationships>`;
}

/** The list of sheets and names. The figures are cached, and a spreadsheet calculates them once when it opens the file. */
export function workbookXml(sheets: readonly SheetSource[]): string {
  const listed = sheets.map(({ name }, at) => `<sheet name="${name}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`);
  const names = sheets.flatMap((sheet) => sheet.names ?? []);
  const defined = [
    ...names.map(({ name, ref }) => `<definedName name="${name}">${escapeText(ref)}</definedName>`),
    ...sheets.flatMap((sheet, at) => {
      const titles = printTitles(sheet);
      return titles === ''
        ? []
        : [`<definedName name="_xlnm.Print_Titles" localSheetId="${at}">${titles}</definedName>`];
    }),
  ];
  return (
    `${XML_HEAD}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><workbookPr/>` +
    `<bookViews><workbookView/></bookViews><sheets>${listed.join('')}</sheets>` +
    (defined.length > 0 ? `<definedNames>${defined.join('')}</definedNames>` : '') +
    '<calcPr calcId="171027" fullCalcOnLoad="1"/></workbook>'
  );
}

/** Rows repeated on every page; where a sheet is printed several pages wide, its frozen columns too. */
function printTitles({ name, repeatRows, pagesWide = 1, frozenColumns }: SheetSource): string {
  return [
    ...(pagesWide > 1 && frozenColumns > 0 ? [`${name}!$A:$${columnLetters(frozenColumns - 1)}`] : []),
    ...(repeatRows ? [`${name}!$${repeatRows[0]}:$${repeatRows[1]}`] : []),
  ].join(',');
}

function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}
