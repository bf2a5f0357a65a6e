import { refuse, ok, type Result } from '../../result';
import { isTrue, textCollector, unescapeText } from '../../schedule/xlsxParts';
import { walkXml } from '../../schedule/xml';
import { addressOf, readAddress, readRange, type CellPosition } from '../address';
import { copierOf } from '../formulas/relativeForm';
import type { BookSheet, Cell, Sheet, Validation } from '../sheet';
import { enteredFormula } from '../formulas/calls';
import { typedOverRule } from '../sharedFormulas';
import type { ReadLook } from './readLooks';
import { ruleOf } from './validations';

export type ReadSheet = BookSheet & { readonly rows: Sheet['rows'] };

type Attributes = Readonly<Record<string, string>>;
type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** What is read of one sheet: far beyond any job, and still small in memory. */
const MOST_CELLS = 2_000_000;
/** Of columns and rows that say how wide or high they are. */
const MOST_SIZES = 2_000;
const USUAL_WIDTH = 8.43;

/** A sheet's part of a workbook file, with its formulas as they were entered. `comments`: address → text. */
export function readSheetXml(
  xml: string,
  name: string,
  texts: readonly string[],
  looks: readonly ReadLook[],
  comments: ReadonlyMap<string, string>,
): Result<ReadSheet> {
  const reader = new SheetXmlReader(name, texts, looks, comments);
  const refusal = walkXml(xml, name, reader);
  if (reader.fault !== null) return refuse(reader.fault);
  return refusal ?? ok(reader.sheet());
}

interface OpenCell {
  readonly at: CellPosition;
  readonly type: string;
  readonly look: ReadLook;
  value: string | null;
  formula: string | null;
  shared: string | null;
  area: string | null;
}

class SheetXmlReader {
  fault: string | null = null;
  private readonly rows: (Cell | null)[][] = [];
  private readonly widths: number[] = [];
  private readonly hiddenColumns: number[] = [];
  private readonly heights = new Map<number, number>();
  private readonly hiddenRows: number[] = [];
  private readonly merges: string[] = [];
  private readonly validations: Validation[] = [];
  private readonly figures: string[] = [];
  private readonly pageBreaks: number[] = [];
  /** The range of a conditional format, and its formula as far as it was read. */
  private ruled: { readonly range: string; formula: string } | null = null;
  private readonly more: Partial<Mutable<ReadSheet>> = {};
  private readonly shared = new Map<
    string,
    { readonly copied: ReturnType<typeof copierOf>; readonly at: CellPosition }
  >();
  private readonly inline = textCollector();
  private frozenRows = 0;
  private frozenColumns = 0;
  private cells = 0;
  private row = -1;
  private column = -1;
  private cell: OpenCell | null = null;
  private inside: 'v' | 'f' | 'is' | null = null;
  private validation: { attributes: Attributes; one: string; other: string; part: 'one' | 'other' | null } | null =
    null;

  constructor(
    private readonly name: string,
    private readonly texts: readonly string[],
    private readonly looks: readonly ReadLook[],
    private readonly comments: ReadonlyMap<string, string>,
  ) {}

  open(name: string, attributes: () => Attributes): void {
    if (this.cell !== null) this.openInCell(name, attributes);
    else if (name === 'row') this.openRow(attributes());
    else if (name === 'c') this.openCell(attributes());
    else if (this.validation !== null) {
      if (name === 'formula1') this.validation.part = 'one';
      else if (name === 'formula2') this.validation.part = 'other';
    } else if (name === 'dataValidation')
      this.validation = { attributes: attributes(), one: '', other: '', part: null };
    else if (name === 'conditionalFormatting') this.ruled = { range: attributes()['sqref'] ?? '', formula: '' };
    else this.openSheetPart(name, attributes);
  }

  private openSheetPart(name: string, attributes: () => Attributes): void {
    if (name === 'col') this.openColumn(attributes());
    else if (name === 'pane') {
      const { xSplit = '0', ySplit = '0', state } = attributes();
      if (state !== 'frozen' && state !== 'frozenSplit') return;
      this.frozenColumns = Number(xSplit);
      this.frozenRows = Number(ySplit);
    } else if (name === 'selection') this.more.home = attributes()['activeCell'] ?? 'A1';
    else if (name === 'sheetProtection') this.more.locked = isTrue(attributes()['sheet']);
    else if (name === 'autoFilter') this.more.autoFilter = attributes()['ref'] ?? '';
    else if (name === 'mergeCell') this.merges.push(attributes()['ref'] ?? '');
    else if (name === 'pageSetup') {
      const { orientation, fitToWidth = '1' } = attributes();
      if (orientation === 'landscape') this.more.landscape = true;
      if (Number(fitToWidth) > 1) this.more.pagesWide = Number(fitToWidth);
    } else if (name === 'brk') {
      const { id, man } = attributes();
      if (isTrue(man)) this.pageBreaks.push(Number(id));
    }
  }

  close(name: string): void {
    if (name === 'c') this.closeCell();
    else if (name === 'dataValidation') this.closeValidation();
    else if (this.validation !== null) this.validation.part = null;
    else if (name === 'conditionalFormatting') this.closeRule();
    else if (name === 'v' || name === 'f' || name === 'is') this.inside = null;
    else if (this.inside === 'is') this.inline.close(name);
  }

  text(text: string): void {
    if (this.validation?.part) this.validation[this.validation.part] += text;
    if (this.ruled !== null) this.ruled.formula += text;
    if (this.cell === null) return;
    if (this.inside === 'v') this.cell.value = (this.cell.value ?? '') + text;
    else if (this.inside === 'f') this.cell.formula = (this.cell.formula ?? '') + text;
    else if (this.inside === 'is') this.inline.add(text);
  }

  enough(): boolean {
    return this.fault !== null;
  }

  private damaged(what: string): void {
    this.fault ??= `The sheet "${this.name}" is damaged: it has ${what}.`;
  }

  private openColumn({ min, max, width, hidden }: Attributes): void {
    const first = Number(min) - 1;
    const last = Math.min(Number(max) - 1, MOST_SIZES);
    for (let column = first; column <= last; column++) {
      while (this.widths.length < column) this.widths.push(USUAL_WIDTH);
      this.widths[column] = width === undefined ? USUAL_WIDTH : Number(width);
      if (isTrue(hidden)) this.hiddenColumns.push(column);
    }
  }

  private openRow({ r, ht, customHeight, hidden }: Attributes): void {
    this.row = r === undefined ? this.row + 1 : Number(r) - 1;
    this.column = -1;
    if (!readAddress(`A${this.row + 1}`).ok) return this.damaged(`a row numbered ${String(r)}`);
    if (ht !== undefined && isTrue(customHeight) && this.heights.size < MOST_CELLS)
      this.heights.set(this.row, Number(ht));
    if (isTrue(hidden)) this.hiddenRows.push(this.row);
  }

  private openCell({ r, t = 'n', s = '0' }: Attributes): void {
    this.column += 1;
    if (r !== undefined) {
      const place = readAddress(r);
      if (!place.ok) return this.damaged(`a cell named "${r.slice(0, 20)}"`);
      this.row = place.value.row;
      this.column = place.value.column;
    }
    const at = { row: this.row, column: this.column };
    // A blank text cell may come without any text: what the cell before held must not stand for it.
    if (t === 'inlineStr') this.inline.start();
    const look = this.looks[Number(s)] ?? {};
    this.cell = { at, type: t, look, value: null, formula: null, shared: null, area: null };
  }

  private openInCell(name: string, attributes: () => Attributes): void {
    const cell = this.cell!;
    if (name === 'v') {
      this.inside = 'v';
      cell.value ??= '';
    } else if (name === 'f') {
      this.inside = 'f';
      cell.formula ??= '';
      const { t, si, ref } = attributes();
      if (t === 'shared') cell.shared = si ?? '';
      if (t === 'array') cell.area = ref ?? null;
    } else if (name === 'is') this.inside = 'is';
    else if (this.inside === 'is') this.inline.open(name);
  }

  private closeCell(): void {
    const { cell } = this;
    this.cell = null;
    if (cell === null) return;
    const value = this.valueOf(cell);
    const formula = this.formulaOf(cell);
    const comment = this.comments.get(addressOf(cell.at));
    if (value === null && formula === undefined && comment === undefined && Object.keys(cell.look).length === 0) return;
    const rows = this.rows.length;
    this.cells += Math.max(0, cell.at.row + 1 - rows) + 1;
    if (this.cells > MOST_CELLS) {
      this.fault ??= `The sheet "${this.name}" has more than ${MOST_CELLS} cells; a job is far smaller.`;
      return;
    }
    while (this.rows.length <= cell.at.row) this.rows.push([]);
    const row = this.rows[cell.at.row]!;
    this.cells += Math.max(0, cell.at.column - row.length);
    while (row.length < cell.at.column) row.push(null);
    const spill = this.spillOf(cell);
    row[cell.at.column] = {
      value,
      ...cell.look,
      ...(formula === undefined ? {} : { formula }),
      ...(spill === undefined ? {} : { spill }),
      ...(comment === undefined ? {} : { comment }),
    };
  }

  private valueOf({ type, value }: OpenCell): Cell['value'] {
    if (type === 'inlineStr') return unescapeText(this.inline.text()) || null;
    if (value === null || (value === '' && type !== 'str')) return null;
    if (type === 's') {
      const text = this.texts[Number(value)];
      if (text === undefined) this.damaged('texts that are missing from the file');
      return text ?? null;
    }
    if (type === 'b') return isTrue(value);
    if (type === 'str' || type === 'e' || type === 'd') return unescapeText(value);
    const number = Number(value);
    return Number.isFinite(number) ? number : value;
  }

  /** As it was entered; of one shared by several cells each gets its own. */
  private formulaOf({ at, formula, shared }: OpenCell): string | undefined {
    if (formula === null) return undefined;
    if (shared !== null && formula === '') {
      const first = this.shared.get(shared);
      if (!first) return undefined;
      return first.copied(at.row - first.at.row, at.column - first.at.column);
    }
    if (formula === '') return undefined;
    const entered = enteredFormula(unescapeText(formula));
    if (shared !== null) this.shared.set(shared, { copied: copierOf(entered), at });
    return entered;
  }

  private spillOf({ area }: OpenCell): Cell['spill'] {
    const range = area === null ? null : readRange(area);
    if (!range?.ok) return undefined;
    const { first, last } = range.value;
    const size = { rows: last.row - first.row + 1, columns: last.column - first.column + 1 };
    return size.rows * size.columns > 1 ? size : undefined;
  }

  /** Of conditional formats only our own is kept. */
  private closeRule(): void {
    const { range, formula } = this.ruled!;
    this.ruled = null;
    if (enteredFormula(unescapeText(formula.trim())) === typedOverRule(range)) this.figures.push(range);
  }

  private closeValidation(): void {
    const { attributes, one, other } = this.validation!;
    this.validation = null;
    const rule = ruleOf(attributes['type'] ?? '', unescapeText(one), unescapeText(other));
    if (rule === null) return;
    const message = unescapeText(attributes['error'] ?? '');
    for (const range of (attributes['sqref'] ?? '').split(' ')) this.validations.push({ range, rule, message });
  }

  sheet(): ReadSheet {
    const { heights, hiddenRows, merges, validations, figures, pageBreaks } = this;
    const folded = runs(this.hiddenColumns);
    return {
      name: this.name,
      rows: this.rows,
      widths: this.widths,
      frozenRows: this.frozenRows,
      frozenColumns: this.frozenColumns,
      home: 'A1',
      heights,
      ...this.more,
      ...(folded.length > 0 ? { folded } : {}),
      ...(hiddenRows.length > 0 ? { hiddenRows } : {}),
      ...(merges.length > 0 ? { merges } : {}),
      ...(validations.length > 0 ? { validations } : {}),
      ...(figures.length > 0 ? { figures } : {}),
      ...(pageBreaks.length > 0 ? { pageBreaks } : {}),
    };
  }
}

/** Neighbors as ranges. */
function runs(numbers: readonly number[]): { first: number; last: number }[] {
  const found: { first: number; last: number }[] = [];
  for (const number of numbers) {
    const before = found.at(-1);
    if (before && before.last === number - 1) before.last = number;
    else found.push({ first: number, last: number });
  }
  return found;
}
