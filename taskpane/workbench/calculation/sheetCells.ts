import type { ICellData, Worksheet } from '@univerjs/core';
import { meet, type Area, type CellSource, type RangeCells } from './range';
import type { Template } from './template';
import type { CellValues, Scalar } from './value';

/** A cell with a formula. */
export interface FormulaNode {
  readonly sheet: SheetCells;
  readonly row: number;
  readonly column: number;
  readonly template: Template;
  /** How far the cell lies from the one that its form is written for. */
  readonly across: number;
  readonly down: number;
  value: Scalar;
  /** What it spills over, its own cell included; null for a single value. */
  spill: readonly (readonly Scalar[])[] | null;
  /** What it reads, as its form's references go. */
  reads: readonly RangeCells[];
  /** The ranges that this cell, or one that it spills over, lies in. */
  readBy: RangeNode[];
  dirty: boolean;
  /** A cell that it spills over was changed by hand. */
  disturbed: boolean;
}

/** A range with the formulas that read it. */
export interface RangeNode {
  readonly cells: RangeCells;
  readonly readers: FormulaNode[];
  /** While an order is looked for: formulas in it that have none yet. */
  waits: number;
}

const MOST_COLUMNS = 20_000;

/** One sheet's cells as formulas see them. */
export class SheetCells implements CellSource {
  readonly nodes = new Map<number, FormulaNode>();
  /** From the top, by column. */
  readonly byColumn = new Map<number, FormulaNode[]>();
  readonly ranges = new Map<string, RangeNode>();
  readonly spilling = new Set<FormulaNode>();

  constructor(
    readonly worksheet: Worksheet,
    readonly id: string,
    private readonly values: CellValues,
  ) {}

  put(node: FormulaNode): void {
    this.nodes.set(node.row * MOST_COLUMNS + node.column, node);
    const column = this.byColumn.get(node.column);
    if (column) column.push(node);
    else this.byColumn.set(node.column, [node]);
  }

  node(row: number, column: number): FormulaNode | undefined {
    return this.nodes.get(row * MOST_COLUMNS + column);
  }

  isFormula(row: number, column: number): boolean {
    return this.nodes.has(row * MOST_COLUMNS + column);
  }

  value(row: number, column: number): Scalar {
    const node = this.node(row, column);
    if (node) return node.value;
    const own = this.values.read(this.worksheet.getCellMatrix().getValue(row, column) as ICellData | undefined);
    if (own !== null) return own;
    for (const { row: top, column: left, spill } of this.spilling) {
      const found = spill?.[row - top]?.[column - left];
      if (found !== undefined) return found;
    }
    return null;
  }

  /** Formulas in an area, those that spill into it from outside among them. */
  formulasIn(area: Area): FormulaNode[] {
    const found: FormulaNode[] = [];
    const { firstRow, lastRow, firstColumn, lastColumn } = area;
    const within = ({ row }: FormulaNode) => row >= firstRow && row <= lastRow;
    if (lastRow - firstRow < 8 && lastColumn - firstColumn < 32) {
      for (let row = firstRow; row <= lastRow; row++)
        for (let column = firstColumn; column <= lastColumn; column++) {
          const node = this.node(row, column);
          if (node) found.push(node);
        }
    } else {
      for (const [column, nodes] of this.byColumn)
        if (column >= firstColumn && column <= lastColumn) for (const node of nodes) if (within(node)) found.push(node);
    }
    for (const node of this.spilling) if (meet(spilledArea(node), area) && !meet(ownArea(node), area)) found.push(node);
    return found;
  }
}

function ownArea({ row, column }: FormulaNode): Area {
  return { firstRow: row, lastRow: row, firstColumn: column, lastColumn: column };
}

export function spilledArea({ row, column, spill }: FormulaNode): Area {
  const [rows, columns] = [spill?.length ?? 1, spill?.[0]?.length ?? 1];
  return { firstRow: row, lastRow: row + rows - 1, firstColumn: column, lastColumn: column + columns - 1 };
}
