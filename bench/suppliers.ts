/**
 * Quotes and wordings that somebody wrote without having read the reader: `npm run bench -- suppliers`. A table by layout and one by
 * kind of mistake for the 40 quotes; then 222 wordings, each as the heading of a column or the words of a row in a quote that is right.
 */
import { readFileSync } from 'node:fs';
import { checkTable, type QuoteCheck } from '../src/check/quote';
import type { QuoteKey } from '../src/quote/meanings';
import type { CellValue } from '../src/schedule/opening';
import type { Takeoff } from '../src/takeoff/takeoff';
import { ANSWERS, checkOf, isSum, quotedTakeoff, type Made } from '../tests/check/suppliersQuotes';
import { Tally } from '../tests/check/made/tally';
import { valueOf } from '../tests/value';

interface Wording {
  readonly text: string;
  readonly kind: string;
  readonly plain: boolean;
}

async function quotes(taken: Takeoff): Promise<void> {
  const [layouts, kinds] = [new Tally(), new Tally()];
  for (const [file, { wording, lines }] of Object.entries(ANSWERS)) {
    const check = await checkOf(file, taken);
    const layout = `${wording}: ${file.replace(/^q\d+-|\.csv$/g, '').replace(/-odd$/, '')}`;
    for (const made of lines) {
      const found = foundIn(check, made);
      if (made.verdict === 'right') layouts.add(layout, `right ${found.verdict}`);
      if (made.verdict !== 'planted') continue;
      layouts.add(layout, `wrong ${found.verdict}`);
      kinds.add(made.kind ?? '', found.verdict);
      if (found.verdict === 'differs') kinds.add(made.kind ?? '', found.named ? 'named' : 'not named');
    }
  }
  console.log('Rows by layout:');
  layouts.print([
    'right agrees',
    'right differs',
    "right can't tell",
    'wrong differs',
    'wrong agrees',
    "wrong can't tell",
  ]);
  console.log('Planted mistakes by kind:');
  kinds.print(['differs', 'agrees', "can't tell", 'named', 'not named']);
}

/** What is said of a row; a mistake is named where some finding has a name for it. */
function foundIn(check: QuoteCheck, made: Made): { verdict: string; named: boolean } {
  const { row } = made;
  if (isSum(made)) {
    const sum = check.sums.find(({ item }) => item.row === row)?.finding;
    return { verdict: sum?.verdict ?? 'no such row', named: (sum?.mistakes.length ?? 0) > 0 };
  }
  const one = check.lines.find((each) => each.line.row === row);
  const wrong = one?.findings.filter(({ verdict }) => verdict === 'differs') ?? [];
  const named = wrong.some(({ mistakes, about }) => mistakes.length > 0 || (about !== 'length' && about !== 'radius'));
  return { verdict: one?.verdict ?? 'not a line', named };
}

/** Columns of a right quote: the heading under test stands over one of them. */
const COLUMNS = ['mark', 'quantity', 'length each', 'unit price', 'extension'] as const;
const PLAIN: Readonly<Record<string, string>> = {
  mark: 'Mark',
  quantity: 'Qty',
  'length each': 'Length',
  'unit price': 'Unit price',
  extension: 'Amount',
};

/** A kind of heading → what it may be read as. */
const MEANT: Readonly<Record<string, readonly (QuoteKey | null)[]>> = {
  mark: ['mark'],
  'line number': ['aside', null],
  quantity: ['quantity'],
  description: ['description', null],
  head: ['head', 'description', null],
  span: ['span'],
  rise: ['rise'],
  radius: ['radius', 'openingRadius', 'outsideRadius'],
  'casing width': ['face'],
  thickness: ['thickness'],
  'length each': ['length'],
  'length of all': ['totalLength', 'length'],
  'rate per foot': ['footPrice'],
  'unit price': ['unitPrice'],
  extension: ['extension'],
  'list price': ['listPrice', null],
  'discount of the line': ['discount'],
  'unit of measure': ['measure'],
  remarks: ['description', 'aside', null],
};

const KINDS: Readonly<Record<string, string>> = { allowance: 'other charge', charge: 'other charge' };

function wordings(taken: Takeoff): void {
  const { wordings: all } = JSON.parse(readFileSync('tests/check/suppliers/wordings.json', 'utf8')) as {
    wordings: Wording[];
  };
  const tally = new Tally();
  for (const { text, kind, plain } of all) {
    if (kind === 'description') continue;
    const [of, what] = kind.split(': ') as [string, string];
    const check = valueOf(checkTable({ name: 'quote', firstRow: 1, rows: quoteWith(of, what, text, taken) }, taken));
    const read = of === 'heading' ? headingRead(check, what) : rowRead(check, what);
    const accused = check.lines.filter(
      ({ verdict, part, line }) => verdict === 'differs' && part === 'head' && line.mark !== '',
    ).length;
    tally.add(`${plain ? 'plain' : 'odd'}: ${kind}`, read ? 'read' : 'not read');
    for (let at = 0; at < accused; at++) tally.add(`${plain ? 'plain' : 'odd'}: ${kind}`, 'accused');
    if (!read || accused > 0)
      console.log(
        `  ${kind}: ${JSON.stringify(text)}${read ? '' : ' not read'}${accused > 0 ? ` accuses ${accused} lines` : ''}`,
      );
  }
  console.log('Wordings by kind:');
  tally.print(['read', 'not read', 'accused']);
}

function figureOf(what: string, row: Takeoff['openings'][number], at: number, heading = ''): CellValue {
  const { own, known, cost } = row;
  const feet = own!.curve.length / 12;
  switch (what) {
    case 'mark':
      return row.opening.mark;
    case 'line number':
      return at + 1;
    case 'quantity':
      return known.quantity;
    case 'description':
      return 'Curved casing';
    case 'head':
      return known.head;
    case 'span':
      return known.span;
    case 'rise':
      return own!.curve.head.rise;
    case 'radius':
      return own!.crown && !own!.haunch ? own!.crown.ring[/outside/i.test(heading) ? 'outside' : 'inside'] : null;
    case 'casing width':
      return known.face;
    case 'thickness':
      return known.thickness;
    case 'length of all':
      return Math.round(feet * known.quantity! * 100) / 100;
    case 'rate per foot':
      return 20;
    case 'unit price':
      return cost!.unitPrice;
    case 'list price':
      return Math.round((cost!.unitPrice / 0.9) * 100) / 100;
    case 'discount of the line':
      return '10%';
    case 'unit of measure':
      return 'ea';
    case 'remarks':
      return 'as drawn';
    default:
      return /feet/i.test(heading) ? Math.round(feet * 100) / 100 : Math.round(own!.curve.length * 16) / 16;
  }
}

function quoteWith(of: string, what: string, text: string, taken: Takeoff): CellValue[][] {
  const openings = taken.openings.filter(({ own }) => own !== null);
  const byFoot = of === 'heading' && (what === 'rate per foot' || what === 'length of all');
  const own = of === 'heading' && !(COLUMNS as readonly string[]).includes(what) ? [what] : [];
  const columns = [...COLUMNS.filter((one) => !(byFoot && (one === 'unit price' || one === 'length each'))), ...own];
  if (byFoot) columns.splice(2, 0, ...(what === 'rate per foot' ? ['length of all'] : ['rate per foot']));
  const name = (one: string) =>
    of === 'heading' && one === what
      ? text
      : one === 'length of all'
        ? 'Total LF'
        : one === 'rate per foot'
          ? 'Price per LF'
          : PLAIN[one]!;
  const amounts = openings.map((row, at) => {
    if (byFoot) return Math.round(Number(figureOf('length of all', row, at)) * 20 * 100) / 100;
    return Math.round(row.cost!.unitPrice * row.known.quantity! * 100) / 100;
  });
  const rows: CellValue[][] = openings.map((row, at) =>
    columns.map((one) => (one === 'extension' ? amounts[at]! : figureOf(one, row, at, text))),
  );
  if (of === 'line')
    rows.push(
      ...rowOf(
        what,
        text,
        columns.length,
        amounts.reduce((sum, one) => sum + one, 0),
        rows,
      ),
    );
  return [columns.map(name), ...rows];
}

/** The row under test, below the goods. */
function rowOf(what: string, text: string, width: number, goods: number, rows: CellValue[][]): CellValue[][] {
  const row = (words: string, amount: number | null) => [words, ...Array<null>(width - 2).fill(null), amount];
  const cents = (amount: number) => Math.round(amount * 100) / 100;
  switch (what) {
    case 'subtotal':
    case 'total':
      return [row(text, cents(goods))];
    case 'tax':
      return [row('Subtotal', cents(goods)), row(text, cents(goods * (/8\.25/.test(text) ? 0.0825 : 0.06)))];
    case 'discount': {
      const rate = /10%/.test(text) ? 0.1 : /2-1\/2/.test(text) ? 0.025 : /-2%/.test(text) ? 0.02 : 0.05;
      return [row('Subtotal', cents(goods)), row(text, -cents(goods * rate))];
    }
    case 'not quoted': {
      const [mark] = rows.pop()!;
      return [[mark!, ...Array<null>(width - 2).fill(null), text]];
    }
    case 'alternate':
      return [row('Total', cents(goods)), row(text, /deduct|credit/i.test(text) ? -85 : 85)];
    default:
      return [row('Subtotal', cents(goods)), row(text, 65), row('Total', cents(goods + 65))];
  }
}

function headingRead({ quote }: QuoteCheck, what: string): boolean {
  const at = (COLUMNS as readonly string[]).includes(what) ? COLUMNS.indexOf(what as (typeof COLUMNS)[number]) : -1;
  const byFoot = what === 'rate per foot' || what === 'length of all';
  const column = byFoot ? quote.meaning.length - 1 : at >= 0 ? at : quote.meaning.length - 1;
  const own = quote.setAside.find(({ index }) => index === column);
  if (what === 'list price' && own?.unread === false) return true;
  return MEANT[what]!.includes(quote.meaning[column] ?? null) && !(own?.unread ?? false);
}

function rowRead(check: QuoteCheck, what: string): boolean {
  if (what === 'not quoted') return check.quote.declined.length === 1;
  if (what === 'alternate') return check.lines.some(({ part }) => part === 'alternate');
  const sum = [...check.sums]
    .reverse()
    .find(
      ({ item }) =>
        !(item.kind === 'sum' && /^(?:Sub)?[tT]otal$/.test(item.text) && what !== 'subtotal' && what !== 'total'),
    );
  if (sum === undefined || sum.finding.verdict === 'differs') return false;
  const { item } = sum;
  if (item.kind === 'sum') return item.sum === what || what === 'total' || what === 'subtotal';
  return item.charge === (KINDS[what] ?? what) || what === 'allowance';
}

export async function run(): Promise<void> {
  const taken = await quotedTakeoff();
  await quotes(taken);
  wordings(taken);
}
