import { HEAD_SHAPES, type HeadShape } from '../../head/head';
import { ARCS, EDGE, HALF_SPAN, headIs } from './formulas';
import {
  ALONG,
  anotherRise,
  arcMiter,
  arcRadius,
  BEYOND_CROWN,
  bisector,
  CUT_ARC,
  ellipse,
  endGain,
  fitted,
  fourCentered,
  half,
  HAS_FLAT,
  highTop,
  legTop,
  NO_TUDOR,
  NOT_HALF_SPAN,
  NOT_SPAN,
  oneSidedRadius,
  slopeMiter,
  slopeTop,
  TUDOR,
} from './headFormulas';
import { HIGH_LEG_OF_QUARTER_ELLIPSE } from './highLeg';
import { its } from './keys';
import type { PlainHead, PlainStraights } from './plainHead';

const PLUMB_LEG = { miter: '0', headMiter: '0', top: '0' };
/** Leg and slope that rises over `run` are cut alike. */
const slopeLeg = (run: string) => ({ miter: slopeMiter(run), headMiter: slopeMiter(run), top: slopeTop(run) });
const MITERED_45 = `IF(${its.stops}="mitered",45,"")`;
const NO_STRAIGHTS: PlainStraights = { count: '0', long: '0', level: '0' };
const ONE_ARC = { fails: null, haunch: null, highLegTop: null, straights: NO_STRAIGHTS, joints: '0' };
const STRAIGHT_PIECES = { crown: null, haunch: null };
/** So many straight pieces alike, which are all of the head. */
const alike = (count: number): PlainStraights => ({
  ...NO_STRAIGHTS,
  count: String(count),
  long: count === 1 ? its['long point'] : `${its['long point']}/${count}`,
});

/** Arcs that stand for an ellipse: their radii and angles are constants. */
const FITTED_CROWN = { radius: fitted(1, 1), angle: fitted(1, 2), finished: its.angle, count: '1' };
const FITTED_HAUNCH = {
  radius: fitted(2, 1),
  angle: fitted(2, 2),
  finished: its['haunch angle'],
  count: '2',
};

/** A shape that is left out doesn't compile. */
// prettier-ignore
export const PLAIN_HEADS: Readonly<Record<HeadShape, PlainHead>> = {
  segmental: {
    ...ONE_ARC,
    length: (s, h, d, ends) => {
      const radius = arcRadius(s, h);
      const level = `2*ATAN2(${radius}-${h},SQRT((${d}+${h})*(2*${radius}+${d}-${h})))`;
      const legs = `2*ATAN2((${half(s)}-${h})*SQRT((${half(s)}+${h})^2+4*${h}*${d})/(2*${h}),${half(s)}+${d})`;
      return `(${radius}+${d})*IF(${ends}="legs",${legs},IF(${ends}="level",${level},4*ATAN(2*${h}/${s})))`;
    },
    misfit: `${its.rise}<=0`,
    crown: { radius: `ARCH.RADIUS(${its.span},${its.rise})`, angle: `ARCH.ANGLE(${its.span},${its.rise})`, finished: CUT_ARC, count: '1' },
    leg: { miter: `ARCH.MITER(${its.span},${its.rise},${its.face},${its.reveal})`, headMiter: arcMiter(HALF_SPAN), top: `MAX(${legTop(HALF_SPAN, its.reveal)},${legTop(HALF_SPAN, EDGE)})` },
  },
  'half round': {
    ...ONE_ARC,
    length: (s, _h, d) => `PI()*(${half(s)}+${d})`,
    misfit: NOT_HALF_SPAN,
    crown: { radius: HALF_SPAN, angle: '180', finished: CUT_ARC, count: '1' },
    leg: PLUMB_LEG,
  },
  'quarter round': {
    ...ONE_ARC,
    length: (s, _h, d, ends) => `(${s}+${d})*(PI()/2+IF(${ends}="legs",ATAN2(SQRT(${s}*(${s}+2*${d})),${d}),0))`,
    misfit: null,
    fails: anotherRise(its.span),
    crown: { radius: its.span, angle: '90', finished: CUT_ARC, count: '1' },
    leg: PLUMB_LEG,
    highLegTop: highTop(its.span, '0'),
  },
  round: {
    ...ONE_ARC,
    length: (s, _h, d) => `2*PI()*(${half(s)}+${d})`,
    misfit: null,
    fails: anotherRise(its.span),
    crown: { radius: HALF_SPAN, angle: '360', finished: '360', count: '1' },
    leg: PLUMB_LEG,
  },
  elliptical: {
    ...ONE_ARC,
    length: (s, h, d) => `${ellipse(half(s), h)}/64+PI()*${d}`,
    misfit: `NOT(AND(${its.rise}>0,${NOT_HALF_SPAN}))`,
    crown: FITTED_CROWN,
    haunch: FITTED_HAUNCH,
    leg: PLUMB_LEG,
    joints: `${ARCS}-1`,
  },
  'three-centered': {
    ...ONE_ARC,
    length: (s, h, d) => {
      const { haunch, crown } = bisector(s, h);
      const turn = `ATAN2(${half(s)}-${haunch},${crown}-${h})`;
      return `2*(${haunch}*${turn}+${crown}*(PI()/2-${turn}))+PI()*${d}`;
    },
    misfit: `NOT(AND(${its.rise}>0,${its.rise}<${its.span}/2,${NOT_HALF_SPAN}))`,
    crown: { radius: bisector(its.span, its.rise).crown, angle: `180-2*${its['haunch angle']}`, finished: its.angle, count: '1' },
    haunch: { radius: bisector(its.span, its.rise).haunch, angle: `DEGREES(ATAN2(${HALF_SPAN}-${its['haunch radius']},${its.radius}-${its.rise}))`, finished: its['haunch angle'], count: '2' },
    leg: PLUMB_LEG,
    joints: '2',
  },
  pointed: {
    ...ONE_ARC,
    length: (s, h, d) => {
      const radius = `((${half(s)}^2+${h}^2)/${s})`;
      return `2*(${radius}+${d})*ATAN2(${radius}-${half(s)},SQRT((${d}+${half(s)})*(2*${radius}+${d}-${half(s)})))`;
    },
    misfit: `NOT(AND(${its.rise}>${its.span}/2,${NOT_HALF_SPAN}))`,
    crown: { radius: `(${HALF_SPAN}^2+${its.rise}^2)/${its.span}`, angle: `DEGREES(ATAN2(${its.radius}-${HALF_SPAN},${its.rise}))`, finished: `${CUT_ARC}/2`, count: '2' },
    leg: PLUMB_LEG,
    joints: '1',
  },
  straight: {
    ...STRAIGHT_PIECES,
    length: (s, _h, d, ends) => `${s}+IF(${ends}="square",0,2*${d})`,
    misfit: null,
    fails: anotherRise('0'),
    // Whatever its ends are called, they are its own.
    leg: { miter: MITERED_45, headMiter: MITERED_45, top: `IF(${its.stops}="over legs",${its.reveal},${EDGE})` },
    highLegTop: null,
    straights: alike(1),
    joints: '0',
  },
  'radius corners': {
    ...ONE_ARC,
    length: (s, h, d) => `${s}-2*${h}+PI()*(${h}+${d})`,
    misfit: `NOT(AND(${its.rise}>0,${its.rise}<=${its.span}/2*1.000000001))`,
    crown: { radius: its.rise, angle: '90', finished: its.angle, count: '2' },
    leg: PLUMB_LEG,
    straights: { ...NO_STRAIGHTS, count: `IF(${HAS_FLAT},1,0)`, long: `IF(${HAS_FLAT},${its.span}-2*${its.rise},0)` },
    joints: `IF(${HAS_FLAT},2,1)`,
  },
  'full ellipse': {
    ...ONE_ARC,
    length: (s, h, d) => `${ellipse(half(s), half(h))}/32+2*PI()*${d}`,
    misfit: `NOT(AND(${its.rise}>0,${NOT_SPAN}))`,
    crown: { ...FITTED_CROWN, count: '2' },
    haunch: { ...FITTED_HAUNCH, count: `IF(${ARCS}>3,4,2)` },
    leg: PLUMB_LEG,
    joints: `2*(${ARCS}-1)`,
  },
  'half segmental': {
    ...ONE_ARC,
    length: (s, h, d, ends) => {
      const radius = oneSidedRadius(s, h);
      const level = `ATAN2(${radius}-${h},SQRT((${d}+${h})*(2*${radius}+${d}-${h})))`;
      const low = `ATAN2((${s}-${h})*SQRT((${s}+${h})^2+4*${h}*${d})/(2*${h}),${s}+${d})`;
      const high = `ATAN2(SQRT(${radius}*(${radius}+2*${d})),${d})`;
      return `(${radius}+${d})*IF(${ends}="legs",${low}+${high},IF(${ends}="level",${level},2*ATAN(${h}/${s})))`;
    },
    misfit: `NOT(AND(${its.rise}>0,${its.rise}<=${its.span}*1.000000001))`,
    crown: { radius: oneSidedRadius(its.span, its.rise), angle: `DEGREES(2*ATAN(${its.rise}/${its.span}))`, finished: CUT_ARC, count: '1' },
    leg: { miter: `ARCH.MITER(2*${its.span},${its.rise},${its.face},${its.reveal})`, headMiter: arcMiter(its.span), top: legTop(its.span, EDGE) },
    highLegTop: highTop(oneSidedRadius(its.span, its.rise), `${oneSidedRadius(its.span, its.rise)}-${its.rise}`),
  },
  'quarter ellipse': {
    ...ONE_ARC,
    // Up to the jamb line; what runs on to a high leg is added where it is worked out.
    length: (s, h, d) => `${ellipse(s, h)}/128+PI()/2*${d}`,
    misfit: `NOT(AND(${its.rise}>0,${NOT_SPAN}))`,
    crown: { ...FITTED_CROWN, finished: `${its.angle}+${BEYOND_CROWN}` },
    haunch: { ...FITTED_HAUNCH, count: '1' },
    leg: PLUMB_LEG,
    highLegTop: HIGH_LEG_OF_QUARTER_ELLIPSE,
    joints: `(${ARCS}-1)/2`,
  },
  'four-centered': {
    ...ONE_ARC,
    length: (s, h, d, _ends, given) => {
      const { haunch, crown, upper } = fourCentered(s, h, given);
      return `2*((${haunch}+${d})*PI()/3+(${crown}+${d})*(${upper(d)}))`;
    },
    misfit: `NOT(AND(${its.rise}>0,${its.rise}<${its.span}/SQRT(3)))`,
    fails: NO_TUDOR,
    crown: { radius: TUDOR.crown, angle: `DEGREES(${TUDOR.upper('0')})`, finished: `DEGREES(${TUDOR.upper(EDGE)})`, count: '2' },
    haunch: { radius: TUDOR.haunch, angle: '60', finished: its['haunch angle'], count: '2' },
    leg: PLUMB_LEG,
    joints: '3',
  },
  gable: {
    ...STRAIGHT_PIECES,
    length: (s, h, d, ends) => {
      const side = `SQRT(${half(s)}^2+${h}^2)`;
      return `2*(${side}+${d}*(${endGain(ends, side, h, half(s))}+${h}/${half(s)}))`;
    },
    misfit: `${its.rise}<=0`,
    fails: null,
    leg: slopeLeg(HALF_SPAN),
    highLegTop: null,
    straights: alike(2),
    joints: '1',
  },
  'clipped corners': {
    ...STRAIGHT_PIECES,
    length: (s, h, d, ends, given) => {
      const along = `IF(${given}="",${h},${given})`;
      const side = `SQRT((${along})^2+${h}^2)`;
      const corner = `(${side}-${along})/${h}`;
      return `2*(${side}+${d}*(${endGain(ends, side, h, along)}+${corner}))+${s}-2*${along}+2*${d}*${corner}`;
    },
    misfit: `${its.rise}<=0`,
    fails: `${ALONG}>=${its.span}/2*0.999999999`,
    leg: slopeLeg(ALONG),
    highLegTop: null,
    straights: {
      count: '2',
      long: `(${its['long point']}-${its.flatLong})/2`,
      level: `${its.span}-2*${ALONG}+2*${EDGE}*(SQRT(${ALONG}^2+${its.rise}^2)-${ALONG})/${its.rise}`,
    },
    joints: '2',
  },
  shed: {
    ...STRAIGHT_PIECES,
    length: (s, h, d, ends) => {
      const side = `SQRT(${s}^2+${h}^2)`;
      return `${side}+${d}*(${endGain(ends, side, h, s)}+IF(${ends}="legs",(${side}+${h})/${s},0))`;
    },
    misfit: `${its.rise}<=0`,
    fails: null,
    leg: slopeLeg(its.span),
    highLegTop: `${its.rise}+${slopeTop(its.span, '+')}`,
    straights: alike(1),
    joints: '0',
  },
  octagon: {
    ...STRAIGHT_PIECES,
    length: (s, _h, d) => `8*(${s}+2*${d})*(SQRT(2)-1)`,
    misfit: null,
    fails: anotherRise(its.span),
    leg: PLUMB_LEG,
    highLegTop: null,
    straights: alike(8),
    joints: '8',
  },
};

/** A formula that depends on the head, `otherwise` for those that have none; heads alike stand together. */
export function perHead(of: (head: PlainHead) => string | null, otherwise = '""'): string {
  const alike = new Map<string, HeadShape[]>();
  for (const head of HEAD_SHAPES) {
    const formula = of(PLAIN_HEADS[head]);
    if (formula !== null && formula !== otherwise) alike.set(formula, [...(alike.get(formula) ?? []), head]);
  }
  return [...alike].reduceRight((rest, [formula, heads]) => `IF(${headIs(...heads)},${formula},${rest})`, otherwise);
}
