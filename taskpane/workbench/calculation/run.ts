import type { ICellData, ObjectMatrix } from '@univerjs/core';
import type { BaseReferenceObject, BaseValueObject, FunctionVariantType } from '@univerjs/engine-formula';
import type { EngineCore } from '../engine';
import { BEYOND } from './operators';
import { scalarOf, valueObject } from './compile';
import { isBlocked, sameSize, type Graph } from './graph';
import { spilledArea, type FormulaNode } from './sheetCells';
import { Turns } from './turns';
import { sameValue, type CellValues, type Scalar } from './value';

type Rows = readonly (readonly Scalar[])[];

/** Formulas that spill over other cells than before have the rest put in order again; more often than this none settles. */
const MOST_ROUNDS = 8;

/** One calculation of what a change made dirty. Nothing is written before its end. */
export class Run {
  /** What cells held before. */
  private readonly before = new Map<FormulaNode, { value: Scalar; spill: Rows | null }>();
  private readonly spilledAgain = new Set<FormulaNode>();
  /** Formats of figures that the library takes from the cells they rest on. */
  private readonly formats = new Map<FormulaNode, string>();
  private libraryReady = false;
  private libraryStale = true;
  private stopped = false;
  /** In this round a formula has come to spill over other cells than before. */
  private moved = false;

  constructor(
    private readonly engine: EngineCore,
    private readonly graph: Graph,
    private readonly values: CellValues,
  ) {}

  stop(): void {
    this.stopped = true;
  }

  /** Calculates all that is dirty; false where it was stopped, and all is as it was. */
  async calculate(): Promise<boolean> {
    const turns = new Turns(this.engine.library);
    const wanted = () => !this.stopped;
    for (let round = 0; ; round++) {
      const calculating = this.evaluateDirty();
      if (!(await turns.take(calculating, wanted))) return this.undone();
      if (!this.moved) return true;
      if (round === MOST_ROUNDS) throw new Error('formulas go on spilling over other cells');
      this.graph.link();
      if (this.graph.beyond !== null) throw new Error(this.graph.beyond);
    }
  }

  private *evaluateDirty(): Generator<void> {
    this.moved = false;
    for (const node of this.graph.order) {
      if (!node.dirty) continue;
      if (node.template.steps) yield* node.template.steps(node.reads);
      node.dirty = false;
      this.moved = this.evaluate(node) || this.moved;
      yield;
    }
  }

  private undone(): false {
    let moved = false;
    for (const [node, { value, spill }] of this.before) {
      const area = spilledArea(node);
      node.value = value;
      node.spill = spill;
      moved ||= !sameSize(node, area);
      for (const range of node.readBy) range.cells.forget();
      keepSpilling(node);
    }
    if (moved) this.graph.link();
    return false;
  }

  /** Calculates one cell; true where it spills over other cells than before. */
  private evaluate(node: FormulaNode): boolean {
    const given = this.worked(node);
    const rows = Array.isArray(given) ? (given as Rows) : null;
    if (rows === null && node.spill === null) {
      if (sameValue(given as Scalar, node.value)) return false;
      this.keep(node);
      node.value = given as Scalar;
      this.tellLibrary(node);
      for (const range of node.readBy) this.graph.changed(range);
      return false;
    }
    const found = rows === null || (rows.length === 1 && rows[0]!.length === 1) ? null : rows;
    if (found !== null && node.spill !== null && !node.disturbed && sameRows(found, node.spill)) return false;
    node.disturbed = false;
    return this.spill(node, found ?? (rows === null ? [[given as Scalar]] : rows));
  }

  /** Lets the library find whether the cells are free, and keeps what it says. */
  private spill(node: FormulaNode, rows: Rows): boolean {
    this.keep(node);
    this.spilledAgain.add(node);
    const runtime = this.library(node);
    const block =
      rows.length === 1 && rows[0]!.length === 1 ? valueObject(this.engine.library, rows[0]![0]!) : this.block(rows);
    runtime.setRuntimeData(block);
    const written = runtime
      .getUnitData()
      [this.engine.workbook.getUnitId()]?.[node.sheet.id]?.getValue(node.row, node.column);
    const before = spilledArea(node);
    node.value = this.values.readResult(written as ICellData | undefined);
    this.libraryStale = true;
    const blocked = isBlocked(node);
    node.spill = !blocked && block.isArray() ? rows : null;
    keepSpilling(node);
    if (blocked) this.graph.blocked.add(node);
    else this.graph.blocked.delete(node);
    const moved = !sameSize(node, before);
    for (const range of node.readBy) this.graph.changed(range);
    if (moved) {
      this.graph.touch(node.sheet, before);
      this.graph.touch(node.sheet, spilledArea(node));
      node.dirty = false;
    }
    return moved;
  }

  private worked(node: FormulaNode): Scalar | Rows {
    const { compiled } = node.template;
    if (compiled)
      try {
        const value = compiled(node.reads);
        // A figure in a cell without a format of its own takes that of the cells it reads: the library knows which.
        if (typeof value !== 'number' || node.reads.length === 0 || this.hasFormat(node)) return value;
      } catch (thrown) {
        if (thrown !== BEYOND) throw thrown;
      }
    return this.interpreted(node);
  }

  private hasFormat({ sheet, row, column }: FormulaNode): boolean {
    const cell = sheet.worksheet.getCellMatrix().getValue(row, column);
    return this.engine.workbook.getStyles().getStyleByCell(cell)?.n?.pattern !== undefined;
  }

  private interpreted(node: FormulaNode): Scalar | Rows {
    const { engineFormula } = this.engine.library;
    this.library(node);
    if (this.libraryStale) {
      engineFormula.FORMULA_REF_TO_ARRAY_CACHE.clear();
      engineFormula.CELL_INVERTED_INDEX_CACHE.clear();
      this.libraryStale = false;
    }
    const { ast } = node.template;
    const found: FunctionVariantType = this.engine.injector
      .get(engineFormula.Interpreter)
      .execute({ node: ast, refOffsetX: node.across, refOffsetY: node.down });
    const value = this.readVariant(node, found);
    ast.resetCalculationState();
    // A reference to a blank shows a 0.
    return value === null && found.isReferenceObject() ? 0 : value;
  }

  private readVariant(node: FormulaNode, found: FunctionVariantType): Scalar | Rows {
    const object = (
      found.isReferenceObject() ? (found as BaseReferenceObject).toArrayValueObject() : found
    ) as BaseValueObject;
    const pattern = object.isArray() ? '' : object.getPattern();
    if (pattern) this.formats.set(node, pattern);
    if (!object.isArray()) return scalarOf(object);
    const array = object as unknown as {
      getRowCount(): number;
      getColumnCount(): number;
      get(row: number, column: number): BaseValueObject | null;
    };
    const [height, width] = [array.getRowCount(), array.getColumnCount()];
    if (height === 1 && width === 1) {
      const only = array.get(0, 0);
      if (only?.getPattern()) this.formats.set(node, only.getPattern());
      return only ? scalarOf(only) : null;
    }
    return Array.from({ length: height }, (_, row) =>
      Array.from({ length: width }, (_, column) => {
        const cell = array.get(row, column);
        return cell ? scalarOf(cell) : null;
      }),
    );
  }

  private block(rows: Rows) {
    return this.engine.library.engineFormula.ArrayValueObject.create({
      calculateValueList: rows.map((row) => row.map((cell) => valueObject(this.engine.library, cell))),
      rowCount: rows.length,
      columnCount: rows[0]!.length,
      ...{ unitId: '', sheetId: '', row: -1, column: -1 },
    });
  }

  private keep(node: FormulaNode): void {
    if (!this.before.has(node)) this.before.set(node, { value: node.value, spill: node.spill });
  }

  /** The library, made ready to calculate at a cell. */
  private library({ sheet, row, column }: FormulaNode) {
    const { engineFormula } = this.engine.library;
    const runtime = this.engine.injector.get(engineFormula.IFormulaRuntimeService);
    if (!this.libraryReady) {
      this.libraryReady = true;
      for (const node of this.before.keys()) this.tellLibrary(node);
    }
    const { worksheet, id } = sheet;
    const unit = this.engine.workbook.getUnitId();
    runtime.setCurrent(row, column, worksheet.getRowCount(), worksheet.getColumnCount(), id, unit);
    return runtime;
  }

  /** What was calculated without the library is written where its own functions look. */
  private tellLibrary(node: FormulaNode): void {
    this.libraryStale = true;
    if (!this.libraryReady) return;
    const { core, engineFormula } = this.engine.library;
    const units = this.engine.injector.get(engineFormula.IFormulaRuntimeService).getUnitData();
    const unit = this.engine.workbook.getUnitId();
    const cells = ((units[unit] ??= {})[node.sheet.id] ??= new core.ObjectMatrix()) as ObjectMatrix<ICellData>;
    cells.setValue(node.row, node.column, this.values.write(node.value));
  }

  /** Writes what came out otherwise than before into the grid. */
  write(): void {
    const { engineFormula, core } = this.engine.library;
    const commands = this.engine.injector.get(core.ICommandService);
    const unit = this.engine.workbook.getUnitId();
    if (this.spilledAgain.size > 0) {
      const model = this.engine.injector.get(engineFormula.FormulaDataModel);
      const runtime = this.engine.injector.get(engineFormula.IFormulaRuntimeService);
      model.clearPreviousArrayFormulaCellData(runtime.getAllRuntimeData().clearArrayFormulaCellData);
      model.mergeArrayFormulaCellData(runtime.getRuntimeArrayFormulaCellData());
      model.mergeArrayFormulaRange(runtime.getUnitArrayFormula());
      commands.syncExecuteCommand(
        engineFormula.SetArrayFormulaDataMutation.id,
        {
          arrayFormulaRange: model.getArrayFormulaRange(),
          arrayFormulaCellData: model.getArrayFormulaCellData(),
          arrayFormulaEmbedded: runtime.getUnitArrayFormulaEmbeddedMap(),
        },
        { onlyLocal: true },
      );
    }
    const sheets: Record<string, Record<number, Record<number, ICellData>>> = {};
    for (const [node, { value }] of this.before) {
      if (sameValue(value, node.value)) continue;
      const pattern = this.formats.get(node);
      const cell = this.values.write(node.value);
      ((sheets[node.sheet.id] ??= {})[node.row] ??= {})[node.column] = pattern
        ? { ...cell, s: { n: { pattern } } }
        : cell;
    }
    if (Object.keys(sheets).length > 0 || this.spilledAgain.size > 0)
      commands.syncExecuteCommand(
        engineFormula.SetFormulaCalculationResultMutation.id,
        { unitData: { [unit]: sheets }, unitOtherData: {} },
        { onlyLocal: true },
      );
  }
}

function keepSpilling(node: FormulaNode): void {
  if (node.spill === null) node.sheet.spilling.delete(node);
  else node.sheet.spilling.add(node);
}

function sameRows(one: Rows, other: Rows): boolean {
  return (
    one.length === other.length &&
    one[0]!.length === other[0]!.length &&
    one.every((row, at) => row.every((cell, column) => sameValue(cell, other[at]![column]!)))
  );
}
