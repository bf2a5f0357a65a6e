import { ATTENTION } from '../../takeoff/attention';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { shapesWhere } from '../../head/shapes';
import { quote } from '../../formulaText';
import { CLOSED_HEADS, FITTED_HEADS, headIs, HIGH_SIDED_HEADS } from './formulas';
import { its } from './keys';
import { LEVEL_ADDS, when } from './lacks';
import {
  inRing,
  isShort,
  RING_GROUPS,
  segmentTooLong,
  SMALLEST_RADIUS,
  tooLargeFormula,
  type InGroup,
} from './ringGroups';
import { STRAIGHT_SHORT, STRAIGHT_TOO_LARGE } from './straight';

/** What is missing, or why the figures fail although nothing is. */
export function needsFormula(row: OpeningTakeoff): string {
  const why = quote(row.failure ?? 'The figures can not be computed from these inputs.');
  const fails = `OR(ISERROR(${its['long point']}),${RING_GROUPS.map((group) => `ISERROR(${inRing(group)('blank length')})`).join(',')})`;
  return `IF(${its.missing}<>"",${its.missing},IF(${fails},${why},""))`;
}

/** The sentences of `takeoff/attention.ts` under the same conditions. */
export function attentionFormula(row: OpeningTakeoff): string {
  const { short, split, large, long, tight, wide, ellipse, finish, legless, unmitered, level, oneLeg, publishedRule } =
    ATTENTION;
  const anyRing = (of: (at: InGroup) => string) => {
    const rings = RING_GROUPS.filter((group) => group.written(row)).map((group) => {
      const at = inRing(group);
      return `IF(N(${at('radius')})>0,${of(at)},FALSE)`;
    });
    return `OR(${rings.join(',')})`;
  };
  const fitted = row.known.head !== null && FITTED_HEADS.includes(row.known.head);
  const sized = [
    when(`OR(${anyRing(isShort)},${STRAIGHT_SHORT})`, short),
    when(`OR(${anyRing((at) => `${at('parts')}=2`)},${its.straightSplices}>0)`, split),
    when(`OR(${anyRing(tooLargeFormula)},${STRAIGHT_TOO_LARGE})`, large),
    when(anyRing(segmentTooLong), long),
  ];
  const curved = [
    when(`${SMALLEST_RADIUS}<Shop_smallest_radius`, tight),
    when(`${its.face}+2*Shop_margin>Shop_widest_face`, wide),
    ...(fitted ? [when(`INDEX(ARCH.HEADARCS(${its.head},${its.span},${its.rise}),1,4)>Shop_deviation`, ellipse)] : []),
  ];
  const stands = `${its.leg}>0,${its.stops}<>"legs",${its.head}<>"straight",NOT(${headIs(...CLOSED_HEADS)})`;
  const noLeg = `IF(${its.head}="straight",${its.ends}="legs",AND(${its.stops}="legs",NOT(${headIs(...CLOSED_HEADS)})))`;
  const plumb = headIs(...shapesWhere((shape) => shape.plumb));
  const always = [
    when(`${its.cutsFewest}<15`, finish),
    when(`${LEVEL_ADDS}>0.25`, level),
    when(`AND(${its.head}="four-centered",${its.haunch}="")`, publishedRule),
    when(`AND(${its.leg}=0,${noLeg})`, legless),
    when(`AND(${stands},${headIs(...HIGH_SIDED_HEADS)})`, oneLeg),
    when(`AND(${stands},NOT(${plumb}))`, unmitered),
  ];
  return `IF(${its.needs}<>"","",TRIM(${sized.join('&')}&IF(${its.radius}="","",${curved.join('&')})&${always.join('&')}))`;
}
