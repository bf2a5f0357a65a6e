import { reasonOf } from '../rules/verdict';
import { capital, listed } from '../../schedule/figure';
import { byStake } from './stakes';
import type { LineCheck } from './checkLine';
import type { CauseSum, QuoteCheck } from './checkQuote';
import type { ComparedMoney } from './compared';
import { correctionText, lineName } from './correction';
import { dollars } from '../../quote/money';
import type { Quote, SetAside } from '../../quote/quote';
import type { SumCheck } from './sums';

/** Notes of the quote that are shown before the rest is counted. */
const MOST_NOTES = 20;
/** Marks named for one cause before the rest is counted. */
const MOST_NAMED = 6;

/**
 * A text that could go into a reply: what has to be known first, what was checked, what differs by cause and by line, quoted beside
 * right, what isn't quoted, what can't be told, and the money.
 */
export function summaryText(check: QuoteCheck): string {
  const { quote, takeoff, counts, causes, lines, sums, notQuoted } = check;
  const { openings } = takeoff;
  const said = [
    ...check.atTop,
    `Quote "${quote.name}" against our takeoff: ${many(quote.lines.length, 'line')}, ${many(openings.length, 'opening')}.`,
    `${many(counts.agrees, 'line agrees', 'lines agree')}, ${many(counts.differs, 'differs', 'differ')}, ` +
      `${counts["can't tell"]} can't be told.`,
    ...totalTexts(check),
    ...agreeing(lines),
    ...asideTexts(quote.setAside),
  ];
  const sorted = byStake(lines);
  const part = (title: string, texts: readonly string[]) => {
    if (texts.length > 0) said.push('', title, ...texts.map((text) => `- ${text}`));
  };
  part('What differs, most money first:', causes.map(causeText));
  part(
    'Line by line, quoted and right:',
    sorted.filter(({ verdict }) => verdict === 'differs').map((one) => correctionText(one, openings)),
  );
  part(
    'Sums and charges:',
    sums.filter(({ finding }) => finding.verdict !== 'agrees').map((sum) => sumText(sum)),
  );
  const missing = [...notQuoted].sort((one, other) => other.finding.stake - one.finding.stake);
  part(
    'Openings without a line:',
    missing.filter(({ extra }) => extra === null).map(({ finding }) => `${capital(finding.text)}.`),
  );
  part(
    'Extras without a line:',
    missing.filter(({ extra }) => extra !== null).map(({ finding }) => `${capital(finding.text)}.`),
  );
  part(
    "What can't be told from the quote:",
    sorted
      .filter(({ verdict }) => verdict === "can't tell")
      .map((one) => `${lineName(one, openings)}: ${ended(openText(one))}`),
  );
  part('Rows that are no line, charge or sum:', passedOverTexts(quote));
  said.push('', ...moneyTexts(check.compared));
  return said.join('\n');
}

/** The total beside what it should be, and the money that only hangs on lines. */
export function totalTexts({ compared: { total }, corrected, stakes, stated: own, notQuoted }: QuoteCheck): string[] {
  const { off, omitted, hanging } = stakes;
  const stated = own === null ? 'Its lines and charges come to' : 'Total as quoted';
  const by =
    off === null || Math.abs(off) < 0.005 ? '' : ` (${dollars(Math.abs(off))} ${off < 0 ? 'too little' : 'too much'})`;
  const right =
    corrected.total === null
      ? "what it should be can't be told, as not every amount is known"
      : `corrected, at the prices it quotes: ${dollars(corrected.total)}${by}`;
  return [
    `${stated}: ${dollars(total)}; ${right}.`,
    ...(omitted > 0
      ? [
          `Not in it: ${notQuoted.some(({ extra }) => extra !== null) ? 'openings and extras' : 'openings'} not quoted, at our price ${dollars(omitted)}.`,
        ]
      : []),
    ...(hanging.lines === 0
      ? []
      : [
          `Not counted as off, but it may change with a figure that is wrong or can't be told: ${many(hanging.lines, 'line')}, ${dollars(hanging.amount)}.`,
        ]),
  ];
}

/** Rows below the headings that have words but are nothing that is compared: a note may still hold something. */
function passedOverTexts({ passedOver, headingRow, declined }: Quote): string[] {
  const named = new Set(declined.map(({ row }) => row));
  const notes = passedOver.filter(({ row, why }) => row > headingRow && why.includes('note') && !named.has(row));
  const rest = notes.length - MOST_NOTES;
  return [
    ...notes.slice(0, MOST_NOTES).map(({ row, text }) => `row ${row}: ${ended(text)}`),
    ...(rest > 0 ? [`and ${many(rest, 'more row', 'more rows')}.`] : []),
  ];
}

/** Why a line can't be told, without those words. */
function openText({ findings }: LineCheck): string {
  const why = findings.find(({ verdict, notGiven }) => verdict === "can't tell" && !notGiven) ?? findings[0];
  return reasonOf(why?.text ?? '');
}

function sumText({ item, finding }: SumCheck): string {
  return `row ${item.row}: ${ended(reasonOf(finding.text))}`;
}

function ended(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** Lines beside our price for the same openings; charges, which we have none of, for themselves. */
function moneyTexts({ quoted, ours, otherLines, charges }: ComparedMoney): string[] {
  const off = quoted - ours;
  const by = Math.abs(off) < 0.005 ? 'the same' : `${dollars(Math.abs(off))} ${off < 0 ? 'less' : 'more'}`;
  const none = quoted === 0 && ours === 0;
  return [
    none
      ? 'No line with an amount is for an opening that the takeoff prices.'
      : `Lines for openings that both price: quoted ${dollars(quoted)}, ours ${dollars(ours)}: ${by}.`,
    ...(otherLines === 0 ? [] : [`Other lines: ${dollars(otherLines)}.`]),
    ...chargesText(
      'Charges held against what they are of',
      charges.filter(({ checked }) => checked),
    ),
    ...chargesText(
      'Charges, not compared',
      charges.filter(({ checked }) => !checked),
    ),
  ];
}

function chargesText(title: string, charges: ComparedMoney['charges']): string[] {
  const said = charges.map(({ charge, amount }) => `${charge} ${dollars(amount)}`);
  return said.length === 0 ? [] : [`${title}: ${said.join(', ')}.`];
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
function asideTexts(columns: readonly SetAside[]): string[] {
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
function causeText({ cause, where, dollars: off, stake }: CauseSum): string {
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
