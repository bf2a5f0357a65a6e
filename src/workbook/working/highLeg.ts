import { angleAtLeg, GAUSS } from '../../head/quarterEllipse';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { ofCurve, inGroup, working, type WorkingColumn, type WorkingColumns } from './column';
import { EDGE } from './formulas';
import { its, type HighLegKey } from './keys';

/**
 * Where the parallel curve of a quarter ellipse stands at its high leg: the sine x of the parameter past the crown, which solves
 * a·x + d·b·x/√(a² − (a² − b²)·x²) = d. Taken as x = d/(a + d·b/√(…)) it settles by three digits and more a round.
 */
const ROUNDS = 12;
const NEXT = (x: string, d: string) =>
  `${d}/(${its.span}+${d}*${its.rise}/SQRT(${its.span}^2-(${its.span}^2-${its.rise}^2)*${x}^2))`;

const OFFSETS = { inside: its.reveal, center: `(${its.reveal}+${its.face}/2)`, outside: EDGE } as const;
type Edge = keyof typeof OFFSETS;

function mayBeQuarterEllipse({ known }: OpeningTakeoff): boolean {
  return known.head === null || known.head === 'quarter ellipse';
}

function rounds(d: string): string {
  let x = '0';
  for (let round = 0; round < ROUNDS; round++) x = round === 0 ? NEXT('0', d) : NEXT(`(${x})`, d);
  return x;
}

const atLeg = (edge: Edge, heading: string): WorkingColumn => {
  const formula = ofCurve(`IF(AND(${its.head}="quarter ellipse",${its.stops}="legs"),${rounds(OFFSETS[edge])},"")`);
  return working(heading, 'number', {
    value: (row) => {
      const { curve, known } = row;
      if (!curve || !mayBeQuarterEllipse(row) || curve.legs.length < 2 || curve.miter === null) return null;
      const offset = {
        inside: known.reveal!,
        center: known.reveal! + known.face! / 2,
        outside: known.reveal! + known.face!,
      };
      return Math.sin(angleAtLeg({ a: known.span!, b: known.rise! }, offset[edge]));
    },
    formula: (row, takeoff) => (mayBeQuarterEllipse(row) ? formula(row, takeoff) : null),
  });
};

/** Sines of the parameter where a quarter ellipse meets its high leg, at each edge of the casing. */
export const HIGH_LEG_COLUMNS: WorkingColumns<HighLegKey> = inGroup('Lengths', {
  insideAtLeg: atLeg('inside', 'At the high leg, inside'),
  centerAtLeg: atLeg('center', 'At the high leg, middle'),
  outsideAtLeg: atLeg('outside', 'At the high leg, outside'),
});

const NODES = GAUSS.flatMap(([node]) => [(1 - node) / 2, (1 + node) / 2]);
const WEIGHTS = GAUSS.flatMap(([, weight]) => [weight / 2, weight / 2]);
const constants = (numbers: readonly number[]) => `{${numbers.map((number) => number.toPrecision(15)).join(',')}}`;

/** Length from the crown to the leg: that of the ellipse, and what its turn adds at the offset. */
export function highLength(row: OpeningTakeoff, edge: Edge, offset: string): string {
  if (!mayBeQuarterEllipse(row)) return '';
  const turned = `ASIN(${its[`${edge}AtLeg`]})`;
  const speed = `SQRT((${its.span}*COS(${turned}*${constants(NODES)}))^2+(${its.rise}*SIN(${turned}*${constants(NODES)}))^2)`;
  const turn = `ATAN2(${its.span}*COS(${turned}),${its.rise}*${its[`${edge}AtLeg`]})`;
  return `+IF(N(${its[`${edge}AtLeg`]})=0,0,${turned}*SUMPRODUCT(${constants(WEIGHTS)}*${speed})+${offset}*${turn})`;
}

/** Height of the high leg's outer corner above the spring line. */
export const HIGH_LEG_OF_QUARTER_ELLIPSE =
  `(${its.rise}*COS(ASIN(${its.outsideAtLeg}))+` +
  `${EDGE}*${its.span}*COS(ASIN(${its.outsideAtLeg}))/SQRT((${its.rise}*${its.outsideAtLeg})^2+(${its.span}*COS(ASIN(${its.outsideAtLeg})))^2))`;
