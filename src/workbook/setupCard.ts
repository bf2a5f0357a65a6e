import { lengthText } from '../lengthText';
import { markDepth } from '../machine';
import { markOrRow } from '../schedule/opening';
import { CARD_CAUTIONS, CAUTIONS, NOT_A_SUBSTITUTE } from '../takeoff/cautions';
import { GUIDE_FIGURES } from '../takeoff/guideFigures';
import { setupFlags } from '../takeoff/setupFlags';
import type { Setup } from '../takeoff/setups';
import { setupSteps, stepSources } from '../takeoff/setupSteps';
import type { Takeoff } from '../takeoff/takeoff';
import { inches, inWorkbook, type Inches } from '../unit';
import { settingUnit } from '../settingUnit';
import type { Cell } from './sheet';
import { inLines } from './textLines';

/** Characters that a line of figures has room for in columns B and C, and one of steps in the columns from D on. */
const FIGURES_WIDE = 56;
const STEPS_WIDE = 150;
/** Of the columns: figures from B, steps from D. */
const STEPS_FROM = 3;

/** One set-up as the person at the machine reads it: its figures on the left, the steps in order on the right. */
export function setupCard(setup: Setup, order: number, { standards }: Takeoff): (Cell | null)[][] {
  const figures = figureLines(setup, standards);
  const flags = setupFlags(setup, standards);
  const steps = setupSteps(setup, standards).flatMap(({ text }, at) =>
    inLines(`${at + 1}. ${text}`, STEPS_WIDE).map((line, part) => (part === 0 ? line : `    ${line}`)),
  );
  const body = Array.from({ length: Math.max(figures.length, steps.length) }, (_, at): (Cell | null)[] => [
    null,
    written(figures[at]),
    ...Array.from({ length: STEPS_FROM - 2 }, () => null),
    written(steps[at]),
  ]);
  const wide = FIGURES_WIDE + STEPS_WIDE;
  return [
    [null, { value: `${order}. ${setup.name}`, style: 'title', format: '@' }],
    ...flags.flatMap((flag) => inLines(`Look at: ${flag}`, wide).map((line) => [null, written(line, 'attention')])),
    ...body,
    ...CARD_CAUTIONS.map((text): (Cell | null)[] => [null, written(text, 'attention')]),
  ];
}

function figureLines(setup: Setup, standards: Takeoff['standards']): string[] {
  const { unit } = standards;
  const length = (value: number) =>
    unit === 'in' ? `${lengthText(value, unit, 32)} (${value.toFixed(3)})` : `${lengthText(value, unit)} mm`;
  const depth = markDepth(setup.cutsOutside, inches(standards.cuttingCircle, unit));
  const deep = (inInches: Inches) =>
    unit === 'in' ? `${inWorkbook(inInches, unit).toFixed(7)} in` : `${inWorkbook(inInches, unit).toFixed(6)} mm`;
  const marks = depth.ok ? [`Knife marks ${deep(depth.value)} deep at the outside edge`] : [];
  const said = [
    `Knife ${setup.knife}`,
    ...(setup.insideRadius === null
      ? ['Straight: no guides']
      : [`Inside radius ${length(setup.insideRadius)}`, ...guideLines(setup, length)]),
    `Head at ${standards.rpm} rev/min; feed ${Number(setup.feed.toFixed(2))} ${settingUnit('feed', unit)}`,
    `Cuts per inch ${setup.cutsCenter.toFixed(1)} at the center, ${setup.cutsOutside.toFixed(1)} outside`,
    ...marks,
    `Passes ${setup.passes}; minutes ${setup.runMinutes.toFixed(1)} running, ${setup.changeMinutes} setting up`,
    `Pieces ${setup.count}:`,
    ...piecesOf(setup, (value) => lengthText(value, unit)),
  ];
  return said.flatMap((line) => inLines(line, FIGURES_WIDE));
}

function guideLines({ guides }: Setup, length: (value: number) => string): string[] {
  if (!guides?.ok) return [];
  const { inside, outside } = guides.value;
  const of = GUIDE_FIGURES;
  return [`${of.inside.heading} R ${length(inside)}`, `${of.outside.heading} R ${length(outside)}`];
}

/** Pieces by opening and by length along the center, the length that the rolls carry: `No. 3 W1: 2 of 41 3/8`. */
function piecesOf({ pieces, count }: Setup, length: (value: number) => string): string[] {
  const spare = count - pieces.reduce((sum, piece) => sum + piece.count, 0);
  const said = pieces.map(
    (piece) => `No. ${piece.no} ${markOrRow(piece)}: ${piece.count} of ${length(piece.runLength)}`,
  );
  return [[...said, ...(spare > 0 ? [`spare: ${spare}`] : [])].join('; ')];
}

/** The cautions of the whole job, each once with its source, and where the steps of the cards come from. */
export function cautionRows(setups: readonly Setup[], { standards }: Takeoff): (Cell | null)[][] {
  const [first] = setups;
  if (first === undefined) return [];
  const sources = `The order of the steps on the cards; ${stepSources(setupSteps(first, standards))}.`;
  return [
    [{ value: 'Cautions for this job', style: 'group' }],
    ...CAUTIONS.flatMap(({ text, source }): (Cell | null)[][] =>
      inLines(`${text} (${source})`, FIGURES_WIDE + STEPS_WIDE).map((line, at) => [
        null,
        written(at === 0 ? line : `    ${line}`),
      ]),
    ),
    [null, written(sources, 'note')],
    [null, written(NOT_A_SUBSTITUTE, 'attention')],
  ];
}

function written(text: string | undefined, style: Cell['style'] = 'text'): Cell | null {
  return text === undefined ? null : { value: text, style, format: '@' };
}
