import { lettersOf } from '../address';
import type { ExtraKind } from '../../extras';
import { leadTimeText } from '../../job/leadTime';
import { ROUNDING, type Proposal, type ProposalLine } from '../../job/proposal';
import { columnFormat } from '../format';
import type { Cell, Picture, Sheet } from '../sheet';
import { inStrips } from '../strips';
import type { ProposalDrawing } from './drawings';
import { wrapped } from './wrapped';

/** Mark, quantity, description, unit price, amount. */
const WIDTHS = [11, 9, 74, 13, 17] as const;
const HEADINGS = ['Mark', 'Quantity', 'Description', 'Unit price', 'Amount'] as const;
const LETTERS = lettersOf(HEADINGS);
/** Characters of a line of text over all columns; a little is left for wide letters. */
const TEXT_WIDTH = 112;
const MONEY = columnFormat('money', 'in');

type Row = (Cell | null)[];

/** Formulas by which the amounts follow the takeoff beside the proposal; a proposal that goes out has none of these. */
export interface LiveProposal {
  /** Told first: the row (from 1) of the table's heading, below which the working cells stand. */
  readonly startAt: (heading: number) => void;
  /** Of a line (from 0), alternates counted after the others. */
  readonly quantity: (line: number) => string;
  readonly unitPrice: (line: number) => string;
  readonly amount: (line: number) => string;
  /** Of the extras of a kind, from the rows below the Takeoff's total. */
  readonly extra: (kind: ExtraKind) => { readonly quantity: string; readonly unitPrice: string };
  /** What the job's rules ask for, the first in this row; the subtotal stands in the row above it. */
  readonly charges: (amounts: string, first: number) => readonly { readonly text: Cell; readonly amount: Cell }[];
  /** Written beside the printed part, from the row above the heading on. */
  readonly beside: () => readonly Row[];
  readonly besideWidths: readonly number[];
}

/** Drawings side by side over all columns, and the rows that each strip of them takes. */
const DRAWINGS_ACROSS = 6;

/**
 * The proposal as a customer gets it, on one page wide. Without `live` amounts are values and sums formulas: nothing of cost,
 * margin or settings is in it.
 */
export function proposalSheet(
  proposal: Proposal,
  live: LiveProposal | null = null,
  drawings: readonly ProposalDrawing[] = [],
): Sheet {
  const rows: Row[] = [...letterHead(proposal)];
  rows.push(
    HEADINGS.map((value, at) => ({
      value,
      style: 'heading',
      wrap: true,
      ...(at === 1 || at > 2 ? { align: 'right' } : {}),
    })),
  );
  const heading = rows.length;
  live?.startAt(heading);
  const first = heading + 1;
  proposal.lines.forEach((line, at) => rows.push(lineRow(line, live, at)));
  for (const { words, quantity, unitPrice, amount, kind } of proposal.extras) {
    const follows = kind === undefined ? undefined : live?.extra(kind);
    rows.push([
      null,
      { ...count(quantity), ...(follows ? { formula: follows.quantity } : {}) },
      text(words),
      { ...money(unitPrice), ...(follows ? { formula: follows.unitPrice } : {}) },
      {
        ...money(amount),
        ...(follows
          ? {
              formula: `ROUND(N(${LETTERS.Quantity}${rows.length + 1})*N(${LETTERS['Unit price']}${rows.length + 1}),2)`,
            }
          : {}),
      },
    ]);
  }
  if (rows.length === heading) rows.push([null, null, text('No opening is priced yet.'), null, null]);
  const amounts = `${LETTERS.Amount}${first}:${LETTERS.Amount}${rows.length}`;
  addSums(rows, proposal, amounts, live);
  addAlternates(rows, proposal, live);
  const pictures = addDrawings(rows, drawings);
  addConditions(rows, proposal);
  const last = rows.length;
  const beside = live?.beside() ?? [];
  beside.forEach((cells, at) => {
    const row = (rows[heading - 2 + at] ??= []);
    while (row.length <= WIDTHS.length) row.push(null);
    row.push(...cells);
  });
  for (let at = 0; at < rows.length; at++) rows[at] ??= [];
  return {
    name: 'Proposal',
    rows,
    widths: [...WIDTHS, ...(live ? [3, ...live.besideWidths] : [])],
    frozenRows: 0,
    frozenColumns: 0,
    repeatRows: [heading, heading],
    printArea: `A1:${LETTERS.Amount}${last}`,
    paper: proposal.job.paper,
    ...(pictures.length > 0 ? { pictures } : {}),
    home: 'A1',
    body: [first, first + Math.max(1, proposal.lines.length + proposal.extras.length) - 1],
  };
}

function text(value: string, style: Cell['style'] = 'text', wrap = true): Cell {
  return { value, style, format: '@', ...(wrap ? { wrap: true } : {}) };
}

function money(value: number | null): Cell {
  return { value: value ?? '', style: 'figure', format: MONEY };
}

function count(value: number): Cell {
  return { value, style: 'figure', format: Number.isInteger(value) ? '0' : '0.0##' };
}

/** Who offers, for what, to whom; what is blank takes no room. */
function letterHead({ job }: Proposal): Row[] {
  const rows: Row[] = [];
  if (job.shopName !== '') rows.push([text(job.shopName, 'title', false)]);
  for (const line of job.shopLines) rows.push([text(line, 'note', false)]);
  if (rows.length > 0) rows.push([]);
  rows.push([
    text('Proposal', job.shopName === '' ? 'title' : 'group', false),
    ...(job.shopName === '' ? [] : band(4)),
  ]);
  const pairs = (given: readonly (readonly [string, string])[]) => given.filter(([, value]) => value !== '');
  const address = job.address.map((line, at) => [at === 0 ? 'Address' : '', line] as const);
  const left = pairs([['Job', job.job], ['Customer', job.customer], ['Attention', job.attention], ...address]);
  const right = pairs([
    ['Our number', job.ourNumber],
    ['Date', job.date],
    ['Valid for', job.validFor],
    ['Prepared by', job.preparedBy],
  ]);
  for (let at = 0; at < Math.max(left.length, right.length); at++) {
    const [label = '', value = ''] = left[at] ?? [];
    const [rightLabel = '', rightValue = ''] = right[at] ?? [];
    const cell = (said: string, style: Cell['style'], wrap: boolean) => (said === '' ? null : text(said, style, wrap));
    rows.push([
      cell(label, 'note', false),
      cell(value, 'text', false),
      null,
      cell(rightLabel, 'note', false),
      cell(rightValue, 'text', true),
    ]);
  }
  rows.push([]);
  return rows;
}

/** The rest of a band over all columns. */
function band(cells: number, style: Cell['style'] = 'group'): Cell[] {
  return Array.from({ length: cells }, () => ({ value: null, style }));
}

function lineRow(
  { mark, quantity, words, unitPrice, amount }: ProposalLine,
  live: LiveProposal | null,
  at: number,
): Row {
  const follows = (formula: string | undefined) => (formula === undefined ? {} : { formula });
  return [
    text(mark),
    { ...count(quantity), ...follows(live?.quantity(at)) },
    text(words),
    unitPrice === null ? null : { ...money(unitPrice), ...follows(live?.unitPrice(at)) },
    { ...money(amount), ...follows(live?.amount(at)) },
  ];
}

function addSums(
  rows: Row[],
  { subtotal, charges, total }: Proposal,
  amounts: string,
  live: LiveProposal | null,
): void {
  const sum = (label: string, value: number, range: string): Row => [
    ...band(2, 'total'),
    text(label, 'total'),
    ...band(1, 'total'),
    // Amounts are whole cents; adding them may leave a rounding error in the last binary digit.
    { value, formula: `ROUND(SUM(${range}),2)`, style: 'total', format: MONEY },
  ];
  const first = rows.length + 2;
  const lines = live
    ? live.charges(LETTERS.Amount, first)
    : charges.map((charge) => ({ text: text(charge.text), amount: money(charge.amount) }));
  if (lines.length === 0) {
    rows.push(sum('Total', total, amounts));
    return;
  }
  rows.push(sum('Subtotal', subtotal, amounts));
  for (const line of lines) rows.push([null, null, line.text, null, line.amount]);
  rows.push(sum('Total', total, `${LETTERS.Amount}${first - 1}:${LETTERS.Amount}${rows.length}`));
}

function addAlternates(rows: Row[], { lines, alternates }: Proposal, live: LiveProposal | null): void {
  if (alternates.length === 0) return;
  rows.push([], [text('Alternates, not in the total', 'group', false), ...band(4)]);
  alternates.forEach((line, at) =>
    rows.push(lineRow({ ...line, words: `Alternate: ${line.words}` }, live, lines.length + at)),
  );
}

function addDrawings(rows: Row[], drawings: readonly ProposalDrawing[]): Picture[] {
  if (drawings.length === 0) return [];
  rows.push([], [text('Drawings, not to one scale', 'group', false), ...band(4)]);
  const drawn = drawings.map(({ marks, scene }) => ({ caption: captionOf(marks), scene }));
  return inStrips(rows, drawn, DRAWINGS_ACROSS, WIDTHS);
}

/** Marks that a caption has room for; the rest is counted. */
const MOST_IN_CAPTION = 4;

function captionOf(marks: readonly string[]): string {
  const more = marks.length - MOST_IN_CAPTION;
  return marks.slice(0, MOST_IN_CAPTION).join(', ') + (more > 0 ? ` and ${more} more` : '');
}

function addConditions(rows: Row[], { job, weeks, notPriced, extrasNotPriced, unknownAlternates }: Proposal): void {
  const list = (title: string, entries: readonly string[]) => {
    if (entries.length === 0) return;
    rows.push([], [text(title, 'group', false), ...band(4)]);
    for (const entry of entries)
      for (const line of wrapped(`– ${entry}`, TEXT_WIDTH, '   ')) rows.push([text(line, 'text', false)]);
  };
  list('Not priced yet', [
    ...notPriced.map(({ mark, words, needs }) => `${mark === '' ? 'No mark' : mark}: ${words}. ${needs.join(' ')}`),
    ...extrasNotPriced,
    ...unknownAlternates.map((mark) => `Alternate ${mark}: no opening has this mark.`),
  ]);
  list('Included', job.included);
  list('Not included', job.notIncluded);
  list('Assumptions', job.assumptions);
  list('Delivery', [
    ...(job.delivery === '' ? [] : [job.delivery]),
    ...(weeks === null ? [] : [`Lead time: ${leadTimeText(weeks)}.`]),
  ]);
  list('Terms', job.terms);
  rows.push([]);
  for (const line of wrapped(ROUNDING, TEXT_WIDTH, '')) rows.push([text(line, 'note', false)]);
}
