import { zipSync, type Zippable } from 'fflate';

/** Workbook files written part by part, so that a test can leave out, forge or rename any of them. */
export type Parts = Record<string, string | Uint8Array | null>;

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATION = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

/** A date that never changes, so that the same parts give the same bytes. */
const WRITTEN = new Date(Date.UTC(2026, 0, 5));

export const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];

/** A cell: text and numbers as inline values, or the cell's XML with `@` for its address. */
export type CellXml = string | number | null | { xml: string };

export function sheetXml(
  rows: readonly (readonly CellXml[])[],
  extra: { before?: string; after?: string; rowAttributes?: Record<number, string> } = {},
): string {
  const body = rows.map((row, rowIndex) => {
    const cells = row
      .map((cell, column) => cellXml(cell, `${String.fromCharCode(65 + column)}${rowIndex + 1}`))
      .join('');
    return `<row r="${rowIndex + 1}" ${extra.rowAttributes?.[rowIndex + 1] ?? ''}>${cells}</row>`;
  });
  return `${XML}<worksheet xmlns="${MAIN}">${extra.before ?? ''}<sheetData>${body.join('')}</sheetData>${extra.after ?? ''}</worksheet>`;
}

function cellXml(cell: CellXml, address: string): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return `<c r="${address}"><v>${cell}</v></c>`;
  if (typeof cell === 'string') return `<c r="${address}" t="inlineStr"><is><t>${escapeXml(cell)}</t></is></c>`;
  return cell.xml.replaceAll('@', address);
}

export function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** The parts of a workbook with these sheets; styles: 0 general, 1 d-mmm (built-in 16), 2 `# ??/??`, 3 custom `yyyy-mm-dd`. */
export function workbookParts(sheets: Record<string, string>, workbookExtra = ''): Parts {
  const names = Object.keys(sheets);
  const parts: Parts = {
    '[Content_Types].xml': `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/></Types>`,
    '_rels/.rels': `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${RELATION}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${XML}<workbook xmlns="${MAIN}" xmlns:r="${RELATION}">${workbookExtra}<sheets>${names.map((name, index) => `<sheet name="${escapeXml(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${names.map((_, index) => `<Relationship Id="rId${index + 1}" Type="${RELATION}/worksheet" Target="worksheets/sheet${index + 1}.xml"/>`).join('')}<Relationship Id="rIdS" Type="${RELATION}/styles" Target="styles.xml"/><Relationship Id="rIdT" Type="${RELATION}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    'xl/styles.xml': `${XML}<styleSheet xmlns="${MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="# ??/??"/><numFmt numFmtId="165" formatCode="yyyy\\-mm\\-dd;@"/></numFmts><cellStyleXfs count="1"><xf numFmtId="0"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0" xfId="0"/><xf numFmtId="16" xfId="0"/><xf numFmtId="164" xfId="0"/><xf numFmtId="165" xfId="0"/></cellXfs></styleSheet>`,
  };
  names.forEach((name, index) => (parts[`xl/worksheets/sheet${index + 1}.xml`] = sheets[name]!));
  return parts;
}

export function zipParts(parts: Parts): Uint8Array {
  const files: Zippable = {};
  for (const [name, content] of Object.entries(parts)) {
    if (content === null) continue;
    files[name] = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  }
  return zipSync(files, { mtime: WRITTEN, level: 9 });
}

/** One sheet of plain rows below the usual headings. */
export function simpleWorkbook(rows: readonly (readonly CellXml[])[]): Uint8Array {
  return zipParts(workbookParts({ Openings: sheetXml([HEADINGS, ...rows]) }));
}
