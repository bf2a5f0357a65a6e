import { ok, refuse, type Result } from '../result';
import type { Table } from './opening';
import { openWorkbook, optional } from './xlsxPackage';
import { partPath, readCellLooks, readSharedTexts, readWorkbook } from './xlsxParts';
import { readSheet } from './xlsxSheet';

/**
 * The sheets of an .xlsx workbook as tables. A schedule needs more of a workbook than its values: hidden rows must be said,
 * a formula without a stored result must not look like a blank cell, one bad cell must not cost the file, and a
 * forged row number or part size must not cost the memory. So the sheets are read here from fflate and an XML walker.
 */
export function readXlsx(bytes: Uint8Array): Result<Table[]> {
  const opened = openWorkbook(bytes);
  if (!opened.ok) return opened;
  const { part, relations: links, folder, pathOf, xml } = opened.value;
  const workbook = readWorkbook(xml);
  if (!workbook.ok) return workbook;
  const texts = optional(part(pathOf('sharedStrings') ?? `${folder}/sharedStrings.xml`), readSharedTexts);
  if (!texts.ok) return texts;
  const looks = optional(part(pathOf('styles') ?? `${folder}/styles.xml`), readCellLooks);
  if (!looks.ok) return looks;
  const tables: Table[] = [];
  const missing: string[] = [];
  for (const { name, relation, hidden } of workbook.value.sheets) {
    const link = links.get(relation);
    // Sheets that hold only a chart or an old dialog have no cells.
    if (link !== undefined && link.kind !== 'worksheet') continue;
    const xml = link === undefined || link.external ? ok(null) : part(partPath(folder, link.target));
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
