import { capital } from '../../schedule/figure';
import type { RingKind } from '../../takeoff/curve';
import type { RingPlan } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { byHead, HALF_SPAN, MULTI_CENTERED } from './formulas';

/**
 * The rings an opening may need, each with a group of columns: the crown's, which is the only one of most heads, or the haunches'.
 * The formulas are templates as in `column.ts`.
 */
export interface RingGroup {
  readonly name: string;
  readonly headingStart: string;
  /** A figure's column key: `blankWidth`, or `haunchBlankWidth`. */
  readonly key: (name: string) => string;
  readonly ring: (row: OpeningTakeoff) => RingKind | null;
  readonly plan: (row: OpeningTakeoff) => RingPlan | null;
  /** Whether the cells of a row hold formulas at all. */
  readonly written: (row: OpeningTakeoff) => boolean;
  readonly radius: string;
  readonly angle: string;
  readonly blankAngle: string;
  readonly count: string;
}

const DIAGONAL = `SQRT(${HALF_SPAN}^2+{rise}^2)`;
/** A figure of the arcs that best fit an ellipse: row 1 is a haunch, row 2 the crown. */
const ellipse = (row: 1 | 2, column: 1 | 2) => `INDEX(ARCH.HEADARCS({head},{span},{rise}),${row},${column})`;

export const CROWN: RingGroup = {
  name: 'Ring',
  headingStart: '',
  key: (name) => name,
  ring: (row) => row.curve?.crown ?? null,
  plan: (row) => row.own?.crown ?? null,
  written: () => true,
  radius: byHead([
    ['segmental', 'ARCH.RADIUS({span},{rise})'],
    ['half round', HALF_SPAN],
    ['quarter round', '{span}'],
    ['round', HALF_SPAN],
    ['pointed', `(${HALF_SPAN}^2+{rise}^2)/{span}`],
    ['elliptical', ellipse(2, 1)],
    ['three-centered', `(${DIAGONAL}^2+(${HALF_SPAN}-{rise})*${DIAGONAL})/(2*{rise})`],
  ]),
  angle: byHead([
    ['segmental', 'ARCH.ANGLE({span},{rise})'],
    ['half round', '180'],
    ['quarter round', '90'],
    ['round', '360'],
    ['pointed', `DEGREES(ATAN2({radius}-${HALF_SPAN},{rise}))`],
    ['elliptical', ellipse(2, 2)],
    ['three-centered', '180-2*{haunchAngle}'],
  ]),
  blankAngle:
    'IF({head}="round",360,MIN(360,' +
    `IF(${MULTI_CENTERED},{angle},DEGREES(MAX({insideLength}/{insideRadius},{length}/{outsideRadius}))/IF({head}="pointed",2,1))` +
    '+DEGREES(2*Shop_end_allowance/{insideRadius})))',
  count: 'IF({head}="pointed",2,1)',
};

/** Haunch cells are written only where the head has haunches: most have none. */
export function mayHaveHaunch(row: OpeningTakeoff): boolean {
  const { head } = row.known;
  return head === 'elliptical' || head === 'three-centered' || head === null;
}

export const HAUNCH: RingGroup = {
  name: 'Haunch rings',
  headingStart: 'Haunch: ',
  key: (name) => 'haunch' + capital(name),
  ring: (row) => row.curve?.haunch ?? null,
  plan: (row) => row.own?.haunch ?? null,
  written: mayHaveHaunch,
  radius: byHead([
    ['elliptical', ellipse(1, 1)],
    ['three-centered', `(${DIAGONAL}^2-(${HALF_SPAN}-{rise})*${DIAGONAL})/{span}`],
  ]),
  angle: `IF({head}="elliptical",${ellipse(1, 2)},DEGREES(ATAN2(${HALF_SPAN}-{haunchRadius},{radius}-{rise})))`,
  blankAngle: 'MIN(360,{haunchAngle}+DEGREES(2*Shop_end_allowance/{haunchInsideRadius}))',
  count: '2',
};
