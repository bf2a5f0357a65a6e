import { ok, refuse, type Result } from '../result';
import { decodeUtf8 } from './decode';
import type { Table } from './opening';
import { partPath, readNumberLooks, readRelations, readSharedTexts, readWorkbook, type Relation } from './xlsxParts';
import { readSheet } from './xlsxSheet';
import { openZip, type Zip } from './zip';

/**
 * The sheets of an .xlsx workbook as tables. A schedule needs more of a workbook than its values: hidden rows must be said,
 * a formula without a stored result must not look like a blank cell, one bad cell must not cost the file, and a
 * forged row number or part size must not cost the memory. So the sheets are read here from fflate and an XML walker.
 */
export function readXlsx(bytes: Uint8Array): Result<Table[]> {
  const zip = openZip(bytes);
  if (!zip.ok) return zip;
  const root = relations(zip.value, '_rels/.rels');
  if (!root.ok) return root;
  const main = [...root.value.values()].find(({ kind }) => kind === 'officeDocument');
  const workbookPath = main === undefined ? 'xl/workbook.xml' : partPath('', main.target);
  const workbookXml = part(zip.value, workbookPath);
  if (!workbookXml.ok) return workbookXml;
  if (workbookXml.value === null)
    return refuse(
      /\.bin$/.test(workbookPath)
        ? 'It is a binary workbook (.xlsb); please save it as .xlsx.'
        : 'It is a zip archive, but not an .xlsx workbook.',
    );
  if (/\.bin$/i.test(workbookPath)) return refuse('It is a binary workbook (.xlsb); please save it as .xlsx.');
  const workbook = readWorkbook(workbookXml.value);
  if (!workbook.ok) return workbook;
  const slash = workbookPath.lastIndexOf('/');
  const folder = slash < 0 ? '' : workbookPath.slice(0, slash);
  const links = relations(zip.value, `${folder}/_rels/${workbookPath.slice(slash + 1)}.rels`);
  if (!links.ok) return links;
  const pathOf = (kind: string): string | null => {
    const found = [...links.value.values()].find((link) => link.kind === kind && !link.external);
    return found === undefined ? null : partPath(folder, found.target);
  };
  const texts = optional(zip.value, pathOf('sharedStrings') ?? `${folder}/sharedStrings.xml`, readSharedTexts);
  if (!texts.ok) return texts;
  const looks = optional(zip.value, pathOf('styles') ?? `${folder}/styles.xml`, readNumberLooks);
  if (!looks.ok) return looks;
  const tables: Table[] = [];
  const missing: string[] = [];
  for (const { name, relation, hidden } of workbook.value.sheets) {
    const link = links.value.get(relation);
    // Sheets that hold only a chart or an old dialog have no cells.
    if (link !== undefined && link.kind !== 'worksheet') continue;
    const xml = link === undefined || link.external ? ok(null) : part(zip.value, partPath(folder, link.target));
    if (!xml.ok) return xml;
    if (xml.value === null) {
      missing.push(name);
      continue;
    }
    const context = { name, texts: texts.value, looks: looks.value, from1904: workbook.value.from1904 };
    const table = readSheet(xml.value, context);
    if (!table.ok) return table;
    tables.push(
      hidden ? withRemark({ ...table.value, hidden: true }, `The sheet "${name}" is hidden in the file.`) : table.value,
    );
  }
  if (tables.length === 0)
    return refuse(
      missing.length > 0
        ? `The sheet "${missing[0]}" is missing from the file.`
        : 'The workbook has no sheet with cells.',
    );
  const said = missing.map((name) => `The sheet "${name}" is named in the workbook but missing from the file.`);
  return ok(said.length === 0 ? tables : tables.map((table) => said.reduce(withRemark, table)));
}

function withRemark(table: Table, remark: string): Table {
  return { ...table, remarks: [...(table.remarks ?? []), remark] };
}

function part(zip: Zip, path: string): Result<string | null> {
  const bytes = zip.read(path);
  if (!bytes.ok) return bytes;
  return ok(bytes.value === null ? null : decodeUtf8(bytes.value));
}

function relations(zip: Zip, path: string): Result<Map<string, Relation>> {
  const xml = part(zip, path);
  if (!xml.ok) return xml;
  return xml.value === null ? ok(new Map()) : readRelations(xml.value);
}

function optional<T>(zip: Zip, path: string, read: (xml: string) => Result<T[]>): Result<T[]> {
  const xml = part(zip, path);
  if (!xml.ok) return xml;
  return xml.value === null ? ok([]) : read(xml.value);
}
