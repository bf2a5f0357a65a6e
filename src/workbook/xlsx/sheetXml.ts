import { columnLetters } from '../address';
import { arrayArea, DYNAMIC_ARRAY } from './arrays';
import { fittingText } from '../cellText';
import { isErrorValue, type BookSheet, type Cell } from '../sheet';
import type { Comment } from './comments';
import { calls, storedFormula } from '../formulas/calls';
import { typedOverRule } from '../sharedFormulas';
import type { Looks } from './looks';
import { rowHeight } from './rowHeight';
import { validationXml } from './validations';
import { escapeText, MAIN, RELATIONS, XML_HEAD } from './xml';

/** What other parts of the file need of a sheet, found while its rows go by. */
export interface Found {
  readonly comments: Comment[];
  /** The worksheet functions of ours that its formulas call. */
  readonly functions: Set<string>;
  /** Does any formula give an array? */
  arrays: boolean;
}

/**
 * A sheet's part of the file, piece by piece: its rows are asked for once and never held. The elements stand in the order
 * that the format demands (ECMA-376 part 1, 18.3.1.99).
 */
export function* sheetXml(sheet: BookSheet, first: boolean, looks: Looks, found: Found): Iterable<string> {
  const hidden = foldedColumns(sheet);
  yield XML_HEAD + `<worksheet xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>`;
  yield view(sheet, first);
  yield `<sheetFormatPr defaultRowHeight="15"${hidden.size > 0 ? ' outlineLevelCol="1"' : ''}/>`;
  yield columns(sheet, hidden) + '<sheetData>';
  let at = 0;
  const hiddenRows = new Set(sheet.hiddenRows);
  for (const cells of sheet.rows) {
    yield rowXml(cells, at, sheet, hidden, hiddenRows.has(at), looks, found);
    at++;
  }
  // Rows below the last filled one may be hidden or higher as well.
  const below = [...hiddenRows, ...(sheet.heights?.keys() ?? [])].filter((row) => row >= at).sort((a, b) => a - b);
  for (const row of new Set(below)) yield rowXml([], row, sheet, hidden, hiddenRows.has(row), looks, found);
  yield '</sheetData>';
  // No password: the lock keeps formulas from slips, and anyone can lift it. 0 says what stays allowed.
  if (sheet.locked) {
    yield '<sheetProtection sheet="1" formatColumns="0" formatRows="0" insertRows="0" deleteRows="0" sort="0" autoFilter="0"/>';
  }
  if (sheet.autoFilter !== undefined) yield `<autoFilter ref="${sheet.autoFilter}"/>`;
  const merges = sheet.merges ?? [];
  if (merges.length > 0) {
    yield `<mergeCells count="${merges.length}">${merges.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`;
  }
  yield* figureRules(sheet);
  const validations = sheet.validations ?? [];
  if (validations.length > 0) {
    yield `<dataValidations count="${validations.length}">${validations.map(validationXml).join('')}</dataValidations>`;
  }
  yield '<pageMargins left="0.4" right="0.4" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>';
  // Paper 1 is US letter, 9 is A4 (ECMA-376 part 1, 18.3.1.63).
  yield `<pageSetup paperSize="${sheet.paper === 'A4' ? 9 : 1}" orientation="${sheet.landscape ? 'landscape' : 'portrait'}" fitToWidth="${sheet.pagesWide ?? 1}" fitToHeight="0"/>`;
  yield '<headerFooter><oddFooter>&amp;L&amp;A&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>';
  const breaks = sheet.pageBreaks ?? [];
  if (breaks.length > 0) {
    const marks = breaks.map((row) => `<brk id="${row}" max="16383" man="1"/>`).join('');
    yield `<rowBreaks count="${breaks.length}" manualBreakCount="${breaks.length}">${marks}</rowBreaks>`;
  }
  if (sheet.pictures && sheet.pictures.length > 0) yield '<drawing r:id="rId3"/>';
  if (found.comments.length > 0) yield '<legacyDrawing r:id="rId2"/>';
  yield '</worksheet>';
}

function foldedColumns({ folded = [] }: BookSheet): Set<number> {
  const hidden = new Set<number>();
  for (const { first, last } of folded) for (let column = first; column <= last; column++) hidden.add(column);
  return hidden;
}

function view({ frozenRows: rows, frozenColumns: columns, home }: BookSheet, first: boolean): string {
  const pane = rows > 0 && columns > 0 ? 'bottomRight' : rows > 0 ? 'bottomLeft' : columns > 0 ? 'topRight' : null;
  const split =
    pane === null
      ? ''
      : `<pane${columns > 0 ? ` xSplit="${columns}"` : ''}${rows > 0 ? ` ySplit="${rows}"` : ''}` +
        ` topLeftCell="${columnLetters(columns)}${rows + 1}" activePane="${pane}" state="frozen"/>`;
  const selection = `<selection${pane === null ? '' : ` pane="${pane}"`} activeCell="${home}" sqref="${home}"/>`;
  return `<sheetViews><sheetView${first ? ' tabSelected="1"' : ''} workbookViewId="0">${split}${selection}</sheetView></sheetViews>`;
}

function columns({ widths }: BookSheet, hidden: ReadonlySet<number>): string {
  if (widths.length === 0) return '';
  const each = widths.map(
    (width, at) =>
      `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"${hidden.has(at) ? ' hidden="1" outlineLevel="1"' : ''}/>`,
  );
  return `<cols>${each.join('')}</cols>`;
}

function rowXml(
  cells: readonly (Cell | null)[],
  row: number,
  { widths, heights }: BookSheet,
  hidden: ReadonlySet<number>,
  away: boolean,
  looks: Looks,
  found: Found,
): string {
  const height = heights === undefined ? rowHeight(cells, widths, hidden) : (heights.get(row) ?? null);
  const parts = [
    `<row r="${row + 1}"${height === null ? '' : ` ht="${height}" customHeight="1"`}${away ? ' hidden="1"' : ''}>`,
  ];
  for (let column = 0; column < cells.length; column++) {
    const cell = cells[column];
    if (!cell) continue;
    const area = arrayArea(cell, { row, column });
    const look = looks.of(cell, typeof cell.value === 'string' && column > 0);
    parts.push(cellXml(cell, `${lettersOf(column)}${row + 1}`, area, look));
    if (cell.comment !== undefined) found.comments.push({ row, column, text: cell.comment });
    if (area === null) continue;
    found.arrays = true;
    for (const name of calls(cell.formula!)) found.functions.add(name);
  }
  parts.push('</row>');
  return parts.join('');
}

const letters: string[] = [];
function lettersOf(column: number): string {
  return (letters[column] ??= columnLetters(column));
}

/** Text is written as text, whatever it looks like; a formula stands only where the sheet says that there is one. */
function cellXml({ value, formula }: Cell, address: string, area: string | null, look: number): string {
  const start = `<c r="${address}" s="${look}"${area === null ? '' : ` cm="${DYNAMIC_ARRAY}"`}`;
  if (formula !== undefined) {
    const array = area === null ? '' : ` t="array" ref="${area}"`;
    const calculated = `<f${array}>${escapeText(storedFormula(formula))}</f>`;
    if (typeof value === 'number') return `${start}>${calculated}<v>${digits(value, address)}</v></c>`;
    if (typeof value === 'boolean') return `${start} t="b">${calculated}<v>${value ? 1 : 0}</v></c>`;
    if (isErrorValue(value)) return `${start} t="e">${calculated}<v>${escapeText(value)}</v></c>`;
    return `${start} t="str">${calculated}<v>${escapeText(fittingText(value ?? ''))}</v></c>`;
  }
  if (value === null || value === '') return `${start}/>`;
  if (typeof value === 'number') return `${start}><v>${digits(value, address)}</v></c>`;
  if (typeof value === 'boolean') return `${start} t="b"><v>${value ? 1 : 0}</v></c>`;
  return `${start} t="inlineStr"><is><t xml:space="preserve">${escapeText(fittingText(value))}</t></is></c>`;
}

function digits(value: number, address: string): string {
  if (!Number.isFinite(value)) throw new Error(`the figure for ${address} is ${value}, which no cell can hold`);
  return String(value);
}

/** Figures that were typed over stand out: the workbook's one differential format. */
function figureRules({ figures = [] }: BookSheet): string[] {
  return figures.map((range, at) => {
    const formula = escapeText(storedFormula(typedOverRule(range)));
    return `<conditionalFormatting sqref="${range}"><cfRule type="expression" dxfId="0" priority="${at + 1}"><formula>${formula}</formula></cfRule></conditionalFormatting>`;
  });
}
