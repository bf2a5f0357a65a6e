/** Writes the corpus of odd and hostile schedule files beside it: `npx tsx tests/schedule/hostile/make.ts`. */
import { writeFileSync } from 'node:fs';
import { escapeXml, HEADINGS, sheetXml, simpleWorkbook, workbookParts, zipParts, type CellXml } from '../workbookFile';

const A: CellXml[] = ['A', 2, 'segmental', 36, 6];
const B: CellXml[] = ['B', 1, 'half round', 40, null];
const CSV = 'Mark,Qty,Head,Width,Rise\nA,2,segmental,36,6\nB,1,half round,40,\n';
const utf8 = (text: string) => new TextEncoder().encode(text);

function utf16(text: string, bigEndian: boolean, mark: boolean): Uint8Array {
  const units = [...(mark ? '\ufeff' : ''), ...text].map((character) => character.charCodeAt(0));
  return Uint8Array.from(units.flatMap((unit) => (bigEndian ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])));
}

const good = simpleWorkbook([A, B]);
const goodParts = () => workbookParts({ Openings: sheetXml([HEADINGS, A, B]) });
const oneSheet = (rows: CellXml[][], extra: Parameters<typeof sheetXml>[1] = {}) =>
  zipParts(workbookParts({ Openings: sheetXml([HEADINGS, ...rows], extra) }));

const sharedTexts = ['A', 'segmental', 'B', 'half round'];
const shared = (index: number): CellXml => ({ xml: `<c r="@" t="s"><v>${index}</v></c>` });
const sharedRows = [
  [shared(0), 2, shared(1), 36, 6],
  [shared(2), 1, shared(3), 40, null],
];
const sharedXml = `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${sharedTexts.map((text) => `<si><t>${escapeXml(text)}</t></si>`).join('')}</sst>`;

/** A directory entry that says the sheet unpacks to far more, or far less, than it does. */
function forgedSize(file: Uint8Array, part: string, size: number): Uint8Array {
  const forged = file.slice();
  const view = new DataView(forged.buffer);
  const name = utf8(part);
  for (let at = 0; at < forged.length - 46; at += 1) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    if (name.every((byte, index) => forged[at + 46 + index] === byte)) view.setUint32(at + 24, size, true);
  }
  return forged;
}

function withFlag(file: Uint8Array, flag: number): Uint8Array {
  const marked = file.slice();
  const view = new DataView(marked.buffer);
  for (let at = 0; at < marked.length - 46; at += 1)
    if (view.getUint32(at, true) === 0x02014b50) view.setUint16(at + 8, view.getUint16(at + 8, true) | flag, true);
  return marked;
}

const prefixed = goodParts();
for (const part of ['xl/workbook.xml', 'xl/worksheets/sheet1.xml'])
  prefixed[part] = String(prefixed[part])
    .replaceAll(/<(\/?)(?!\?)/g, '<$1x:')
    .replace('xmlns=', 'xmlns:x=');

const fifty = workbookParts(
  Object.fromEntries(
    Array.from({ length: 50 }, (_, index) => [
      index === 36 ? 'Openings' : `Sheet ${index + 1}`,
      index === 36
        ? sheetXml([HEADINGS, A, B])
        : sheetXml([
            ['Name', 'Phone'],
            ['Somebody', 555],
          ]),
    ]),
  ),
);

const files: Record<string, Uint8Array> = {
  'bom.csv': utf8('\ufeff' + CSV),
  'utf-16-le.csv': utf16(CSV, false, true),
  'utf-16-be.csv': utf16(CSV, true, true),
  'utf-16-without-mark.csv': utf16(CSV, false, false),
  'windows-1252.csv': Uint8Array.from([
    ...utf8('Mark,Qty,Head,Width,Rise\nA,2,segmental,35'),
    0xbd,
    ...utf8(',6\nB,1,half round,40,\n'),
  ]),
  'cr-only.csv': utf8(CSV.replaceAll('\n', '\r')),
  'mixed-line-ends.csv': utf8(CSV.replace('\n', '\r\n').replace('6\n', '6\r')),
  'nul.csv': utf8(CSV.replace('segmental', 'segm\u0000ental')),
  'no-last-line-end.csv': utf8(CSV.trimEnd()),
  'tabs.tsv': utf8(CSV.replaceAll(',', '\t')),
  'tabs-named.csv': utf8(CSV.replaceAll(',', '\t')),
  'pipes.csv': utf8(CSV.replaceAll(',', '|')),
  'bare-quotes.csv': utf8('Mark,Qty,Head,Width,Rise\nA,2,segmental,36",6"\nB,1,half round,40",\n'),
  'open-quote.csv': utf8('Mark,Qty,Head,Width,Rise\n"A,2,segmental,36,6\nB,1,half round,40,\n'),
  'quotes-doubled.csv': utf8('Mark,Qty,Head,Width,Rise\n"A",2,segmental,"36""","6"""\nB,1,half round,"3\'-4""",\n'),
  'ragged.csv': utf8('Mark,Qty,Head,Width,Rise\nA,2,segmental,36,6,,,,\nB,1,half round,40\n'),
  'empty.csv': utf8(''),
  'blank-lines.csv': utf8('\n\n\n'),
  'only-commas.csv': utf8(',,,,\n,,,,\n'),
  'binary.csv': Uint8Array.from({ length: 512 }, (_, index) => (index * 37) % 29),
  'text-named.xlsx': utf8(CSV),
  'workbook-named.csv': good,
  'page-named.xls': utf8('<html><body><table><tr><td>Mark</td></tr></table></body></html>'),
  'picture-named.xlsx': Uint8Array.from([
    0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 1, 2, 3, 0, 0, 0, 0, 0,
  ]),
  'old-workbook.xls': Uint8Array.from([
    0xd0,
    0xcf,
    0x11,
    0xe0,
    0xa1,
    0xb1,
    0x1a,
    0xe1,
    ...new Array<number>(504).fill(0),
  ]),
  'protected.xlsx': Uint8Array.from([
    0xd0,
    0xcf,
    0x11,
    0xe0,
    0xa1,
    0xb1,
    0x1a,
    0xe1,
    ...utf8('EncryptedPackage'),
    ...new Array<number>(488).fill(0),
  ]),
  'password-zip.xlsx': withFlag(good, 1),
  'good.xlsx': good,
  'truncated.xlsx': good.slice(0, Math.floor(good.length * 0.6)),
  'no-workbook.xlsx': zipParts({ 'word/document.xml': '<w/>' }),
  'binary-workbook.xlsx': zipParts({
    ...goodParts(),
    'xl/workbook.xml': null,
    'xl/workbook.bin': 'x',
    '_rels/.rels': String(goodParts()['_rels/.rels']).replace('workbook.xml', 'workbook.bin'),
  }),
  'claims-gigabytes.xlsx': forgedSize(good, 'xl/worksheets/sheet1.xml', 1_500_000_000),
  'claims-too-little.xlsx': forgedSize(good, 'xl/worksheets/sheet1.xml', 20),
  'prefixed.xlsx': zipParts(prefixed),
  'backslashes.xlsx': zipParts(
    Object.fromEntries(Object.entries(goodParts()).map(([name, content]) => [name.replaceAll('/', '\\'), content])),
  ),
  'shared-texts.xlsx': zipParts({
    ...workbookParts({ Openings: sheetXml([HEADINGS, ...sharedRows]) }),
    'xl/sharedStrings.xml': sharedXml,
  }),
  'shared-texts-missing.xlsx': zipParts(workbookParts({ Openings: sheetXml([HEADINGS, ...sharedRows]) })),
  'styles-missing.xlsx': zipParts({ ...goodParts(), 'xl/styles.xml': null }),
  'sheet-missing.xlsx': zipParts({ ...goodParts(), 'xl/worksheets/sheet1.xml': null }),
  'one-of-two-missing.xlsx': zipParts({
    ...workbookParts({ Openings: sheetXml([HEADINGS, A, B]), Prices: sheetXml([[1]]) }),
    'xl/worksheets/sheet2.xml': null,
  }),
  'relations-missing.xlsx': zipParts({ ...goodParts(), 'xl/_rels/workbook.xml.rels': null }),
  'damaged-sheet.xlsx': zipParts({
    ...goodParts(),
    'xl/worksheets/sheet1.xml': sheetXml([HEADINGS, A, B]).slice(0, -60),
  }),
  'external-link.xlsx': oneSheet([['A', 2, 'segmental', { xml: '<c r="@"><f>[1]Sizes!B2</f><v>36</v></c>' }, 6], B]),
  'formulas.xlsx': oneSheet([
    ['A', 2, 'segmental', { xml: '<c r="@"><f>18*2</f><v>36</v></c>' }, { xml: '<c r="@"><f>D2/6</f><v>6</v></c>' }],
    [
      'B',
      1,
      { xml: '<c r="@" t="str"><f>"half"&amp;" round"</f><v>half round</v></c>' },
      { xml: '<c r="@"><f>D2+4</f></c>' },
      null,
    ],
    ['C', 1, 'half round', { xml: '<c r="@"><f t="shared" si="0"/></c>' }, null],
  ]),
  'error-cells.xlsx': oneSheet([A, ['B', 1, 'half round', { xml: '<c r="@" t="e"><v>#DIV/0!</v></c>' }, null]]),
  'dates.xlsx': oneSheet([
    ['A', 2, 'segmental', 36, { xml: '<c r="@" s="1"><v>46024</v></c>' }],
    [{ xml: '<c r="@" s="1"><v>46024</v></c>' }, 1, 'half round', { xml: '<c r="@" s="2"><v>40.5</v></c>' }, null],
    ['C', 1, 'half round', { xml: '<c r="@" s="3"><v>11689</v></c>' }, null],
  ]),
  'hidden.xlsx': oneSheet([A, B], {
    rowAttributes: { 3: 'hidden="1"' },
    before: '<cols><col min="5" max="5" hidden="1"/></cols>',
  }),
  'hidden-sheet.xlsx': zipParts({
    ...goodParts(),
    'xl/workbook.xml': String(goodParts()['xl/workbook.xml']).replace('sheetId', 'state="hidden" sheetId'),
  }),
  'merged.xlsx': zipParts(
    workbookParts({
      Openings: sheetXml(
        [
          ['Sample job', null, null, null, null, null, null],
          ['Mark', 'Qty', 'Head', 'Rough opening', null, 'Rise', 'Species'],
          [null, null, null, 'Width', 'Height', null, null],
          ['A', 2, 'segmental', 38, 82, 6, 'Red oak'],
          ['B', 1, 'half round', 42, 82, null, null],
          ['C', null, 'half round', 42, 82, null, 'Poplar'],
        ],
        {
          after:
            '<mergeCells count="5"><mergeCell ref="A1:G1"/><mergeCell ref="D2:E2"/><mergeCell ref="A2:A3"/><mergeCell ref="G4:G5"/><mergeCell ref="B5:B6"/></mergeCells>',
        },
      ),
    }),
  ),
  'fifty-sheets.xlsx': zipParts(fifty),
  'forged-row.xlsx': zipParts({
    ...goodParts(),
    'xl/worksheets/sheet1.xml': sheetXml([HEADINGS, A, B]).replace('<row r="3"', '<row r="99999999999"'),
  }),
  'forged-column.xlsx': zipParts({
    ...goodParts(),
    'xl/worksheets/sheet1.xml': sheetXml([HEADINGS, A, B]).replace('r="E2"', 'r="ZZZZZZ2"'),
  }),
  'stray-last-row.xlsx': zipParts({
    ...goodParts(),
    'xl/worksheets/sheet1.xml': sheetXml([HEADINGS, A, B]).replace(
      '</sheetData>',
      '<row r="1048576"><c r="A1048576" t="inlineStr"><is><t>stray</t></is></c></row></sheetData>',
    ),
  }),
  'rows-out-of-order.xlsx': zipParts({
    ...goodParts(),
    'xl/worksheets/sheet1.xml': sheetXml([HEADINGS, A, B]).replace(
      /(<row r="2".*?<\/row>)(<row r="3".*?<\/row>)/,
      '$2$1',
    ),
  }),
  'entity-bomb.xlsx': zipParts({
    ...goodParts(),
    'xl/worksheets/sheet1.xml': sheetXml([HEADINGS, ['A', 2, 'segmental', 36, 6], ['B', 1, 'half round', 40, null]])
      .replace(
        '?>',
        `?><!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 9 }, (_, index) => `<!ENTITY ${String.fromCharCode(98 + index)} "${`&${String.fromCharCode(97 + index)};`.repeat(10)}">`).join('')}]>`,
      )
      .replace('>B<', '>&j;<'),
  }),
  'rich-text.xlsx': oneSheet([
    [
      { xml: '<c r="@" t="inlineStr"><is><r><t>A</t></r><rPh sb="0" eb="1"><t>not this</t></rPh></is></c>' },
      2,
      { xml: '<c r="@" t="inlineStr"><is><r><t>seg</t></r><r><t>mental</t></r></is></c>' },
      36,
      6,
    ],
    ['B', 1, 'half_x0020_round', 40, null],
  ]),
  'from-1904.xlsx': zipParts(
    workbookParts(
      { Openings: sheetXml([HEADINGS, ['A', 2, 'segmental', 36, { xml: '<c r="@" s="1"><v>44562</v></c>' }], B]) },
      '<workbookPr date1904="1"/>',
    ),
  ),
};

for (const [name, bytes] of Object.entries(files)) writeFileSync(new URL(name, import.meta.url), bytes);
