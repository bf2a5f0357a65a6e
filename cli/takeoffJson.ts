import { jobMinimum, type JobMinimum } from '../src/job/minimum';
import type { Job } from '../src/job/fields';
import { notPricedYet } from '../src/extras';
import { addUp, roundTo } from '../src/rounding';
import type { Reading, Schedule } from '../src/schedule/opening';
import { settingsNotSet, type SettingKey, type Standards } from '../src/standards';
import { SAWING_RULES, type BoardNeeds } from '../src/takeoff/boards';
import { boardsToBuy } from '../src/takeoff/boardsToBuy';
import type { Curve } from '../src/takeoff/curve';
import { factorsOf } from '../src/takeoff/factors';
import { numberOf, numberOfRing, type FigureName } from '../src/takeoff/figures';
import { moneyFigure, type MoneyFigureName } from '../src/takeoff/moneyFigures';
import type { SetupPlan } from '../src/takeoff/setups';
import { allExtras, extrasOf, extrasTotal, type ExtraLine } from '../src/takeoff/extras';
import type { OpeningTakeoff, Takeoff } from '../src/takeoff/takeoff';
import { partLength } from '../src/takeoff/woodParts';

type OwnName = Exclude<FigureName, `haunch ${string}`>;

/** What each figure is called in `--json`; null: it isn't printed, or otherwise. A figure that isn't here doesn't compile. */
const OWN_NAMES = {
  radius: 'radius',
  'inside radius': 'insideRadius',
  'outside radius': 'outsideRadius',
  angle: 'angle',
  'inside length': 'insideLength',
  'center length': null,
  'long point': 'length',
  'long point text': null,
  'leg miter': null,
  'head miter': null,
  'blank angle': null,
  segments: 'segments',
  'blank width': 'blankWidth',
  'blank length': 'blankLength',
  'board width': null,
  blank: null,
  splices: 'splices',
  'board feet': 'boardFeet',
  'center cuts': 'cutsPerInch',
  cuts: null,
  grade: null,
  passes: null,
  'run minutes': 'runMinutes',
  stock: null,
  wood: null,
  knife: null,
  'set-up': null,
  needs: null,
  'look at': null,
  labor: 'labor',
} as const satisfies Readonly<Record<OwnName, string | null>>;
const MONEY_NAMES = {
  'shared wood': null,
  'wood factor': null,
  material: 'material',
  share: 'share',
  cost: null,
  'unit price': 'unitPrice',
  price: 'price',
} as const satisfies Readonly<Record<MoneyFigureName, string | null>>;

type FigureInJson = Exclude<(typeof OWN_NAMES)[OwnName] | (typeof MONEY_NAMES)[MoneyFigureName], null>;

function figuresJson(row: OpeningTakeoff, { unit }: Standards) {
  const own = Object.entries(OWN_NAMES).map(([name, as]) => [as, numberOf(name as OwnName, row, unit)] as const);
  const money = Object.entries(MONEY_NAMES).map(
    ([name, as]) => [as, moneyFigure(name as MoneyFigureName).value(row) ?? null] as const,
  );
  const printed = [...own, ...money].filter(([as, value]) => as !== null && (as !== 'splices' || (value ?? 0) > 0));
  return Object.fromEntries(printed) as Readonly<Record<FigureInJson, number | null>>;
}

/** One opening as `--json` prints it; what can't be computed is null, and `needs` says why. */
export function openingJson(row: OpeningTakeoff, standards: Standards) {
  const extras = extrasOf(row, standards);
  const { curve, known, opening } = row;
  const attention = [...row.attention, ...row.sideUnsaid];
  return {
    no: row.no,
    row: opening.row,
    mark: opening.mark,
    place: opening.place,
    remarks: opening.remarks,
    quantity: known.quantity,
    head: known.head,
    span: known.span,
    rise: known.rise ?? curve?.head.rise ?? null,
    reveal: known.reveal,
    face: known.face,
    thickness: known.thickness,
    species: known.species,
    ends: known.ends,
    sides: known.sides,
    ...(known.leg ? { leg: known.leg } : {}),
    ...(known.otherLeg === null ? {} : { otherLeg: known.otherLeg }),
    ...(known.arcs === null ? {} : { arcs: known.arcs }),
    ...(known.haunch === null ? {} : { haunch: known.haunch }),
    ...figuresJson(row, standards),
    needs: row.needs,
    ...(extras.length > 0 ? { extras: extras.map(extraJson) } : {}),
    ...(attention.length > 0 ? { attention } : {}),
    ...(opening.notes.length > 0 ? { notes: opening.notes } : {}),
    ...piecesJson(row),
  };
}

/** Extras of an opening; `needs` says what has no price yet. */
function extraJson({ kind, each, quantity, unitPrice, price }: ExtraLine) {
  return { extra: kind, each, quantity, unitPrice, price, needs: unitPrice === null ? [notPricedYet(kind)] : [] };
}

/** The totals, what extras come to where there are any, and what is short of the job's minimum charge where it has one. */
export function totalsJson(taken: Takeoff, job: Job) {
  const lines = allExtras(taken);
  const minimum = jobMinimum(taken, job);
  const extras = { extras: extrasTotal(lines), extrasNotPriced: lines.filter(({ price }) => price === null).length };
  return {
    ...taken.totals,
    ...(lines.length === 0 ? {} : extras),
    ...(minimum === null ? {} : { minimum: minimumJson(minimum) }),
  };
}

/** With the job's other lines where it has any: by them the total of the job is more than that of its openings and extras. */
function minimumJson({ charge, short, otherLines, total }: JobMinimum) {
  return { charge, short, ...(otherLines === 0 ? {} : { otherLines }), jobTotal: total };
}

/**
 * The constant-radius pieces of a head that has several, left to right; radius is the opening's own, length the long point's.
 * Straight pieces of a head stand by themselves, with both edges and the degrees off square of their cuts.
 */
function piecesJson(row: OpeningTakeoff) {
  const { curve } = row;
  if (curve === null) return {};
  const straights = curve.straights.length > 0 ? { straights: curve.straights } : {};
  return { ...arcsJson(row, curve), ...straights };
}

function arcsJson(row: OpeningTakeoff, curve: Curve) {
  if (curve.arcs.length < 2) return {};
  return {
    pieces: curve.arcs.map((arc, at) => {
      const kind = curve.rings.findIndex(({ arcs }) => arcs.includes(at));
      return {
        radius: numberOfRing('radius', row, kind),
        angle: numberOfRing('angle', row, kind),
        length: arc.length,
        segments: numberOfRing('segments', row, kind),
        blankWidth: numberOfRing('blank width', row, kind),
        blankLength: numberOfRing('blank length', row, kind),
      };
    }),
  };
}

/** The machine's settings that are not set yet, by key, with the neutral figure that stands in for each. */
export function notSetJson(standards: Standards) {
  return Object.fromEntries(settingsNotSet(standards).map(({ key }) => [key, standards[key as SettingKey]]));
}

/** The set-ups in the order to run them; guides that can't be made say why in `needs`. */
export function setupsJson({ setups }: SetupPlan) {
  return setups.map(({ guides, ...setup }) => ({
    ...setup,
    guides: guides?.ok ? guides.value : null,
    needs: guides && !guides.ok ? [guides.message] : [],
  }));
}

/**
 * The boards to buy: a plan for each wood, over every width and length on sale. A cut's length is that of board it takes by
 * itself; segments in one row, every second one flipped, take less.
 */
export function stockJson(needs: BoardNeeds, taken: Takeoff) {
  const { plans, problems } = needs;
  const factors = factorsOf(taken, needs);
  const buys = boardsToBuy(needs, taken.standards);
  return {
    boards: buys.reduce((sum, { bought }) => sum + bought, 0),
    cost: addUp(plans.map(({ cost }) => cost)),
    buy: buys.map(
      ({ plan: { species, thickness }, board: { quarters, width, length, onHand }, price, bought, cost }) => ({
        species,
        thickness,
        quarters,
        width,
        length,
        onHand,
        price,
        bought,
        cost,
      }),
    ),
    plans: plans.map(({ parts, sale, boards, ...plan }) => ({
      ...plan,
      boards: boards.reduce((sum, { count }) => sum + count, 0),
      factor: factors(`${plan.species} ${roundTo(4, plan.thickness)}`),
      rule: SAWING_RULES.join(' '),
      pieces: parts.map(({ part, extra }) => ({ for: part.for, count: part.count, extra })),
      plan: boards.map(({ count, board, sections, left }) => ({
        count,
        stock: sale[board]!.length,
        width: sale[board]!.width,
        sections: sections.map(({ at, length, lanes }) => ({
          at,
          length,
          lanes: lanes.map((lane) => ({
            at: lane.at,
            width: lane.width,
            rows: lane.rows.map((row) => ({
              at: row.at,
              length: row.length,
              width: row.width,
              pieces: row.pieces.map((piece) => ({ ...piece, length: partLength(parts[piece.part]!.part.shape) })),
            })),
            left: lane.left,
          })),
        })),
        left,
      })),
    })),
    problems,
  };
}

/** What a list did not say by itself: questions, rows passed over, what was not read, remarks of rows and of the file. */
export function readingJson(reading: Reading) {
  return {
    questions: reading.questions,
    passedOver: reading.passedOver,
    unread: reading.unread,
    remarks: reading.rowRemarks,
    fileRemarks: reading.remarks,
    unusedColumns: unusedColumns(reading),
  };
}

/** The headings of a schedule's columns that nothing was read from. */
function unusedColumns({ headings, meaning }: Schedule): string[] {
  return headings.filter((heading, at) => heading !== '' && (meaning[at] ?? null) === null);
}
