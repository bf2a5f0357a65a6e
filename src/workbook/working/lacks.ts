import { ENDS, HEAD_SHAPES, type HeadShape } from '../../head/head';
import { deviationOf, type ArcCount } from '../../head/leastArcs';
import { shapesWhere } from '../../head/shapes';
import { sentences } from '../../takeoff/figures';
import { NEEDS, notInStock, riseNeed, tooThin } from '../../takeoff/inputs';
import { quote } from '../../formulaText';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { ARCS, byHead, EDGE, FITTED_HEADS, HAUNCHED_HEADS, headIs, SPECIES_IN_STOCK } from './formulas';
import { perHead, PLAIN_HEADS } from './heads';
import { its } from './keys';
import { grainLimit, inRing, mayHaveHaunch, RING_GROUPS } from './ringGroups';

const positive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}>0,FALSE)`;
const notPositive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}<=0,TRUE)`;
const notListed = (cell: string, list: readonly string[]) =>
  `ISNA(MATCH(${cell},{${list.map((item) => `"${item}"`).join(',')}},0))`;

export const when = (condition: string, sentence: string) =>
  `IF(${condition},${quote(`${sentences([sentence])} `)},"")`;

/** A sentence of need, with what stands in the cell, or the doubt that the cell says itself: as `takeoff/inputs.ts` says it. */
function need(condition: string, cell: string, sentence: string): string {
  const got = `IF(${cell}="",".","; got "&IF(ISNUMBER(${cell}),${cell},CHAR(34)&${cell}&CHAR(34))&".")`;
  const said = `IF(LEFT(${cell},1)="?",IF(TRIM(MID(${cell},2,9))="",${quote(sentence)},TRIM(MID(${cell},2,2000))),${quote(sentence.replace(/\.$/, ''))}&${got})`;
  return `IF(${condition},${said}&" ","")`;
}

/** An input that may be left out, and must be right where it is given. */
const optional = (cell: string, wrong: string, sentence: string) =>
  need(`IF(${cell}="",FALSE,IF(ISNUMBER(${cell}),${wrong},TRUE))`, cell, sentence);

/**
 * What the curve lacks: the sentences of `takeoff/inputs.ts` under the same conditions, so that filling in what was missing
 * clears them.
 */
export function lacksShapeFormula(row: OpeningTakeoff): string {
  return mayHaveHaunch(row) ? SHAPE_WITH_HAUNCH : SHAPE_WITHOUT_HAUNCH;
}

/** The arcs that stand for an ellipse hold for the sizes that the row was filled with. */
function fittedToAnother({ known, curve, cells }: OpeningTakeoff): string {
  const { head, span, rise } = known;
  const said = 'The arcs of an ellipse are fitted when the takeoff is filled: fill it again.';
  if (head === null || span === null || rise === null || curve === null || !FITTED_HEADS.includes(head)) {
    return when(headIs(...FITTED_HEADS), said);
  }
  const other = (cell: string, value: number) => `ABS(N(${cell})-${value})>0.000000001*${value}`;
  const changed = [
    `${its.head}<>"${head}"`,
    other(its.span, span),
    other(its.rise, rise),
    `${ARCS}<>${known.arcs ?? 3}`,
  ];
  if (cells.arcs === null || cells.arcs === '') changed.push(...otherCount(head, span, rise, known.arcs ?? 3));
  return when(`IF(${headIs(...FITTED_HEADS)},OR(${changed.join(',')}),FALSE)`, said);
}

/** Whether another number of arcs is the least by the deviation that is allowed now. */
function otherCount(head: HeadShape, span: number, rise: number, arcs: number): string[] {
  const of = (count: number) => deviationOf(head, span, rise, count as ArcCount) ?? 0;
  return [
    ...(arcs < 7 ? [`Shop_deviation<${of(arcs)}`] : []),
    ...(arcs > 3 ? [`Shop_deviation>=${of(arcs - 2)}`] : []),
  ];
}

function missingShape(haunch: boolean): string {
  const riseOf = (head: HeadShape, otherwise: string) => {
    const blank = head === 'half round' ? `${its.rise}<>""` : 'TRUE'; // a half round's rise follows its span
    const wrong = `IF(ISNUMBER(${its.rise}),IF(${positive(its.span)},${PLAIN_HEADS[head].misfit ?? 'FALSE'},FALSE),${blank})`;
    return `IF(${its.head}="${head}",${need(wrong, its.rise, riseNeed(head) ?? '')},${otherwise})`;
  };
  const noRise = need(`IF(${its.rise}="",FALSE,NOT(ISNUMBER(${its.rise})))`, its.rise, NEEDS.rise);
  const parts = [
    ...(haunch ? [] : [when(headIs(...HAUNCHED_HEADS), 'This head has haunches: fill the takeoff again.')]),
    need(notListed(its.head, HEAD_SHAPES), its.head, NEEDS.head),
    need(notListed(its.ends, ENDS), its.ends, NEEDS.ends),
    need(notPositive(its.span), its.span, NEEDS.span),
    HEAD_SHAPES.filter((head) => riseNeed(head) !== null).reduceRight<string>(
      (otherwise, head) => riseOf(head, otherwise),
      noRise,
    ),
    need(`IF(ISNUMBER(${its.reveal}),${its.reveal}<0,TRUE)`, its.reveal, NEEDS.reveal),
    need(notPositive(its.face), its.face, NEEDS.face),
    optional(its.arcs, `ISNA(MATCH(${its.arcs},{3,5,7},0))`, NEEDS.arcs),
    optional(its.haunch, `${its.haunch}<=0`, NEEDS.haunch),
  ];
  return `TRIM(${parts.join('&')})`;
}

const SHAPE_WITH_HAUNCH = missingShape(true);
const SHAPE_WITHOUT_HAUNCH = missingShape(false);

/** What stands in a sentence for the opening's own species and thickness, until the formula puts in the cells. */
const SPECIES = 'SPECIES';
const THICKNESS = 9876.5432;

/** A sentence of the core with the cells put in where it names figures. */
function withFigures(sentence: string): string {
  return quote(`${sentence} `)
    .replace(SPECIES, `"&${its.species}&"`)
    .replace(String(THICKNESS), `"&ROUND(${its.thickness},4)&"`);
}

/** Everything that is missing: the curve's inputs, and the rest. */
export function lacksFormula(): string {
  return LACKS;
}

function lacks(): string {
  const thinner = `IF(${positive(its.thickness)},${its.stockThickness}=0,FALSE)`;
  const isDoubt = `LEFT(${its.species},1)="?"`;
  const species = `IF(AND(${thinner},NOT(${isDoubt})),IF(${SPECIES_IN_STOCK},${withFigures(tooThin(SPECIES, THICKNESS))},${withFigures(notInStock(SPECIES))}),"")`;
  const oddProfile = ['*', '?', '~'].map((sign) => `ISNUMBER(FIND("${sign}",${its.profile}))`).join(',');
  const tooWide = `IF(AND(${its.stockThickness}>0,${positive(its.face)}),${its.widest}<=${its.face}+2*Shop_margin,FALSE)`;
  const outside = (cell: string, least: number, most: number) =>
    `OR(${cell}<${least},${cell}>${most},${cell}<>INT(${cell}))`;
  const parts = [
    need(
      `IF(ISNUMBER(${its.quantity}),OR(${its.quantity}<1,${its.quantity}<>INT(${its.quantity})),TRUE)`,
      its.quantity,
      NEEDS.quantity,
    ),
    need(notPositive(its.thickness), its.thickness, NEEDS.thickness),
    need(`IF(ISNUMBER(${its.leg}),${its.leg}<0,TRUE)`, its.leg, NEEDS.leg),
    optional(its.otherLeg, `${its.otherLeg}<0`, NEEDS.otherLeg),
    optional(its.segmentsWanted, outside(its.segmentsWanted, 1, 200), NEEDS.segmentsWanted),
    need(`IF(ISNUMBER(${its.sides}),${outside(its.sides, 1, 2)},TRUE)`, its.sides, NEEDS.sides),
    need(`OR(${its.profile}="",${oddProfile})`, its.profile, NEEDS.profile),
    need(`OR(${its.species}="",${isDoubt})`, its.species, NEEDS.species),
    species,
    when(tooWide, NEEDS.width),
  ];
  return `TRIM(${its.missingShape}&" "&${parts.join('&')})`;
}

const LACKS = lacks();

/** By how much of the arc cutting its ends level makes a head longer. */
export const LEVEL_ADDS = (() => {
  const length = (head: HeadShape, stops: string) =>
    `ARCH.HEADLENGTH("${head}",${its.span},${its.rise},${EDGE},"${stops}",${its.haunch})`;
  const slanting = shapesWhere(({ plumb, closed }) => !plumb && !closed).filter((head) => head !== 'straight');
  const adds = slanting.map((head) => [head, `${length(head, 'level')}/${length(head, 'radial')}-1`] as const);
  return `IF(${its.stops}<>"level",0,N(${byHead(adds)}))`;
})();

/** Where the core refuses to make a curve of inputs that are all there, with the sentence it had at filling. */
export function curveFailsFormula(row: OpeningTakeoff): string {
  const why = quote(row.curveFailure ?? 'There is no such head: see its rise, haunch and ends.');
  const shapes = [
    `${its.stops}=""`,
    `AND(${its.haunch}<>"",NOT(${headIs(...shapesWhere(({ haunch }) => haunch !== null))}))`,
    perHead((head) => head.fails, 'FALSE'),
  ];
  const fails = `IF(OR(${shapes.join(',')}),TRUE,${LEVEL_ADDS}>Shop_level_most)`;
  const stale = mayHaveHaunch(row) ? fittedToAnother(row) : '""';
  return `IF(${its.lacksShape}<>"","",IF(${fails},${why},TRIM(${stale})))`;
}

/** Where more segments are needed than are asked for: of the first kind of ring that needs more, as the core says it. */
export function blankFailsFormula(row: OpeningTakeoff): string {
  const kinds = RING_GROUPS.filter((group) => group.written(row)).map((group) => {
    const at = inRing(group);
    const fewest = `ARCH.SEGMENTS(${at('inside radius')},${its.face},${at('madeAngle')},${its.widest},Shop_margin,${grainLimit(at)})`;
    const sentence = `"Segments wanted must be at least "&${fewest}&" for the boards and the grain there are; got "&${its.segmentsWanted}&"."`;
    return (otherwise: string) =>
      `IF(N(${at('radius')})=0,${otherwise},IF(${its.segmentsWanted}<${fewest},${sentence},${otherwise}))`;
  });
  const said = kinds.reduceRight((otherwise, kind) => kind(otherwise), '""');
  return `IF(OR(${its.lacks}<>"",${its.segmentsWanted}=""),"",${said})`;
}
