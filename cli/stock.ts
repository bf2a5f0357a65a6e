import { readDimensionIn } from '../src/dimension';
import { ok, refuse, type Result } from '../src/result';
import { cellText, isEmpty } from '../src/schedule/cell';
import type { CellValue, Table } from '../src/schedule/opening';
import { planStock, type StockPlan } from '../src/stock/plan';
import { cutText, plainLength } from '../src/stock/cuttext';
import { cannotUse, wrongUsage } from './endings';
import { readAllTables } from './files';
import type { Command, ExitCode, Io } from './io';
import { readNumber, readNumbers, readOptions } from './options';
import { Progress } from './progress';

const help = `archwright stock PIECES --stock 96,120,144 [options]    boards to buy and how to cut them

PIECES is a table (.csv, .tsv, .xlsx) with the columns length and quantity.

  --stock 96,120      board lengths on sale
  --prices 8,9.5      price of one board of each; left out: by length
  --kerf 0.125        wood lost to a saw cut; left out: 0
  --trim 0.5          cut off each end of a board; left out: 0
  --seconds 10        most time to look for a better plan; left out: 10
  --json              print {boards, cost, lowerBound, proven, plan} instead of the table
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    stock: { type: 'string' },
    prices: { type: 'string' },
    kerf: { type: 'string', default: '0' },
    trim: { type: 'string', default: '0' },
    seconds: { type: 'string', default: '10' },
    json: { type: 'boolean' },
  });
  if (!options.ok) return wrongUsage(io, 'stock', options.message);
  const { values, positionals } = options.value;
  const [path, extra] = positionals;
  if (path === undefined || extra !== undefined) return wrongUsage(io, 'stock', 'stock needs one file of pieces.');
  if (values.stock === undefined) return wrongUsage(io, 'stock', 'stock needs --stock, the board lengths on sale.');
  const stock = readNumbers('stock', values.stock);
  if (!stock.ok) return wrongUsage(io, 'stock', stock.message);
  const prices = values.prices === undefined ? ok(undefined) : readNumbers('prices', values.prices);
  if (!prices.ok) return wrongUsage(io, 'stock', prices.message);
  if (prices.value && prices.value.length !== stock.value.length) {
    return wrongUsage(
      io,
      'stock',
      `--prices must be as many as --stock; got ${prices.value.length} for ${stock.value.length}.`,
    );
  }
  const kerf = readNumber('kerf', values.kerf, 0, 1e6);
  if (!kerf.ok) return wrongUsage(io, 'stock', kerf.message);
  const trim = readNumber('trim', values.trim, 0, 1e6);
  if (!trim.ok) return wrongUsage(io, 'stock', trim.message);
  const seconds = readNumber('seconds', values.seconds, 0, 3600);
  if (!seconds.ok) return wrongUsage(io, 'stock', seconds.message);

  const tables = await readAllTables(path);
  if (!tables.ok) return cannotUse(io, tables.message);
  const pieces = piecesIn(tables.value);
  if (!pieces.ok) return cannotUse(io, `"${path}": ${pieces.message}`);

  const deadlineMs = seconds.value * 1000;
  const progress = new Progress(io, deadlineMs);
  const plan = planStock({
    ...pieces.value,
    stock: stock.value,
    prices: prices.value,
    kerf: kerf.value,
    trim: trim.value,
    deadlineMs,
    onProgress: ({ elapsedMs, boards, lowerBound }) =>
      progress.show(Math.min(elapsedMs, deadlineMs), `${boards} boards, no plan under ${lowerBound.toFixed(2)}`),
  });
  progress.clear();
  if (!plan.ok) return cannotUse(io, `${plan.message}.`);
  const { boards, cost, lowerBound, proven } = plan.value;
  io.out(
    values.json
      ? JSON.stringify({ boards, cost, lowerBound, proven, plan: plan.value.plan }) + '\n'
      : planTable(plan.value),
  );
  return 0;
}

interface Pieces {
  readonly lengths: number[];
  readonly quantities: number[];
}

/** The pieces of the first table that has both columns. */
function piecesIn(tables: readonly Table[]): Result<Pieces> {
  for (const table of tables) {
    for (const [at, row] of table.rows.entries()) {
      const names = row.map((cell) => cellText(cell).toLowerCase());
      const length = names.indexOf('length');
      const quantity = names.findIndex((name) => ['quantity', 'qty', 'count'].includes(name));
      if (length >= 0 && quantity >= 0) return readPieces(table, at + 1, length, quantity);
    }
  }
  return refuse('there are no columns named length and quantity.');
}

function readPieces(table: Table, from: number, length: number, quantity: number): Result<Pieces> {
  const pieces: Pieces = { lengths: [], quantities: [] };
  for (const [at, row] of table.rows.entries()) {
    if (at < from || (isEmpty(row[length]) && isEmpty(row[quantity]))) continue;
    const inRow = `row ${table.firstRow + at}: `;
    const long = lengthOf(row[length]);
    if (!long.ok) return refuse(`${inRow}${long.message}.`);
    const count = cellText(row[quantity]);
    if (!/^\d+$/.test(count)) return refuse(`${inRow}quantity must be a whole number from 0; got "${count}".`);
    pieces.lengths.push(long.value);
    pieces.quantities.push(Number(count));
  }
  return pieces.lengths.length === 0 ? refuse('there is no piece below the headings.') : ok(pieces);
}

function lengthOf(cell: CellValue | undefined): Result<number> {
  return typeof cell === 'number' ? ok(cell) : readDimensionIn(cellText(cell), { answer: 'in' });
}

function planTable({ boards, cost, measure, lowerBound, proven, gap, yield: share, plan }: StockPlan): string {
  const lines = plan.map(
    ({ count, stock, cuts, offcut }) =>
      `${String(count).padStart(6)} × ${plainLength(stock)}: ${cutText(cuts)}, left ${plainLength(offcut)}`,
  );
  const proof = proven ? 'proven: no plan is better' : `at most ${gap} above the best; no plan is under ${lowerBound}`;
  const total = `${boards} ${boards === 1 ? 'board' : 'boards'}${measure === 'cost' ? `, cost ${cost}` : ''}`;
  return `${lines.join('\n')}\n${total}, ${(share * 100).toFixed(1)} % used, ${proof}\n`;
}

export const stock: Command = { summary: 'boards to buy for a list of pieces, with the cutting plan', help, run };
