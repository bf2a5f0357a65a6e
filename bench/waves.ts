/**
 * What an edit makes Excel ask of the add-in: `npm run bench -- waves [OPENINGS…]`. The span of the first opening is changed; counted are
 * the calls of worksheet functions that follow from it, and in how many waves, one waiting for the other. In Excel a wave takes about
 * half a second whatever its work (Excel-Custom-Functions issue 372); native formulas count as nothing beside it.
 */
import { readRange, type CellPosition, type CellRange } from '../src/workbook/address';
import type { Sheet } from '../src/workbook/sheet';
import { sheetsOf } from './excel';

const SECONDS_OF_WAVE = 0.5;

interface Node {
  readonly sheet: string;
  readonly at: CellPosition;
  readonly reads: readonly { readonly sheet: string; readonly range: CellRange }[];
  /** Calls of ours in its formula. */
  readonly calls: number;
  /** The area that its array fills. */
  readonly fills: CellRange;
}

export interface Edit {
  readonly calls: number;
  readonly waves: number;
  readonly cells: number;
}

const REFERENCE = /(?:(\w+)!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)(?![\w(])/g;

function nodesOf(sheets: readonly Sheet[]): Node[] {
  const names = new Map(sheets.flatMap((sheet) => sheet.names ?? []).map(({ name, ref }) => [name, ref]));
  return sheets.flatMap((sheet) =>
    sheet.rows.flatMap((cells, row) =>
      cells.flatMap((cell, column): Node[] => {
        if (cell?.formula === undefined) return [];
        const bare = cell.formula.replace(/"[^"]*"/g, '""');
        const spelled = bare.replace(/[A-Za-z_]\w*(?![\w(!.])/g, (word) => names.get(word) ?? word);
        const reads = [...spelled.matchAll(REFERENCE)].flatMap(([, other = sheet.name, address]) => {
          const range = readRange(address!.replaceAll('$', ''));
          return range.ok ? [{ sheet: other, range: range.value }] : [];
        });
        const { rows = 1, columns = 1 } = cell.spill ?? {};
        const fills = { first: { row, column }, last: { row: row + rows - 1, column: column + columns - 1 } };
        return [{ sheet: sheet.name, at: { row, column }, reads, calls: bare.split('ARCH.').length - 1, fills }];
      }),
    ),
  );
}

const meet = (one: CellRange, other: CellRange) =>
  one.first.row <= other.last.row &&
  other.first.row <= one.last.row &&
  one.first.column <= other.last.column &&
  other.first.column <= one.last.column;

/** What follows from a change of one cell. */
export function editOf(sheets: readonly Sheet[], sheet: string, at: CellPosition): Edit {
  const nodes = nodesOf(sheets);
  const wave = new Map<Node, number>();
  let changed: { sheet: string; area: CellRange; wave: number }[] = [{ sheet, area: { first: at, last: at }, wave: 0 }];
  while (changed.length > 0) {
    const next: typeof changed = [];
    for (const node of nodes) {
      let latest = -1;
      for (const { sheet: where, area, wave: of } of changed) {
        if (of > latest && node.reads.some((read) => read.sheet === where && meet(read.range, area))) latest = of;
      }
      if (latest < 0) continue;
      const own = latest + (node.calls > 0 ? 1 : 0);
      if (own <= (wave.get(node) ?? -1)) continue;
      wave.set(node, own);
      next.push({ sheet: node.sheet, area: node.fills, wave: own });
    }
    changed = next;
  }
  const calls = [...wave.keys()].reduce((sum, node) => sum + node.calls, 0);
  return { calls, waves: Math.max(0, ...wave.values()), cells: wave.size };
}

export function run(args: readonly string[]): void {
  const sizes = args.length > 0 ? args.map(Number) : [100, 1000];
  console.log('openings  calls in all  after an edit: cells  calls  waves  seconds, about');
  for (const openings of sizes) {
    const sheets = sheetsOf(openings);
    const takeoff = sheets.find(({ name }) => name === 'Takeoff')!;
    const at = { row: takeoff.body![0] - 1, column: takeoff.columnKeys!.indexOf('span') };
    const { cells, calls, waves } = editOf(sheets, 'Takeoff', at);
    const all = nodesOf(sheets).reduce((sum, node) => sum + node.calls, 0);
    const columns = [openings, all, cells, calls, waves, waves * SECONDS_OF_WAVE];
    const widths = [8, 14, 21, 7, 7, 16];
    console.log(columns.map((figure, place) => String(figure).padStart(widths[place]!)).join(''));
  }
}
