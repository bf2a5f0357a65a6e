import { jobMinimum } from '../src/job/minimum';
import type { Job } from '../src/job/fields';
import { notPricedYet } from '../src/extras';
import { notSetSentence } from '../src/notSet';
import { rowRanges } from '../src/schedule/figure';
import type { Reading } from '../src/schedule/opening';
import type { BoardNeeds } from '../src/takeoff/boards';
import { allExtras, extrasTotal } from '../src/takeoff/extras';
import { costKinds } from '../src/takeoff/costKinds';
import type { Takeoff } from '../src/takeoff/takeoff';

/** The table a person reads, as wide as a terminal. */
export function takeoffTable(taken: Takeoff, job: Job): string {
  const { openings, totals } = taken;
  const extras = allExtras(taken);
  const rows = openings.map(({ opening, known, curve, cost }) => [
    String(opening.row),
    opening.mark.slice(0, 12),
    known.quantity === null ? '' : String(known.quantity),
    known.head ?? '',
    figure(known.span, 3),
    figure(curve?.length, 3),
    figure(cost?.boardFeet, 1),
    figure(cost?.runMinutes, 1),
    figure(cost?.price, 2),
  ]);
  rows.push([
    '',
    '',
    String(totals.heads),
    'total',
    '',
    '',
    figure(totals.boardFeet, 1),
    figure(totals.runMinutes, 1),
    figure(totals.price, 2),
  ]);
  if (extras.length > 0) {
    const count = extras.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
    rows.push(['', '', String(count), 'extras', '', '', '', '', figure(extrasTotal(extras), 2) || 'not priced']);
  }
  const minimum = jobMinimum(taken, job);
  if (minimum !== null && minimum.short > 0) {
    if (minimum.otherLines !== 0) rows.push(['', '', '', 'other lines', '', '', '', '', figure(minimum.otherLines, 2)]);
    rows.push(['', '', '', 'minimum charge, short', '', '', '', '', figure(minimum.short, 2)]);
    rows.push(['', '', '', 'job in all', '', '', '', '', figure(minimum.total, 2)]);
  }
  const headings = ['Row', 'Mark', 'Qty', 'Head', 'Span', 'Length', 'Bd ft', 'Run min', 'Price'];
  const table = [headings, ...rows];
  const widths = headings.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  const toTheLeft = new Set([1, 3]);
  return table
    .map((row) =>
      row.map((cell, at) => (toTheLeft.has(at) ? cell.padEnd(widths[at]!) : cell.padStart(widths[at]!))).join('  '),
    )
    .map((line) => line.trimEnd() + '\n')
    .join('');
}

/** What the prices of the openings pay for, each kind with its share; empty where nothing is priced. */
export function costLines(taken: Takeoff): string[] {
  const kinds = costKinds(taken).filter(({ money }) => Math.abs(money) >= 0.005);
  const all = kinds.reduce((sum, { money }) => sum + money, 0);
  const widest = Math.max(...kinds.map(({ name }) => name.length));
  const figures = kinds.map(({ money }) => money.toFixed(2));
  const longest = Math.max(...figures.map(({ length }) => length));
  return kinds.map(({ name, money }, at) => {
    const share = `${((100 * money) / all).toFixed(1)} %`;
    return `${name.padEnd(widest)}  ${figures[at]!.padStart(longest)}  ${share.padStart(6)}`;
  });
}

/** What a person should look at, a line each; empty where there is nothing. */
export function attentionLines(taken: Takeoff, reading: Reading, boards: BoardNeeds): string[] {
  const { openings } = taken;
  const { remarks, passedOver, unread, questions, rowRemarks } = reading;
  const ofList = questions.filter(({ field }) => field === undefined);
  const asked = new Set(ofList.map(({ text }) => text));
  const notSet = notSetSentence(taken.standards);
  const isAsked = (sentence: string) => [...asked].some((text) => sentence.includes(text));
  return [
    ...remarks,
    ...unread.map(({ what, why }) => `Not read: ${what} (${why}).`),
    ...ofList.map(
      ({ id, rows, text, choices }) =>
        `Question ${JSON.stringify(id)}, row${rows.length === 1 ? '' : 's'} ${rowRanges(rows)}: ${text} ${choices.map((choice) => `"${choice}"`).join(' or ')}`,
    ),
    ...openings.flatMap(({ opening, needs, attention, sideUnsaid }) =>
      [...needs.filter((sentence) => !isAsked(sentence)), ...attention, ...sideUnsaid].map(
        (sentence) => `Row ${opening.row} (${opening.mark}): ${sentence}`,
      ),
    ),
    ...[
      ...new Set(allExtras(taken).flatMap(({ kind, unitPrice }) => (unitPrice === null ? [notPricedYet(kind)] : []))),
    ],
    ...rowRemarks.map(({ row, text }) => `Row ${row} remarks: ${text}`),
    ...boards.problems,
    ...(notSet === '' ? [] : [notSet]),
    ...passedOver
      .filter(({ why }) => !PLAIN_ROWS.has(why))
      .map(({ row, why, text }) => `Row ${row} is not an opening (${why}): ${text}`),
    ...plainRows(passedOver),
  ];
}

/** Rows that every list has and that nobody needs to look at: they are counted up in one line. */
const PLAIN_ROWS: ReadonlySet<string> = new Set(['headings', 'units', 'repeated headings', 'blank']);

function plainRows(passedOver: Reading['passedOver']): string[] {
  const kinds = [...PLAIN_ROWS].flatMap((kind) => {
    const rows = passedOver.flatMap(({ row, why }) => (why === kind ? [row] : []));
    return rows.length === 0 ? [] : [`row${rows.length === 1 ? '' : 's'} ${rowRanges(rows)} (${kind})`];
  });
  return kinds.length === 0 ? [] : [`Also passed over: ${kinds.join('; ')}.`];
}

function figure(value: number | null | undefined, digits: number): string {
  return value === null || value === undefined ? '' : value.toFixed(digits);
}
