import {
  DELIVERY_TEXT,
  finishText,
  minimumText,
  percentText,
  SETUPS_TEXT,
  shownLength,
  taxText,
} from '../../job/charges';
import { jobCellName, type JobKey } from '../../job/fields';
import { isAlternateOf, type Offered, type Proposal } from '../../job/proposal';
import { EXTRA_KINDS, EXTRA_PRICE, type ExtraKind } from '../../extras';
import { toCents } from '../../rounding';
import { cellName } from '../../standards';
import { allExtras, extraPrice } from '../../takeoff/extras';
import { ROW_FIELDS } from '../../takeoff/row';
import type { Takeoff } from '../../takeoff/takeoff';
import { columnLetters } from '../address';
import { headingCell } from '../columnHeads';
import { columnFormat } from '../format';
import { asText } from '../planBlock';
import { quote } from '../../formulaText';
import type { Cell } from '../sheet';
import { extrasRanges, ofNumber } from '../takeoff/extras';
import { takeoffBlock, takeoffRange } from '../takeoff/places';
import type { LiveProposal } from './sheet';

const MONEY = columnFormat('money', 'in');
/** The working columns beside the printed ones: column G on. */
const FIRST = 6;
const HEADINGS = [
  'Line',
  'No.',
  'Quantity',
  'Unit price',
  'Amount',
  'Length',
  'Set-ups',
  'As written',
  'State',
] as const;
const [LINE, NO, QUANTITY, UNIT, AMOUNT, LENGTH, SETUPS, WRITTEN, STATE] = HEADINGS.map((_heading, at) =>
  columnLetters(FIRST + at),
) as [string, string, string, string, string, string, string, string, string];
const INPUTS = FIRST + HEADINGS.length;
/** Settings of the shop that stand in for a blank input; the words name what they were. */
const DEFAULTS = ['Shop_ends', 'Shop_face', 'Shop_thickness', 'Shop_species', 'Shop_profile'] as const;
/** Rules of the job that the charges were written by. */
const RULES = [
  'finishRate',
  'discount',
  'minimum',
  'deliveryCharge',
  'taxRate',
  'setups',
  'taxOn',
  'linesBy',
] as const satisfies readonly JobKey[];

type Row = (Cell | null)[];

/**
 * The proposal beside its takeoff: each opening's quantity and price by its number, from the Takeoff's own cells, whatever the
 * order of rows; lines and charges follow from these. Words are as written, and a state says where the takeoff has moved on.
 */
export function liveProposal(proposal: Proposal, takeoff: Takeoff): LiveProposal {
  const { job, unit } = proposal;
  const lines = [...proposal.lines, ...proposal.alternates];
  const lineOf = new Map<number, number>();
  lines.forEach((line, at) => line.openings.forEach(({ no }) => lineOf.set(no, at + 1)));
  const openings: readonly Offered[] = [
    ...lines.flatMap((line): readonly Offered[] => line.openings),
    ...proposal.notPriced,
  ];
  const base = proposal.lines.length;
  // The rows stand where the table's heading stands: known only when the letter's head is written.
  let first = 0;
  const range = (letter: string) => `$${letter}$${first}:$${letter}$${first + Math.max(1, openings.length) - 1}`;
  const sumOf = (letter: string, line: number) => `SUMIF(${range(LINE)},${line},${range(letter)})`;
  const baseSum = (letter: string) => `SUMIF(${range(LINE)},"<=${base}",${range(letter)})`;
  return {
    startAt: (heading) => (first = heading + 1),
    quantity: (line) => sumOf(QUANTITY, line + 1),
    unitPrice: (line) => `INDEX(${range(UNIT)},MATCH(${line + 1},${range(LINE)},0))`,
    amount: (line) => `ROUND(${sumOf(AMOUNT, line + 1)},2)`,
    extra: (kind) => extraFormulas(kind, proposal, takeoff),
    charges: (amounts, firstCharge) => {
      const text = (value: string, formula?: string): Cell => ({
        value,
        style: 'text',
        wrap: true,
        ...(formula ? { formula } : { format: '@' }),
      });
      const amount = (value: number, formula?: string): Cell => ({
        value,
        style: 'figure',
        format: MONEY,
        ...(formula ? { formula } : {}),
      });
      const rows: { text: Cell; amount: Cell }[] = [];
      const above = () => `SUM($${amounts}$${firstCharge - 1}:$${amounts}$${firstCharge + rows.length - 1})`;
      const shown = (kind: string) => proposal.charges.find((charge) => charge.kind === kind)?.amount ?? 0;
      if (job.setups !== 'in the prices')
        rows.push({ text: text(SETUPS_TEXT), amount: amount(shown('setups'), `ROUND(${baseSum(SETUPS)},2)`) });
      if (job.finishRate > 0) {
        const total = openings.reduce(
          (sum, { no, length }) => sum + ((lineOf.get(no) ?? base + 1) <= base ? length : 0),
          0,
        );
        const length = `ROUND(${baseSum(LENGTH)},1)`;
        const [before, behind] = finishText(job, unit, '\u0000').split('\u0000') as [string, string];
        rows.push({
          text: text(
            finishText(job, unit, shownLength(total).toFixed(1)),
            `${quote(before)}&FIXED(${length},1,TRUE)&${quote(behind)}`,
          ),
          amount: amount(shown('finish'), `ROUND(${length}*${job.finishRate},2)`),
        });
      }
      if (job.discount > 0)
        rows.push({
          text: text(`Discount ${percentText(job.discount)}`),
          amount: amount(shown('discount'), `-ROUND(${above()}*${job.discount},2)`),
        });
      if (job.minimum > 0)
        rows.push({
          text: text(minimumText(job)),
          amount: amount(shown('minimum'), `MAX(0,ROUND(${job.minimum}-${above()},2))`),
        });
      const taxed = above();
      if (job.deliveryCharge > 0) rows.push({ text: text(DELIVERY_TEXT), amount: amount(job.deliveryCharge) });
      if (job.taxRate > 0)
        rows.push({
          text: text(taxText(job)),
          amount: amount(shown('tax'), `ROUND(${job.taxOn === 'everything' ? above() : taxed}*${job.taxRate},2)`),
        });
      return rows;
    },
    beside: () => {
      const rows: Row[] = [
        [stateOfAll(range(STATE), range(NO), takeoff, proposal)],
        HEADINGS.map((heading) => headingCell(heading)),
      ];
      openings.forEach((opening, at) =>
        rows.push(
          openingRow(opening, lineOf.get(opening.no) ?? 0, first + at, takeoff, job.setups !== 'in the prices'),
        ),
      );
      if (openings.length === 0)
        rows.push([
          { value: 0, style: 'figure' },
          { value: 0, style: 'figure' },
        ]);
      return rows;
    },
    besideWidths: [6, 6, 9, 11, 12, 9, 10, 10, 24, ...ROW_FIELDS.map(() => 8)],
  };
}

/** What the extras of a kind come to now, those of alternates left out: by the openings' numbers, as they stand below the Takeoff. */
function extraFormulas(kind: ExtraKind, { job }: Proposal, takeoff: Takeoff) {
  const { kinds, numbers, quantities } = extrasRanges(takeoff);
  const isAlternate = isAlternateOf(job);
  const apart = allExtras(takeoff).filter((extra) => extra.kind === kind && isAlternate(extra.mark));
  const without = apart.map(
    ({ no }) => `-SUMIFS(${quantities},${kinds},${quote(kind)},${numbers},${quote(ofNumber(no))})`,
  );
  return {
    quantity: `SUMIF(${kinds},${quote(kind)},${quantities})${without.join('')}`,
    unitPrice: `ROUND(${cellName(EXTRA_PRICE[kind])},2)`,
  };
}

/** One opening in working cells: what the lines add up, and whether it is still what the words say. */
function openingRow(
  { no, quantity, unitPrice, length, setups, legs: [left, right] }: Offered,
  line: number,
  row: number,
  { openings, standards }: Takeoff,
  apart: boolean,
): Row {
  const count = openings.length;
  const place = `MATCH($${NO}${row},${takeoffRange('no', count)},0)`;
  // Not IFERROR: a figure in error, as where the add-in is missing, is no opening that is gone.
  const there = (shown: string, gone: string) => `IF(ISNUMBER(${place}),${shown},${gone})`;
  const of = (key: Parameters<typeof takeoffRange>[0]) => `INDEX(${takeoffRange(key, count)},${place})`;
  const ours = openings.find((opening) => opening.no === no)!;
  const given = ROW_FIELDS.map((field) => ours.cells[field]);
  const agreed = `N(${of('priceAgreed')})>0`;
  const price = apart
    ? `IF(${of('unitPrice')}="","",IF(${agreed},${of('priceAgreed')},MAX(ROUND(Shop_piece_minimum,2),ROUND((${of('material')}+${of('labor')})/${of('quantity')}*Shop_sell,2))))`
    : of('unitPrice');
  // Which legs there are follows from head and ends as written; the state says where these are others now.
  const legs = [
    ...(left ? [`+N(${of('leg')})`] : []),
    ...(right ? [`+IF(${of('otherLeg')}="",N(${of('leg')}),N(${of('otherLeg')}))`] : []),
  ].join('');
  const isPriced = unitPrice !== null && quantity !== null;
  const unpriced = `$${UNIT}${row}=""`;
  const figure = (value: Cell['value'], formula: string, format?: string): Cell => ({
    value,
    formula,
    style: 'figure',
    ...(format ? { format } : {}),
  });
  const inputs = `${columnLetters(INPUTS)}${row}:${columnLetters(INPUTS + ROW_FIELDS.length - 1)}${row}`;
  const now = `TEXTJOIN("|",FALSE,INDEX(${takeoffBlock('main', count)},${place},0),INDEX(${takeoffBlock('more', count)},${place},0))`;
  const missing = line === 0 ? `IF(${unpriced},"","priced now")` : `IF(${unpriced},"not priced now","")`;
  return [
    { value: line, style: 'fixed', format: '0' },
    { value: no, style: 'fixed', format: '0' },
    figure(isPriced ? quantity : '', there(`IF(${unpriced},"",${of('quantity')})`, '""'), '0'),
    figure(isPriced ? unitPrice : '', there(price, '""'), MONEY),
    figure(
      isPriced ? toCents(unitPrice * quantity) : 0,
      `IF(${unpriced},0,ROUND($${QUANTITY}${row}*$${UNIT}${row},2))`,
      MONEY,
    ),
    figure(
      isPriced ? length : 0,
      `IF(${unpriced},0,$${QUANTITY}${row}*IF(N(${of('sides')})=2,2,1)*(${of('length')}${legs})/${standards.unit === 'in' ? 12 : 1000})`,
      '0.0',
    ),
    apart
      ? figure(
          isPriced ? setups : 0,
          `IF(${unpriced},0,IF(${agreed},0,VLOOKUP($${NO}${row},Shares,2,FALSE)*Shop_sell))`,
          MONEY,
        )
      : { value: 0, style: 'fixed', format: MONEY },
    figure(given.map(asText).join('|'), `TEXTJOIN("|",FALSE,${inputs})`),
    {
      ...figure('', there(`IF(EXACT($${WRITTEN}${row},${now}),${missing},"changed since")`, '"not in the Takeoff"')),
      style: 'attention',
    },
    ...given.map((value): Cell | null => (value === null ? null : { value, style: 'fixed' })),
  ];
}

/** Whether the whole proposal is as the takeoff is, in one sentence above the working cells. */
function stateOfAll(states: string, numbers: string, { openings, standards }: Takeoff, { job }: Proposal): Cell {
  // A state in error is an error here, where COUNTIF would pass over it.
  const moved = `SUMPRODUCT(--(${states}<>""))`;
  const absent = `SUMPRODUCT(--(COUNTIF(${numbers},${takeoffRange('no', openings.length)})=0))`;
  const held = {
    Shop_ends: standards.ends,
    Shop_face: standards.face,
    Shop_thickness: standards.thickness,
    Shop_species: standards.species,
    Shop_profile: standards.profile,
  };
  const is = (value: string | number) => (typeof value === 'number' ? String(value) : quote(value));
  const shop = DEFAULTS.map((name) => `(${name}<>${is(held[name])})`).join('+');
  // A kind that has a price now and had none has no line yet, and the other way round.
  const kinds = EXTRA_KINDS.filter((kind) =>
    openings.some(({ opening }) => opening.extras?.some((one) => one.kind === kind)),
  );
  const extras = kinds.map(
    (kind) =>
      `((ROUND(${cellName(EXTRA_PRICE[kind])},2)>0)<>${extraPrice(kind, standards) === null ? 'FALSE' : 'TRUE'})`,
  );
  const rules = RULES.map((key) => `(${jobCellName(key)}<>${is(job[key])})`).join('+');
  return {
    value: 'Every line follows the Takeoff.',
    formula:
      `IF(${moved}+${absent}>0,"Write the proposal again: "&${moved}+${absent}&" openings are others than the words say.",` +
      `IF(IFERROR(${[shop, ...extras, rules].join('+')},1)>0,"Write the proposal again: Standards or the job's rules are others now.","Every line follows the Takeoff."))`,
    style: 'attention',
  };
}
