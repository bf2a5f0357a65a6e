import type { Random } from '../../random';
import { lengthOf, radiusOf } from './geometry';
import type { Line } from './line';
import type { Column } from './layouts';
import { FACE, LEG, OUTSIDE, REVEAL, type MadeOpening } from './openings';

/** What is done to one line. */
interface Kind {
  readonly kind: string;
  /** What is said of it where it is named. */
  readonly named: RegExp;
  readonly needs: readonly Column[];
  /** Makes the mistake; false where it can't be made here. */
  readonly make: (line: Line, random: Random) => boolean;
}

/** Further off than the tolerance of 1/8 and the rounding of what is written. */
const SEEN = 0.25;

function length(kind: string, named: RegExp, wrong: (opening: MadeOpening, random: Random) => number | null): Kind {
  return {
    kind,
    named,
    needs: ['length each'],
    make: (line, random) => {
      const figure = wrong(line.of[0]!, random);
      if (figure === null || !(figure > 3) || Math.abs(figure - line.length) < SEEN) return false;
      if (line.withLegs && Math.abs(figure - line.length - 2 * LEG) < 2) return false;
      line.length = figure;
      return true;
    },
  };
}
const along = ({ arch, legs }: MadeOpening, offset: number) =>
  lengthOf(arch, offset, legs && arch.shape === 'segmental' ? 'legs' : 'radial');

const LENGTHS: readonly Kind[] = [
  length('measured along the inside edge', /inside edge/, (one) => along(one, REVEAL)),
  length('measured along the center', /along the center/, (one) => along(one, REVEAL + FACE / 2)),
  length("measured along the opening's edge", /opening's edge/, (one) => along(one, 0)),
  length('reveal left out', /reveal left out/, (one) => along(one, FACE)),
  length('reveal counted twice', /reveal counted twice/, (one) => along(one, FACE + 2 * REVEAL)),
  length('face counted twice', /face counted twice/, (one) => along(one, REVEAL + 2 * FACE)),
  length('chord, not arc', /chord/, ({ arch }) => (arch.shape === 'round' ? null : arch.span)),
  length('chord of the outside edge', /chord/, ({ arch }) => (arch.shape === 'round' ? null : arch.span + 2 * OUTSIDE)),
  length('half circle of this span', /half circle/, ({ arch }) =>
    ['segmental', 'elliptical', 'three-centered'].includes(arch.shape) ? Math.PI * (arch.span / 2 + OUTSIDE) : null,
  ),
  length('full circle, not the arc', /full circle|counted twice/, ({ arch }) =>
    ['segmental', 'half round', 'quarter round'].includes(arch.shape)
      ? 2 * Math.PI * (radiusOf(arch)! + OUTSIDE)
      : null,
  ),
  length('half of it only', /half/, (one) => one.length / 2),
  length('cut level, not radial', /level ends/, ({ arch, legs }) =>
    arch.shape === 'segmental' && !legs ? lengthOf(arch, OUTSIDE, 'level') : null,
  ),
  length('run on to legs, not radial', /legs where/, ({ arch, legs }) =>
    arch.shape === 'segmental' && !legs ? lengthOf(arch, OUTSIDE, 'legs') : null,
  ),
  length('radial, not run on to legs', /radial ends/, ({ arch, legs }) =>
    arch.shape === 'segmental' && legs ? lengthOf(arch, OUTSIDE, 'radial') : null,
  ),
  length('sides not run on to the center line', /run on/, ({ arch }) =>
    arch.shape === 'pointed' ? lengthOf(arch, OUTSIDE, 'radial', false) : null,
  ),
  length('half ellipse of span and rise grown', /grown/, ({ arch }) =>
    arch.shape === 'elliptical'
      ? lengthOf({ ...arch, span: arch.span + 2 * OUTSIDE, rise: arch.rise + OUTSIDE }, 0)
      : null,
  ),
  length('rise read as radius', /rise read as radius/, ({ arch }) =>
    arch.shape === 'segmental' ? Math.PI * (arch.rise + OUTSIDE) : null,
  ),
  length('diameter read as radius', /diameter read as radius|span read as radius/, ({ arch }) =>
    ['half round', 'round'].includes(arch.shape) ? (lengthOf(arch, 0) / (arch.span / 2)) * (arch.span + OUTSIDE) : null,
  ),
  ...[2.5, 4.5, 5.5].map((face) => length(`length of a ${face} casing`, /casing/, (one) => along(one, REVEAL + face))),
  length('feet read as inches', /feet read as inches/, (one) => (one.length > 48 ? one.length / 12 : null)),
  length('25 mm taken for an inch', /25 mm/, (one) => (one.length * 25.4) / 25),
  length('digits swapped', /digits/, (one) => {
    const [whole, rest] = [Math.floor(one.length), one.length % 1];
    const text = String(whole);
    return Number(text.slice(0, -2) + text.at(-1)! + text.at(-2)!) + rest;
  }),
  length('fraction dropped', /fraction dropped/, (one) => Math.floor(one.length)),
  length('decimal feet read as feet and inches', /decimal feet/, (one) => {
    const feet = Number((one.length / 12).toFixed(2));
    return 12 * Math.floor(feet) + (feet % 1) * 10;
  }),
  length('feet and inches read as decimal feet', /decimal feet/, (one) => {
    const sixteenths = Math.round(one.length * 16) / 16;
    return sixteenths % 12 < 10 ? 12 * (Math.floor(sixteenths / 12) + Math.floor(sixteenths % 12) / 10) : null;
  }),
  length('two legs added', /legs/, (one) => (one.legs ? one.length + 2 * LEG : null)),
  {
    kind: 'length of all pieces for each',
    named: /all|pieces|twice/,
    needs: ['length each'],
    make: (line) => {
      if (line.quantity < 2 || line.of.length > 1) return false;
      line.length *= line.quantity;
      return true;
    },
  },
];

function figure(kind: string, named: RegExp, needs: readonly Column[], make: Kind['make']): Kind {
  return { kind, named, needs, make };
}

const FIGURES: readonly Kind[] = [
  figure('quantity', /^quantity/, ['quantity'], (line, random) => {
    if (line.of.length > 1 || line.pair) return false;
    line.quantity = random.pick([1, 2, 3, 4, 5].filter((count) => count !== line.quantity));
    return true;
  }),
  figure('width of the opening', /^width/, ['span'], (line, random) => {
    line.span += random.pick([-6, -3, 2, 4, 6, 12]);
    return true;
  }),
  figure('rise', /^rise/, ['rise'], (line, random) => {
    if (line.rise === null) return false;
    line.rise += random.pick([1, 1.5, 2, 3]);
    return true;
  }),
  figure('head', /^head/, ['head'], (line) => {
    line.head =
      { segmental: 'elliptical', elliptical: 'segmental', pointed: 'segmental', 'half round': 'segmental' }[
        line.head as string
      ] ?? line.head;
    return line.head !== line.of[0]!.arch.shape;
  }),
  figure('diameter for radius', /^radius.*diameter/, ['radius'], (line) => {
    if (line.radius === null) return false;
    line.radius *= 2;
    return true;
  }),
  figure('another radius', /^radius/, ['radius'], (line, random) => {
    if (line.radius === null) return false;
    line.radius += random.pick([-2.5, 1.5, 3, 5]);
    return true;
  }),
  figure('casing width', /^casing width/, ['casing width'], (line, random) => {
    line.face = random.pick([2.5, 4.5, 5.5]);
    return true;
  }),
  figure('another casing width, with its length', /^casing width/, ['casing width', 'length each'], (line, random) => {
    line.face = random.pick([2.5, 4.5, 5.5]);
    line.length = along(line.of[0]!, REVEAL + line.face);
    return true;
  }),
  figure('thickness', /^thickness/, ['thickness'], (line, random) => {
    line.thickness = random.pick([0.5, 0.625, 1.0625]);
    return true;
  }),
  figure('leg', /^leg/, ['leg'], (line, random) => {
    line.leg = random.pick([48, 54, 66, 72]);
    return true;
  }),
  figure('extension x10', /^extension|^unit price/, ['extension'], (line) => {
    line.extension = Math.round(line.extension * 1000) / 100;
    return true;
  }),
  figure('extension of one', /^extension/, ['unit price', 'extension'], (line) => {
    if (line.quantity < 2) return false;
    line.extension = line.unitPrice;
    return true;
  }),
  figure('extension is not quantity × price', /^extension|^unit price|^quantity/, ['extension'], (line, random) => {
    line.extension = Math.round((line.extension + random.pick([-31, -9, 12, 27, 50])) * 100) / 100;
    return line.extension > 0;
  }),
  figure('digits swapped in the extension', /^extension|^unit price|^quantity/, ['extension'], (line) => {
    const text = line.extension.toFixed(2);
    const at = text.indexOf('.') - 2;
    if (at < 0 || text[at] === text[at + 1]) return false;
    line.extension = Number(text.slice(0, at) + text[at + 1]! + text[at]! + text.slice(at + 2));
    return line.extension > 0;
  }),
  figure('price x10', /^unit price.*ten times|^extension.*ten times|ten times/, ['unit price', 'extension'], (line) => {
    line.unitPrice = Math.round(line.unitPrice * 1000) / 100;
    line.extension = Math.round(line.unitPrice * line.quantity * 100) / 100;
    return true;
  }),
];

export const LINE_KINDS: readonly Kind[] = [...LENGTHS, ...FIGURES];
export { LENGTHS as LENGTH_KINDS };
