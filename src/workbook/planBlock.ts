import type { BoardsAlike } from '../boards/order';
import type { Table } from '../schedule/opening';
import { SETTING_GROUPS, SETTINGS, type SettingKey } from '../standards';
import type { BoardNeeds } from '../takeoff/boards';
import { withHeld, type HeldFactors } from '../takeoff/factors';
import { costKinds } from '../takeoff/costKinds';
import type { WoodFactors } from '../takeoff/price';
import { ROW_FIELDS } from '../takeoff/row';
import { withFactors, type Takeoff } from '../takeoff/takeoff';
import { columnLetters, lettersOf } from './address';
import { headingCell } from './columnHeads';
import { fingerprint } from './fingerprint';
import { columnFormat } from './format';
import type { Cell, Sheet } from './sheet';
import { TAKEOFF_COLUMNS } from './takeoff/columns';
import { takeoffRange } from './takeoff/places';
import { unplannedRows } from './takeoff/sheet';

/** Where the settings and lists that plans rest on stand on the Standards sheet. */
export interface StandardsRanges {
  readonly settings: readonly (string | number | null)[];
  readonly wood: readonly (readonly (string | number | null)[])[];
  readonly onHand: readonly (readonly (string | number | null)[])[];
}

/** The wood factors of a plan, and the plan. */
export interface PlanFactors {
  readonly boards: BoardNeeds;
  /** Boards bought for each money of wood. */
  readonly planned: WoodFactors;
  /** Those that stand in their place for a job already quoted. */
  readonly held: HeldFactors;
}

const FACTORS = 'Wood factors';
const FACTOR_HEADINGS = ['Wood', 'Factor', 'As planned', 'Held at'] as const;
/** Where a wood's factor is held. */
const HELD_COLUMN = FACTOR_HEADINGS.indexOf('Held at');

/**
 * What a plan of boards and set-ups was made from, below the boards: each opening's inputs under its number, the settings and
 * lists, and what is bought for each money of wood. Native formulas tell from it whether the plan is older than the rows.
 */
export function withPlan(
  sheet: Sheet,
  takeoff: Takeoff,
  { boards, planned: factors, held: isHeldAt }: PlanFactors,
  made: StandardsRanges,
  rowsOnSheet: number,
): Sheet {
  const { openings } = takeoff;
  const rows: (readonly (Cell | null)[])[] = [...sheet.rows, []];
  const names: { name: string; ref: string }[] = [...(sheet.names ?? [])];
  const name = (as: string, firstColumn: number, firstRow: number, columns: number, height: number) => {
    const corner = (column: number, row: number) => `$${columnLetters(column)}$${row}`;
    const last = corner(firstColumn + columns - 1, firstRow + height - 1);
    const first = corner(firstColumn, firstRow);
    names.push({ name: as, ref: `Stock!${first === last ? first : `${first}:${last}`}` });
  };
  const printed = sheet.rows.length;

  rows.push([{ value: `${FACTORS}: what is bought for each dollar of wood in the rows`, style: 'group' }]);
  rows.push([...FACTOR_HEADINGS.map((heading, at) => headingCell(heading, at === 0 ? 'text' : 'figures'))]);
  const woods = new Map<string, number>();
  for (const { own } of openings) {
    const factor = own === null ? null : factors(own.stock);
    if (own !== null && factor !== null) woods.set(own.stock, factor);
  }
  const effective = withHeld(factors, isHeldAt);
  const format = '0.0000';
  const { 'As planned': asPlanned, 'Held at': heldAt } = lettersOf(FACTOR_HEADINGS);
  const factorRows = [...woods].map(([wood, factor], at): Cell[] => {
    const row = rows.length + 1 + at;
    return [
      { value: wood, style: 'text', format: '@' },
      {
        value: effective(wood),
        formula: `IF(N(${heldAt}${row})>0,${heldAt}${row},${asPlanned}${row})`,
        style: 'figure',
        format,
      },
      { value: factor, style: 'fixed', format },
      {
        ...{ value: isHeldAt.get(wood.toLowerCase()) ?? null, style: 'input', format },
        comment: 'Type the factor of a job already quoted, and its prices stay; clear it, and they follow the plan.',
      },
    ];
  });
  if (factorRows.length === 0)
    factorRows.push([
      { value: '(no wood is planned)', style: 'text', format: '@' },
      { value: 1, style: 'fixed', format },
    ]);
  name('Factors', 0, rows.length + 1, 2, factorRows.length);
  name('Factor_woods', 0, rows.length + 1, 1, factorRows.length);
  rows.push(...factorRows, []);

  rows.push([{ value: 'What the job costs, by kind', style: 'group' }]);
  const costs = costKinds(withFactors(takeoff, factors)).map(({ name: kind, money }): Cell[] => [
    { value: kind, style: 'text', format: '@' },
    { value: money, style: 'fixed', format: columnFormat('money', 'in') },
  ]);
  name('Plan_costs', 1, rows.length + 1, 1, costs.length);
  rows.push(...costs, []);

  rows.push([{ value: 'What this plan was made from', style: 'group' }]);
  const fields = ['mark', 'place', ...ROW_FIELDS] as const;
  const inputs = fields.map((field) => TAKEOFF_COLUMNS.find(({ key }) => key === field)!.heading);
  rows.push([...['No.', 'As planned', ...inputs].map((heading) => headingCell(heading))]);
  // A row of a wood without a plan isn't held by it.
  const held = openings.filter(({ own, cost }) => own === null || cost === null || factors(own.stock) !== null);
  const first = rows.length + 1;
  const from = columnLetters(2);
  const to = columnLetters(1 + fields.length);
  for (const opening of held) {
    const row = rows.length + 1;
    rows.push([
      { value: opening.no, style: 'fixed', format: '0' },
      {
        value: plannedCells(opening).map(asText).join('|'),
        formula: `TEXTJOIN("|",FALSE,${from}${row}:${to}${row})`,
        style: 'figure',
        format: 'General',
      },
      ...plannedCells(opening).map(asGiven),
    ]);
  }
  if (held.length === 0)
    rows.push([
      { value: 0, style: 'fixed', format: '0' },
      { value: '', style: 'fixed', format: '@' },
    ]);
  name('Plan', 0, first, 2, Math.max(1, held.length));
  name('Plan_no', 0, first, 1, Math.max(1, held.length));

  rows.push([], [headingCell('Settings'), headingCell('Stock list')]);
  const listsAt = rows.length + 1;
  const height = Math.max(made.settings.length, made.wood.length, made.onHand.length);
  const woodWidth = made.wood[0]?.length ?? 1;
  for (let at = 0; at < height; at++) {
    rows.push([
      asGiven(made.settings[at]),
      ...Array.from({ length: woodWidth }, (_, column) => asGiven(made.wood[at]?.[column])),
      ...(made.onHand[at] ?? []).map(asGiven),
    ]);
  }
  name('Plan_shop', 0, listsAt, 1, made.settings.length);
  name('Plan_wood', 1, listsAt, woodWidth, made.wood.length);
  name('Plan_on_hand', 1 + woodWidth, listsAt, made.onHand[0]?.length ?? 1, made.onHand.length);

  rows.push([], [headingCell('Is the plan current?')]);
  const state = rows.length + 1;
  const { count, first: firstMark } = unplannedRows(rowsOnSheet);
  const numbers = takeoffRange('no', rowsOnSheet);
  rows.push(
    [
      { value: 0, formula: count, style: 'figure' },
      { value: 'openings new or changed since', style: 'text' },
    ],
    [
      { value: 0, formula: `SUMPRODUCT(--(COUNTIF(${numbers},Plan_no)=0))`, style: 'figure' },
      { value: 'openings gone since', style: 'text' },
    ],
    [
      {
        value: 0,
        formula: [...['shop', 'wood', 'on_hand'].map((list) => differing(`Plan_${list}`, CURRENT[list]!))]
          .join('+')
          .concat(...FOR_READING.map((at) => `-(INDEX(Plan_shop,${at + 1})&""<>INDEX(Shop_values,${at + 1})&"")`)),
        style: 'figure',
      },
      { value: 'settings and list cells changed since', style: 'text' },
    ],
    [
      {
        value: '',
        formula:
          `IF(A${state}+A${state + 1}+A${state + 2}=0,"","Boards, set-ups and wood factors are older than "&` +
          `IF(A${state + 2}=0,"","the shop's settings"&IF(A${state}+A${state + 1}=0,""," and "))&` +
          `IF(A${state}>1,A${state}&" rows, "&${firstMark}&" first",IF(A${state}=1,"row "&${firstMark},""))&` +
          `IF(A${state + 1}=0,"",IF(A${state}=0,"the rows: ",", and ")&A${state + 1}&IF(A${state + 1}=1," is gone"," are gone"))&": bring them up to date.")`,
        style: 'attention',
      },
    ],
  );
  name('Plan_state', 0, state + 3, 1, 1);
  rows.push([
    { value: planMade(takeoff, boards, made), style: 'fixed', format: '@' },
    { value: 'stands for the plan and all that it was made from', style: 'text' },
  ]);
  name('Plan_made', 0, rows.length, 1, 1);
  return {
    ...sheet,
    rows,
    names,
    printArea: sheet.printArea ?? `A1:${columnLetters(sheet.widths.length - 1)}${printed}`,
  };
}

/**
 * A formula for sheets that are written only when they are asked for, of a plan's `planMade`: it says where the plan is older than
 * the rows, and where the sheet Stock holds another plan by now.
 */
export function olderThanPlan(made: string, what: string): string {
  return `IF(Plan_state<>"",Plan_state,IF(Plan_made="${made}","","Planned again since: write ${what} again."))`;
}

/** What stands for a plan and all that it was made from: rows with their names, settings, lists, and the boards. */
export function planMade({ openings }: Takeoff, { plans, problems }: BoardNeeds, made: StandardsRanges): string {
  const rows = openings.map((opening) => [opening.no, ...plannedCells(opening)]);
  const settings = made.settings.filter((_, at) => !FOR_READING.includes(at));
  // Which pieces come out of which boards; where they lie follows from that, but for a rounding.
  const pieces = ({ sections }: BoardsAlike) =>
    sections.map(({ lanes }) => lanes.map(({ rows: each }) => each.map((row) => row.pieces.map(({ part }) => part))));
  const boards = plans.map(({ species, thickness, boards: cut }) => [
    ...[species, thickness],
    ...cut.map((alike) => [alike.count, alike.board, pieces(alike)]),
  ]);
  // Figures as formulas join them, so that a plan made from a sheet and the one that the sheet was filled from are one.
  const rounded = (_key: string, value: unknown) => (typeof value === 'number' ? asText(value) : (value ?? ''));
  return fingerprint(JSON.stringify([rows, settings, made.wood, made.onHand, boards, problems], rounded));
}

/** An opening's cells that a plan names or rests on. */
function plannedCells({ opening, cells }: Takeoff['openings'][number]): (string | number | null)[] {
  return [opening.mark, opening.place, ...ROW_FIELDS.map((field) => cells[field])];
}

const READING: readonly SettingKey[] = ['mullPost', 'straightPiece'];
/** Settings that count only while a list is read, by their rows in the range of settings: no plan rests on them. */
const FOR_READING = SETTING_GROUPS.flatMap((group) => [
  null,
  ...SETTINGS.filter((setting) => setting.group === group).map(({ key }) => key),
]).flatMap((key, at) => (key !== null && READING.includes(key) ? [at] : []));

/** A copy of what somebody typed: text as text. */
function asGiven(value: string | number | null | undefined): Cell | null {
  if (value === null || value === undefined || value === '') return null;
  return { value, style: 'fixed', format: typeof value === 'string' ? '@' : 'General' };
}

/** A cell as a formula joins it to text: figures with 15 digits. */
export function asText(cell: string | number | null): string {
  return cell === null ? '' : String(typeof cell === 'number' ? Number(cell.toPrecision(15)) : cell);
}

/** How many cells of two ranges differ; a blank is another thing than a 0. */
function differing(one: string, other: string): string {
  return `SUMPRODUCT(--(${one}&""<>${other}&""))`;
}

/** The live ranges that a plan's own copies are compared with. */
const CURRENT: Readonly<Record<string, string>> = { shop: 'Shop_values', wood: 'Wood', on_hand: 'OnHand' };

/** One wood's factor, as it stands on a Stock sheet. */
export interface FactorRow {
  readonly wood: string;
  readonly factor: number;
  readonly held: number | null;
  /** Of the cell where it can be held, A1. */
  readonly heldAt: string;
}

/** The wood factors below the boards of a Stock sheet; empty where there are none. */
export function readFactors(stock: Table | null): FactorRow[] {
  const at = stock?.rows.findIndex(([cell]) => typeof cell === 'string' && cell.startsWith(FACTORS)) ?? -1;
  if (stock === null || at < 0) return [];
  const found: FactorRow[] = [];
  for (let row = at + 2; row < stock.rows.length; row++) {
    const cells = stock.rows[row]!;
    const [wood, factor] = cells;
    const held = cells[HELD_COLUMN];
    if (typeof wood !== 'string' || typeof factor !== 'number') break;
    const isHeld = typeof held === 'number' && held > 0;
    const heldAt = `${columnLetters(HELD_COLUMN)}${stock.firstRow + row}`;
    found.push({ wood, factor, held: isHeld ? held : null, heldAt });
  }
  return found;
}

/** Those of a Stock sheet that are held. */
export function heldFactors(stock: Table | null): HeldFactors {
  return new Map(readFactors(stock).flatMap(({ wood, held }) => (held === null ? [] : [[wood.toLowerCase(), held]])));
}

/** The same as a plan gives them. */
export function factorsIn(stock: Table | null): WoodFactors {
  const factors = new Map(readFactors(stock).map(({ wood, factor }) => [wood.toLowerCase(), factor]));
  return (wood) => factors.get(wood.toLowerCase()) ?? null;
}
