import { longestStraight } from '../blank/guides';
import { lengthInWords } from '../lengthText';
import type { Standards } from '../standards';
import { inches, inWorkbook } from '../unit';
import { COMMON_PRACTICE } from './cautions';
import type { Setup } from './setups';

/** One step at the machine, in order, and where it comes from. */
export interface SetupStep {
  readonly text: string;
  readonly source: string;
}

/** Larger rings than this, in inches across, tip off the bed by themselves. From memory. */
const LARGE_RING = inches(48, 'in');

/**
 * How a set-up is made, in the order of a careful hand: from the disconnected cutter to the first piece measured, with the
 * set-up's own figures.
 */
export function setupSteps(setup: Setup, standards: Standards): readonly SetupStep[] {
  const { unit, thinEdge, clearance, knives, bedLine } = standards;
  const length = (value: number) => lengthInWords(value, unit, 32);
  const steps: (SetupStep | null)[] = [
    practice('Disconnect the cutter and lock it out; the key stays with whoever sets up.'),
    setup.guides?.ok
      ? practice(
          `Guides R ${length(setup.guides.value.inside)} inside, R ${length(setup.guides.value.outside)} outside: lay them to the bed lines, ` +
            `${length(bedLine)} each side, their center line under the lowest point of the knife's swing.`,
        )
      : null,
    setup.guides?.ok
      ? practice(
          'Put the middle screw into each guide, square it from the edge of the table, then drive the others: three in each, so that one may break.',
        )
      : null,
    setup.guides?.ok
      ? practice(`Try a blank between them: ${length(clearance)} clear on each side, sliding without being tight.`)
      : practice('Set the fences parallel to the feed, the width of the stock apart and clear of it.'),
    {
      text:
        knives === 1
          ? `Knife ${setup.knife}: edge sharp, bevel to the infeed, clamped so that the gib doesn't cock it; a counterweight of its own weight opposite.`
          : `${knives} knives ${setup.knife}, alike in weight: edges sharp, bevels to the infeed, no gib cocking one; set alike endwise as well as to one circle.`,
      source: '29 CFR 1910.213(s)(2)',
    },
    practice(
      (setup.insideRadius === null
        ? 'Line the profile up sideways with the fences'
        : `Thin edge to the ${thinEdge} of the radius. Line the profile up sideways with the guides`) +
        ', or with a sample of the profile slid up under the knife.',
    ),
    practice('Wax the bed where the stock slides.'),
    practice(
      'Bring the bed up little by little. Count the turns of the crank: lowered, it comes back to the same height.',
    ),
    practice(dryRun(setup, standards)),
    {
      text: 'Hood on and fastened, guards over the feed rolls in place: only after that does the cutter get its power back.',
      source: '29 CFR 1910.213; 8 CCR 4318(a)–(c)',
    },
    practice(
      'Chip extraction on before the cutter: the outfeed roll presses chips that are left lying into the profile.',
    ),
    isLarge(setup, standards)
      ? practice(
          `Hold these rings up behind the outfeed with a stand or a second table: they are up to ${length(across(setup))} across.`,
        )
      : null,
    practice(
      setup.passes === 1
        ? 'Run the first piece, stop, and measure width, thickness and profile before the others follow.'
        : `Run the first piece in ${setup.passes} passes, each a little deeper, and measure it; then all pieces at one depth before the next.`,
    ),
    practice(
      `After about two hours of running see again that ${setup.insideRadius === null ? 'knife' : 'knife, guides and screws'} and gib are tight.`,
    ),
  ];
  return steps.filter((step) => step !== null);
}

/** A straight piece may be too long for curved guides to let through: its greatest length is said. */
function dryRun({ insideRadius, face }: Setup, { margin, clearance, unit }: Standards): string {
  const start = 'Dry run, knife turned up and no power: ';
  if (insideRadius === null) return `${start}feed a piece of straight scrap through on the rollers, end to end.`;
  const longest = longestStraight(insideRadius + face + margin, clearance);
  // Rounded down, so that the length said does pass.
  const step = unit === 'in' ? 1 / 16 : 1;
  const straight = longest.ok ? lengthInWords(Math.floor(longest.value / step + 1e-9) * step, unit) : '0';
  return `${start}feed a curved piece that is scrap anyway through on the rollers. A straight one passes only up to ${straight} long.`;
}

function isLarge(setup: Setup, { unit }: Standards): boolean {
  return setup.insideRadius !== null && across(setup) > inWorkbook(LARGE_RING, unit);
}

/** From end to end of the largest piece, over its outside edge. */
function across({ insideRadius, face, angle }: Setup): number {
  return 2 * ((insideRadius ?? 0) + face) * Math.sin((Math.min(angle, 180) * Math.PI) / 360);
}

/** Where the steps come from, each source once. */
export function stepSources(steps: readonly SetupStep[]): string {
  const named = [...new Set(steps.map(({ source }) => source))].filter((source) => source !== COMMON_PRACTICE);
  const of = (source: string) => steps.flatMap((step, at) => (step.source === source ? [at + 1] : [])).join(', ');
  return [...named.map((source) => `step ${of(source)}: ${source}`), `the other steps: ${COMMON_PRACTICE}`].join('; ');
}

function practice(text: string): SetupStep {
  return { text, source: COMMON_PRACTICE };
}
