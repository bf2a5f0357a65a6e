import type { ICellData, Worksheet } from '@univerjs/core';
import { isFormula } from '../../../src/formulaText';
import { addressOf } from '../../../src/workbook/address';
import type { EngineCore } from '../engine';
import { meet, RangeCells, type Area, type CellSource } from './range';
import { SheetCells, spilledArea, type FormulaNode, type RangeNode } from './sheetCells';
import type { Form, Reference, Templates, WrittenFormula } from './template';
import { CellError, type CellValues, type Scalar } from './value';

/** The cells of a sheet that isn't there. */
const NO_SHEET: CellSource = { value: () => new CellError('#REF!'), isFormula: () => false };

/** What formulas rested on beside cells that are told to change. */
export interface Traces {
  /** The cells that each formula spilled over, its own among them. */
  readonly spills: readonly { readonly sheetId: string; readonly area: Area }[];
  readonly missing: ReadonlySet<string>;
}

export const NO_TRACES: Traces = { spills: [], missing: new Set() };

/** Every formula of the workbook, what each reads, and an order in which all of them can be calculated. */
export class Graph {
  readonly sheets = new Map<string, SheetCells>();
  order: FormulaNode[] = [];
  /** Why the library has to calculate this workbook; null where it hasn't. */
  beyond: string | null = null;
  hidesMatter = false;
  readonly always: FormulaNode[] = [];
  /** Formulas that found no room to spill over: any change may give it. */
  readonly blocked = new Set<FormulaNode>();
  private readonly nodes: FormulaNode[] = [];
  /** Sheets that formulas name and that aren't there, in small letters. */
  private readonly missing = new Set<string>();

  constructor(
    private readonly engine: EngineCore,
    private readonly values: CellValues,
    private readonly templates: Templates,
  ) {}

  /** Reads all formulas, step by step. Nothing can be asked of it before the last. */
  *read(): Generator<void> {
    const { engine, values, templates } = this;
    const { workbook } = engine;
    const byName = new Map<string, SheetCells>();
    const spilled = engine.injector.get(engine.library.engineFormula.FormulaDataModel).getArrayFormulaRange();
    for (const worksheet of workbook.getSheets()) {
      const sheet = new SheetCells(worksheet, worksheet.getSheetId(), values);
      this.sheets.set(sheet.id, sheet);
      byName.set(worksheet.getName().toLowerCase(), sheet);
      yield;
      const forms = new Map<WrittenFormula, Form>();
      for (const { row, column, written, cell } of formulasOf(sheet.worksheet)) {
        yield;
        const form = forms.get(written) ?? templates.of(written);
        forms.set(written, form);
        const { template } = form;
        const node: FormulaNode = {
          ...{ sheet, row, column, template, across: column - form.column, down: row - form.row },
          ...{ value: values.readResult(cell), spill: null, reads: [], readBy: [], dirty: false, disturbed: false },
        };
        sheet.put(node);
        this.nodes.push(node);
        if (template.unforeseen)
          this.beyond ??= `only the grid's own way works out ${worksheet.getName()}!${addressOf({ row, column })}, as it does OFFSET, INDIRECT, LET and LAMBDA`;
        if (template.always || template.hidesMatter) this.always.push(node);
        this.hidesMatter ||= template.hidesMatter;
        if (isBlocked(node)) this.blocked.add(node);
        const area = spilled[workbook.getUnitId()]?.[sheet.id]?.[row]?.[column];
        if (area) {
          node.spill = storedSpill(engine, sheet, values, area);
          sheet.spilling.add(node);
        }
      }
    }
    if (this.beyond !== null) return;
    for (const node of this.nodes) {
      this.findReads(node, byName);
      yield;
    }
    yield* this.linking();
  }

  /** Finds what lies in which range, and an order. To be done again when a formula spills over other cells than before. */
  link(): void {
    for (const _step of this.linking());
  }

  private *linking(): Generator<void> {
    for (const node of this.nodes) node.readBy = [];
    for (const sheet of this.sheets.values())
      for (const range of sheet.ranges.values()) {
        yield;
        const within = sheet.formulasIn(range.cells.area);
        range.waits = within.length;
        for (const node of within) node.readBy.push(range);
      }
    const waiting = new Map<FormulaNode, number>();
    const ready: FormulaNode[] = [];
    for (const sheet of this.sheets.values())
      for (const { waits, readers } of sheet.ranges.values())
        if (waits > 0) for (const reader of readers) waiting.set(reader, (waiting.get(reader) ?? 0) + 1);
    for (const node of this.nodes) if (!waiting.has(node)) ready.push(node);
    for (let at = 0; at < ready.length; at++) {
      yield;
      for (const range of ready[at]!.readBy) {
        range.waits--;
        if (range.waits > 0) continue;
        for (const reader of range.readers) {
          const left = waiting.get(reader)! - 1;
          waiting.set(reader, left);
          if (left === 0) ready.push(reader);
        }
      }
    }
    this.order = ready;
    this.beyond = ready.length < this.nodes.length ? 'formulas read one another in a circle' : null;
  }

  /** What the next reading of all formulas has to know of this one. */
  traces(): Traces {
    const spills = [...this.sheets.values()].flatMap(({ id, spilling }) =>
      [...spilling].map((node) => ({ sheetId: id, area: spilledArea(node) })),
    );
    return { spills, missing: this.missing };
  }

  /** Marks what reads cells where formulas spilled that spill no longer, or otherwise, and sheets that weren't there. */
  touchMoved({ spills, missing }: Traces): void {
    for (const { sheetId, area } of spills) {
      const sheet = this.sheets.get(sheetId);
      const now = sheet?.node(area.firstRow, area.firstColumn);
      if (sheet && !(now && sameSize(now, area))) this.touch(sheet, area);
    }
    const found = [...missing].filter((name) => !this.missing.has(name));
    if (found.length > 0) this.touchNaming(found);
  }

  /** Marks what reads from an area, and the formulas in it, as changed. */
  touch(sheet: SheetCells, area: Area): void {
    for (const node of sheet.formulasIn(area)) node.dirty = true;
    for (const node of sheet.spilling) node.disturbed ||= meet(spilledArea(node), area);
    for (const range of sheet.ranges.values()) if (meet(range.cells.area, area)) this.changed(range);
  }

  /** What reads a range has to be calculated again. */
  changed({ cells, readers }: RangeNode): void {
    cells.forget();
    for (const reader of readers) reader.dirty = true;
  }

  /** Marks formulas in whose text one of the words stands, in small letters. */
  touchNaming(words: readonly string[]): void {
    for (const node of this.nodes) node.dirty ||= words.some((word) => node.template.words.includes(word));
  }

  allDirty(): void {
    for (const node of this.nodes) node.dirty = true;
    for (const sheet of this.sheets.values()) for (const { cells } of sheet.ranges.values()) cells.forget();
  }

  private findReads(node: FormulaNode, byName: ReadonlyMap<string, SheetCells>): void {
    const seen = new Set<RangeNode>();
    node.reads = node.template.references.map((reference) => {
      const named = reference.sheet === null ? node.sheet : byName.get(reference.sheet.toLowerCase());
      if (!named) {
        this.missing.add(reference.sheet!.toLowerCase());
        return new RangeCells(NO_SHEET, areaOf(reference, node, 1, 1));
      }
      const area = areaOf(reference, node, named.worksheet.getRowCount(), named.worksheet.getColumnCount());
      const key = `${area.firstRow},${area.firstColumn},${area.lastRow},${area.lastColumn}`;
      let range = named.ranges.get(key);
      if (!range) named.ranges.set(key, (range = { cells: new RangeCells(named, area), readers: [], waits: 0 }));
      if (!seen.has(range)) range.readers.push(node);
      seen.add(range);
      return range.cells;
    });
  }
}

/** Where an end of a reference lies for a cell so many rows or columns from the one its form is written for. */
function endOf(at: number | null, fixed: boolean, by: number, whole: number): number {
  if (at === null) return whole;
  return fixed ? at : at + by;
}

function areaOf({ first, last }: Reference, { across, down }: FormulaNode, rows: number, columns: number): Area {
  const one = endOf(first.row, first.fixedRow, down, 0);
  const other = endOf(last.row, last.fixedRow, down, rows - 1);
  const left = endOf(first.column, first.fixedColumn, across, 0);
  const right = endOf(last.column, last.fixedColumn, across, columns - 1);
  return {
    firstRow: Math.min(one, other),
    lastRow: Math.max(one, other),
    firstColumn: Math.min(left, right),
    lastColumn: Math.max(left, right),
  };
}

interface FormulaCell {
  readonly row: number;
  readonly column: number;
  /** Where it is written: cells may share the formula of another. */
  readonly written: WrittenFormula;
  readonly cell: ICellData;
}

function formulasOf(worksheet: Worksheet): FormulaCell[] {
  const found: FormulaCell[] = [];
  const sharing: { row: number; column: number; id: string; cell: ICellData }[] = [];
  const firsts = new Map<string, WrittenFormula>();
  worksheet.getCellMatrix().forValue((row, column, data) => {
    const cell = data as ICellData | null;
    if (!cell || (!cell.f && !cell.si)) return;
    if (isFormula(cell.f) && cell.f.length > 1) {
      const written = { row, column, formula: cell.f };
      found.push({ row, column, written, cell });
      if (cell.si) firsts.set(cell.si, written);
    } else if (cell.si) sharing.push({ row, column, id: cell.si, cell });
  });
  for (const { row, column, id, cell } of sharing) {
    const written = firsts.get(id);
    if (written) found.push({ row, column, written, cell });
  }
  return found;
}

function storedSpill(
  { library, injector, workbook }: EngineCore,
  sheet: SheetCells,
  values: CellValues,
  area: { startRow: number; endRow: number; startColumn: number; endColumn: number },
): Scalar[][] {
  const stored = injector.get(library.engineFormula.FormulaDataModel).getArrayFormulaCellData();
  const cells = stored[workbook.getUnitId()]?.[sheet.id];
  return Array.from({ length: area.endRow - area.startRow + 1 }, (_, down) =>
    Array.from({ length: area.endColumn - area.startColumn + 1 }, (_, across) =>
      values.readResult(cells?.[area.startRow + down]?.[area.startColumn + across] as ICellData | undefined),
    ),
  );
}

export function isBlocked({ value }: FormulaNode): boolean {
  return value instanceof CellError && value.kind === '#SPILL!';
}

export function sameSize(node: FormulaNode, before: Area): boolean {
  const after = spilledArea(node);
  return after.lastRow === before.lastRow && after.lastColumn === before.lastColumn;
}
