import { angleAtLeg, GAUSS } from '../../head/quarterEllipse';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { ofCurve, inGroup, working, type WorkingColumn } from './column';
import { EDGE } from './formulas';

/**
 * Where the parallel curve of a quarter ellipse stands at its high leg: the sine x of the parameter past the crown, which solves
 * a·x + d·b·x/√(a² − (a² − b²)·x²) = d. Taken as x = d/(a + d·b/√(…)) it settles by three digits and more a round.
 */
const ROUNDS = 12;
const NEXT = (x: string, d: string) => `${d}/({span}+${d}*{rise}/SQRT({span}^2-({span}^2-{rise}^2)*${x}^2))`;

const OFFSETS = { inside: '{reveal}', center: '({reveal}+{face}/2)', outside: EDGE } as const;
type Edge = keyof typeof OFFSETS;

function mayBeQuarterEllipse({ known }: OpeningTakeoff): boolean {
  return known.head === null || known.head === 'quarter ellipse';
}

function rounds(d: string): string {
  let x = '0';
  for (let round = 0; round < ROUNDS; round++) x = round === 0 ? NEXT('0', d) : NEXT(`(${x})`, d);
  return x;
}

const atLeg = (edge: Edge, title: string): WorkingColumn => {
  const formula = ofCurve(`IF(AND({head}="quarter ellipse",{stops}="legs"),${rounds(OFFSETS[edge])},"")`);
  return working(`${edge}AtLeg`, title, 'number', {
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
export const HIGH_LEG_COLUMNS: readonly WorkingColumn[] = inGroup('Lengths', [
  atLeg('inside', 'At the high leg, inside'),
  atLeg('center', 'At the high leg, middle'),
  atLeg('outside', 'At the high leg, outside'),
]);

const NODES = GAUSS.flatMap(([node]) => [(1 - node) / 2, (1 + node) / 2]);
const WEIGHTS = GAUSS.flatMap(([, weight]) => [weight / 2, weight / 2]);
const constants = (numbers: readonly number[]) => `{${numbers.map((number) => number.toPrecision(15)).join(',')}}`;

/** Length from the crown to the leg: that of the ellipse, and what its turn adds at the offset. */
export function highLength(row: OpeningTakeoff, edge: Edge, offset: string): string {
  if (!mayBeQuarterEllipse(row)) return '';
  const turned = `ASIN({${edge}AtLeg})`;
  const speed = `SQRT(({span}*COS(${turned}*${constants(NODES)}))^2+({rise}*SIN(${turned}*${constants(NODES)}))^2)`;
  const turn = `ATAN2({span}*COS(${turned}),{rise}*{${edge}AtLeg})`;
  return `+IF(N({${edge}AtLeg})=0,0,${turned}*SUMPRODUCT(${constants(WEIGHTS)}*${speed})+${offset}*${turn})`;
}

/** Height of the high leg's outer corner above the spring line. */
export const HIGH_LEG_OF_QUARTER_ELLIPSE =
  '({rise}*COS(ASIN({outsideAtLeg}))+' +
  `${EDGE}*{span}*COS(ASIN({outsideAtLeg}))/SQRT(({rise}*{outsideAtLeg})^2+({span}*COS(ASIN({outsideAtLeg})))^2))`;
