import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { checkQuote, chooseQuoteTable, readQuote } from '../../src/check/quote';
import { BLANK_JOB, type Job } from '../../src/job/fields';
import { proposalFrom } from '../../src/job/offered';
import { readTables } from '../../src/schedule/readTables';
import { defaultStandards, withSettings, type Standards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff, type Takeoff } from '../../src/takeoff/takeoff';
import { proposalDrawings } from '../../src/workbook/proposal/drawings';
import { proposalSheet } from '../../src/workbook/proposal/sheet';
import { writeXlsx } from '../../src/workbook/xlsx';
import { random } from '../random';
import { opening, randomOpenings } from '../takeoff/openings';
import { valueOf } from '../value';
import { exampleSchedule, plannedExample } from '../workbench/example';

const STANDARDS = defaultStandards();
const RULES: Partial<Job> = {
  ...{
    shopName: 'A shop',
    customer: 'A builder',
    date: 'Today',
    taxRate: 0.0625,
    discount: 0.05,
    deliveryCharge: 85,
    finishRate: 1.25,
  },
  ...{
    minimum: 300,
    delivery: '3 weeks',
    leadTime: 'shown',
    terms: ['Discount 5% if paid in 10 days', 'Total due in 30 days'],
  },
  extras: [{ words: 'Straight casing by the foot', quantity: 120.5, unitPrice: 3.25 }],
};

async function example(standards: Standards = STANDARDS): Promise<Takeoff> {
  return plannedExample(await exampleSchedule(standards), standards).taken;
}

const written = (taken: Takeoff, job: Partial<Job>) =>
  valueOf(writeXlsx([proposalSheet(proposalFrom(taken, { ...BLANK_JOB, ...job }))]));

/** What the check of quotes says of a proposal of ours but that it agrees. */
async function findings(taken: Takeoff, job: Partial<Job>): Promise<{ wrong: string[]; open: string[] }> {
  const tables = valueOf(await readTables('proposal.xlsx', written(taken, job)));
  const check = checkQuote(valueOf(readQuote(chooseQuoteTable(tables)!, taken.standards)), taken);
  expect(check.counts.agrees).toBeGreaterThan(0);
  const all = [
    // Lengths and radii are no part of a proposal: a line that gives none is judged by what it gives.
    ...check.lines.flatMap(({ verdict, findings: found }) => (verdict === 'agrees' ? [] : found)),
    ...check.sums.map(({ finding }) => finding),
    ...check.notQuoted.flatMap(({ opening: { cost }, finding }) => (cost === null ? [] : [finding])),
  ];
  const texts = (verdict: string) => all.filter((one) => one.verdict === verdict).map(({ text }) => text);
  return { wrong: texts('differs'), open: texts("can't tell") };
}

describe('the proposal of a takeoff', () => {
  it('adds up to the total of the takeoff where nothing else is charged', async () => {
    const taken = await example();
    const { lines, total, notPriced } = proposalFrom(taken, BLANK_JOB);
    expect(total).toBe(taken.totals.price);
    expect(lines.length + notPriced.length).toBe(taken.openings.length);
  });

  it('comes to the same money, but for rounding of unit prices, with set-ups on a line of their own', async () => {
    const taken = await example();
    const { charges, total } = proposalFrom(taken, { ...BLANK_JOB, setups: 'on a line of their own' });
    expect(charges.map(({ kind }) => kind)).toEqual(['setups']);
    const heads = taken.openings.reduce((sum, { known }) => sum + (known.quantity ?? 0), 0);
    expect(Math.abs(total - taken.totals.price)).toBeLessThan(0.01 * heads + 0.01);
  });

  it('leaves an agreed price as it was agreed, set-ups on a line of their own or not', () => {
    const agreed = opening({ mark: 'A', head: 'half round', span: 36, priceAgreed: 250, quantity: 2 });
    const other = opening({ mark: 'B', head: 'half round', span: 36 });
    const taken = takeoff([agreed, other], STANDARDS);
    const { lines, charges } = proposalFrom(taken, { ...BLANK_JOB, setups: 'on a line of their own' });
    expect([lines[0]!.unitPrice, lines[0]!.amount]).toEqual([250, 500]);
    // What is charged apart is the part of the opening without an agreed price, sold as all else is: 35% over.
    expect(charges[0]!.amount).toBe(Math.round(taken.openings[1]!.cost!.share * 1.35 * 100) / 100);
  });

  it('finishes by the foot of the outside edge, legs and both sides of the wall included', () => {
    const leg = { ends: 'legs', leg: 60, otherLeg: 48, quantity: 2, sides: 2 } as const;
    const taken = takeoff([opening({ head: 'half round', span: 36, ...leg })], STANDARDS);
    const { charges } = proposalFrom(taken, { ...BLANK_JOB, finishRate: 1 });
    // A half round of span 36, reveal 3/16 and face 3-1/2: the outside is π · 21.6875; 2 of 2 sides.
    expect(charges[0]!.amount).toBe(Math.round(((4 * (Math.PI * 21.6875 + 60 + 48)) / 12) * 10) / 10);
  });

  it.each<[string, Partial<Job>]>([
    ['bare', {}],
    ['with every charge and condition', { ...RULES, extras: [] }],
  ])('reads back as a quote without a finding: %s', async (_title, job) => {
    const found = await findings(await example(), job);
    expect(found).toEqual({ wrong: [], open: [] });
  });

  it('reads back without anything wrong where it holds what no takeoff has: other lines, alternates, tax on a part', async () => {
    const { wrong, open } = await findings(await example(), {
      ...RULES,
      taxOn: 'everything but delivery',
      alternates: ['W1'],
    });
    expect(wrong).toEqual([]);
    expect(open.join('\n')).toMatch(/an alternate, beside what the quote comes to/);
  });

  it('reads back without a finding for random openings of every head, in inches and millimeters', async () => {
    for (const unit of ['in', 'mm'] as const) {
      const standards = defaultStandards(unit);
      const taken = planTakeoff(takeoff(randomOpenings(60, random(5), standards), standards), { work: 1e7 }).taken;
      const found = await findings(taken, { ...RULES, extras: [] });
      expect(found).toEqual({ wrong: [], open: [] });
    }
  });
});

describe('the file that goes out', () => {
  /** Settings that no figure of the proposal could be by chance. */
  const standards = valueOf(
    withSettings(STANDARDS, {
      shopRate: 67.89,
      pricingRate: 0.3579,
      knifeGrinding: 123.45,
      guideMaterial: 17.17,
      species: 'Poplar',
    }),
  );

  it('holds nothing of cost, margin or settings: one sheet, no names, no links, no functions of ours', async () => {
    const taken = await example(standards);
    const parts = Object.entries(unzipSync(written(taken, RULES))).map(
      ([name, bytes]) => [name, strFromU8(bytes)] as const,
    );
    expect(parts.map(([name]) => name).sort()).toEqual([
      '[Content_Types].xml',
      '_rels/.rels',
      'xl/_rels/workbook.xml.rels',
      'xl/styles.xml',
      'xl/workbook.xml',
      'xl/worksheets/sheet1.xml',
    ]);
    const all = parts.map(([, text]) => text).join('\n');
    for (const word of [
      'ARCH',
      'Shop_',
      'Job_',
      'Takeoff',
      'Standards',
      'Shares',
      'arkup',
      'argin"',
      'labor',
      'aterial',
      'cost',
      'waste',
    ])
      expect(all.replace('<pageMargins', ''), word).not.toContain(word);
    for (const setting of ['67.89', '0.3579', '35.79', '1.3579', '123.45', '17.17'])
      expect(all, setting).not.toContain(setting);
    const numbers = new Set([...all.matchAll(/<v>([^<]*)<\/v>/g)].map(([, value]) => Number(value)));
    for (const { cost } of taken.openings) {
      if (cost === null) continue;
      for (const own of [cost.cost, cost.material, cost.labor, cost.share, cost.wood]) {
        expect(numbers.has(own)).toBe(false);
        expect(numbers.has(Math.round(own * 100) / 100), String(own)).toBe(false);
      }
    }
  });

  it('holds small drawings by mark where they are wanted, alike openings once, the marks as text and nothing else of the shop', async () => {
    const rows = ['A', '=B', 'C'].map((mark, at) =>
      opening({ mark, head: 'half round', span: at < 2 ? 36 : 48, ends: 'legs', leg: 60 }),
    );
    const taken = takeoff(rows, standards);
    const proposal = proposalFrom(taken, { ...BLANK_JOB, drawings: 'shown', paper: 'A4' });
    const sheet = proposalSheet(proposal, null, proposalDrawings(proposal, taken));
    expect(sheet.pictures!.map(({ caption }) => caption)).toEqual(['A, =B', 'C']);
    const parts = unzipSync(valueOf(writeXlsx([sheet])));
    const drawing = strFromU8(parts['xl/drawings/drawing1.xml']!);
    expect([...drawing.matchAll(/<a:t>([^<]*)/g)].map(([, said]) => said)).toEqual(['A, =B', 'C']);
    // One outline of casing and two of legs each, all within the shape's own frame.
    for (const [, width, height, path] of drawing.matchAll(/<a:path w="(\d+)" h="(\d+)"[^>]*>(.*?)<\/a:path>/g))
      for (const [, x, y] of path!.matchAll(/x="(-?\d+)" y="(-?\d+)"/g)) {
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(x)).toBeLessThanOrEqual(Number(width));
        expect(Number(y)).toBeGreaterThanOrEqual(0);
        expect(Number(y)).toBeLessThanOrEqual(Number(height));
      }
    expect(strFromU8(parts['xl/worksheets/sheet1.xml']!)).toMatch(/paperSize="9"[^]*<drawing r:id="rId3"\/>/);
    expect(strFromU8(parts['xl/worksheets/_rels/sheet1.xml.rels']!)).toContain('Id="rId3"');
    for (const setting of ['67.89', '0.3579', '123.45', '17.17']) expect(drawing).not.toContain(setting);
  });

  it('has amounts as values and sums as formulas over them', async () => {
    const xml = strFromU8(unzipSync(written(await example(), RULES))['xl/worksheets/sheet1.xml']!);
    const formulas = [...xml.matchAll(/<f>([^<]*)<\/f>/g)].map(([, formula]) => formula);
    expect(formulas).toHaveLength(2);
    for (const formula of formulas) expect(formula).toMatch(/^ROUND\(SUM\(E\d+:E\d+\),2\)$/);
  });

  it('writes what people typed as text, never as a formula', () => {
    const nasty = '=HYPERLINK("http://example.com","x")';
    const job = Object.fromEntries(
      ['shopName', 'customer', 'date', 'delivery', 'finishWords'].map((key) => [key, nasty]),
    );
    const lists = Object.fromEntries(
      ['shopLines', 'terms', 'included', 'address'].map((key) => [key, [nasty, '+1+1', '@SUM(A1)']]),
    );
    const taken = takeoff([opening({ mark: '=1+1', head: 'half round', span: 36, profile: '=cmd' })], STANDARDS);
    const sheet = proposalSheet(
      proposalFrom(taken, {
        ...BLANK_JOB,
        ...job,
        ...lists,
        extras: [{ words: nasty, quantity: 1, unitPrice: 1 }],
        finishRate: 1,
      }),
    );
    const cells = sheet.rows.flat().filter((cell) => typeof cell?.value === 'string' && cell.value !== '');
    expect(cells.filter((cell) => cell!.formula !== undefined)).toEqual([]);
    expect(cells.filter((cell) => cell!.format !== '@' && cell!.style !== 'heading')).toEqual([]);
  });
});
