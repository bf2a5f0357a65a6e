import { capital, listed } from '../../schedule/figure';
import type { LineCheck } from './checkLine';
import type { CauseSum, QuoteCheck } from './checkQuote';
import type { ComparedMoney } from './compared';
import { dollars } from '../../quote/money';
import type { SetAside } from '../../quote/quote';

/** Marks named for one cause before the rest is counted. */
const MOST_NAMED = 6;

/** A text that could go into a reply: what was checked, what differs and by how many dollars, what can't be told. */
export function summaryText(check: QuoteCheck): string {
  const { quote, takeoff, counts, causes } = check;
  const lines = [
    `Quote "${quote.name}" against our takeoff: ${many(quote.lines.length, 'line')}, ${many(takeoff.openings.length, 'opening')}.`,
    `${many(counts.agrees, 'line agrees', 'lines agree')}, ${many(counts.differs, 'differs', 'differ')}, ` +
      `${counts["can't tell"]} can't be told.`,
    ...agreeing(check.lines),
    ...asideTexts(quote.setAside),
  ];
  if (causes.length > 0) {
    lines.push('', 'What differs, most money first:', ...causes.map((cause) => `- ${causeText(cause)}`));
  }
  const open = check.lines.filter(({ verdict }) => verdict === "can't tell");
  if (open.length > 0) {
    lines.push('', "What can't be told from the quote:");
    for (const { line, findings } of open.slice(0, MOST_NAMED)) {
      const why = findings.find(({ verdict, notGiven }) => verdict === "can't tell" && !notGiven) ?? findings[0];
      lines.push(
        `- row ${line.row}${line.mark && ` (${line.mark})`}: ${(why?.text ?? '').replace(/^can't tell: /, '')}`,
      );
    }
    if (open.length > MOST_NAMED) lines.push(`- and ${many(open.length - MOST_NAMED, 'more line')}`);
  }
  lines.push('', ...moneyTexts(check.compared));
  return lines.join('\n');
}

/** Lines beside our price for the same openings; charges, which we have none of, for themselves. */
function moneyTexts({ quoted, ours, otherLines, charges, total }: ComparedMoney): string[] {
  const off = quoted - ours;
  const by = Math.abs(off) < 0.005 ? 'the same' : `${dollars(Math.abs(off))} ${off < 0 ? 'less' : 'more'}`;
  return [
    `Lines for openings that both price: quoted ${dollars(quoted)}, ours ${dollars(ours)}: ${by}.`,
    ...(otherLines === 0 ? [] : [`Other lines: ${dollars(otherLines)}.`]),
    ...(charges.length === 0
      ? []
      : [`Charges, not compared: ${charges.map(({ charge, amount }) => `${charge} ${dollars(amount)}`).join(', ')}.`]),
    `Total as quoted: ${dollars(total)}.`,
  ];
}

/** "Compared and agreeing: 12 lines in quantity, length and price; 1 line in price." Most lines first. */
function agreeing(lines: readonly LineCheck[]): string[] {
  const groups = new Map<string, number>();
  for (const { verdict, agreesIn } of lines) {
    if (verdict === 'agrees') groups.set(listed(agreesIn), (groups.get(listed(agreesIn)) ?? 0) + 1);
  }
  const said = [...groups]
    .sort(([, one], [, other]) => other - one)
    .map(([figures, count]) => `${many(count, 'line')} in ${figures}`);
  return said.length === 0 ? [] : [`Compared and agreeing: ${said.join('; ')}.`];
}

/**
 * `Column "Finish": not compared.` A sentence for each thing that was done with columns, those with unread figures first. Only
 * of columns that are understood some may be left to a number.
 */
export function asideTexts(columns: readonly SetAside[]): string[] {
  const groups = new Map<string, string[]>();
  for (const { name, done } of [...columns].sort((one, other) => Number(other.unread) - Number(one.unread)))
    groups.set(done, [...(groups.get(done) ?? []), name]);
  return [...groups].map(([done, names]) => {
    const isKnown = !columns.some((one) => one.done === done && !one.understood);
    const most = isKnown ? names.slice(0, MOST_NAMED) : names;
    const rest = names.length - most.length;
    return `${capital(listed(rest > 0 ? [...most, `${rest} more`] : most))}: ${done}.`;
  });
}

/** "Chord, not arc: W3 (row 6); $41.20 too little." */
export function causeText({ cause, where, dollars: off, stake }: CauseSum): string {
  const rest = where.length - MOST_NAMED;
  const named = where.slice(0, MOST_NAMED).join(', ') + (rest > 0 ? ` and ${many(rest, 'more', 'more')}` : '');
  const money =
    off === null
      ? `no difference in price to be told${stake > 0 ? `, ${dollars(stake)} hangs on it` : ''}`
      : Math.abs(off) < 0.005
        ? 'no difference in money'
        : `${dollars(Math.abs(off))} ${off < 0 ? 'too little' : 'too much'}`;
  return `${capital(cause)}: ${named}; ${money}.`;
}

function many(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}
