import { isAsGoodAsStraight } from '../blank/guides';
import { lengthInWords } from '../lengthText';
import type { Standards } from '../standards';
import { inches, inWorkbook, perInch, type Unit } from '../unit';
import { NEARLY } from './arcPieces';
import type { Setup, SetupPieces } from './setups';

/** Knives and screws are checked for tightness again after so much running. Common practice. */
const MINUTES_BETWEEN_CHECKS = 120;

/** What the person at the machine must know about one set-up before starting, in words; none: nothing stands out. */
export function setupFlags(
  setup: Pick<Setup, 'insideRadius' | 'face' | 'guides' | 'pieces' | 'runMinutes'>,
  standards: Standards,
): readonly string[] {
  const { shortestPiece, smallestRadius, widestFace, margin, unit } = standards;
  const length = (value: number) => lengthInWords(value, unit);
  const flags: string[] = [];
  const short = setup.pieces.filter((piece) => piece.runLength < shortestPiece - NEARLY);
  if (short.length > 0) {
    const least = Math.min(...short.map((piece) => piece.runLength));
    const how = short.every(({ longer }) => longer === 'carrier')
      ? 'Run them on a carrier'
      : 'Run them in one length with others, or on a carrier';
    flags.push(
      `Too short for the rolls: ${marksOf(short)}, ${length(least)} along the center; the machine holds no less than ${length(shortestPiece)}. ${how}.`,
    );
  }
  const overlong = setup.pieces.filter(({ longer }) => longer === 'overlong');
  if (overlong.length > 0)
    flags.push(
      `${setup.insideRadius === null ? 'Sawn' : 'Glued up'} overlong for the rolls: ${marksOf(overlong)}. Saw to length after the run.`,
    );
  if (setup.insideRadius !== null && setup.insideRadius < smallestRadius) {
    flags.push(
      `Too tight: inside radius ${length(setup.insideRadius)}; the machine takes no less than ${length(smallestRadius)}.`,
    );
  }
  const blank = setup.face + 2 * margin;
  if (blank > widestFace) {
    flags.push(`Too wide: the blank is ${length(blank)}; the machine takes no more than ${length(widestFace)}.`);
  }
  if (setup.guides && !setup.guides.ok) flags.push(`No guide boards: ${setup.guides.message}.`);
  const straight = straightGuides(setup, standards);
  if (straight !== null) flags.push(`${straight}.`);
  const sharing = setup.pieces.flatMap(({ mark, insideRadius, strays }) =>
    insideRadius !== null && strays > 0 ? [`${mark}, ${strayWords(insideRadius, strays, unit)}`] : [],
  );
  if (sharing.length > 0) flags.push(`Shared guides: ${[...new Set(sharing)].join('; ')}.`);
  const checks = tightnessChecks(setup.runMinutes);
  if (checks > 0) {
    const hours = Math.round(setup.runMinutes / 6) / 10;
    flags.push(
      `${hours} hours of running: stop ${checks === 1 ? 'once' : `${checks} times`} to check knife, guides and screws for tightness.`,
    );
  }
  return flags;
}

/** How far past each bed line a guide board reaches. */
const BEYOND_BED_LINE = inches(1, 'in');

/** That guides of so large a radius are sawn straight, and over which length; null where they are not. */
export function straightGuides({ guides }: Pick<Setup, 'guides'>, { bedLine, unit }: Standards): string | null {
  const half = bedLine + inWorkbook(BEYOND_BED_LINE, unit);
  return guides?.ok && isAsGoodAsStraight(guides.value.inside, half, perInch(unit))
    ? `Guides as good as straight over ${lengthInWords(2 * half, unit)}`
    : null;
}

function marksOf(pieces: readonly SetupPieces[]): string {
  return [...new Set(pieces.map(({ mark }) => mark))].join(', ');
}

/** By how much a molding strays from guides made for another radius. */
function strayWords(insideRadius: number, strays: number, unit: Unit): string {
  const shown = unit === 'in' ? strays.toFixed(3) : strays.toFixed(2);
  return `inside radius ${lengthInWords(insideRadius, unit)}, strays ${shown} ${unit} over the length of the guides`;
}

/** Stops for a tightness check while running; none after the last piece. 0 up to two hours, 1 up to four, and so on. */
export function tightnessChecks(runMinutes: number): number {
  return Math.max(0, Math.ceil(runMinutes / MINUTES_BETWEEN_CHECKS) - 1);
}
