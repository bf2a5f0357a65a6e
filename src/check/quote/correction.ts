import { dollars } from '../../quote/money';
import { amountOf } from '../../quote/quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { reasonOf } from '../rules/verdict';
import type { LineCheck } from './checkLine';
import type { Finding } from './finding';
import { name } from './whichOpening';

/** A line by the mark of its opening and its row: "W3 (row 9)". */
export function lineName({ line, places }: LineCheck, openings: readonly OpeningTakeoff[]): string {
  const mark = places.length === 0 ? line.mark : places.map((place) => name(openings[place]!)).join(', ');
  return mark === '' ? `row ${line.row}` : `${mark} (row ${line.row})`;
}

/** One figure that differs, as a supplier can put it right: "length 81 3/4 quoted, 81 15/16 right at the long point, reveal left out". */
export function correction({ about, said, mistakes, text }: Finding, named: readonly string[] = []): string {
  if (said === null) return text;
  const why = mistakes.filter((mistake) => !named.includes(mistake));
  return [`${said.of ?? about} ${said.quoted} quoted`, said.right, ...(why.length > 0 ? [why.join(' or ')] : [])].join(
    ', ',
  );
}

/** What the line comes to: "extension $258.00 as quoted", "extension $124.60 quoted, $249.20 corrected"; '' where it isn't known. */
export function amountText(check: LineCheck): string {
  const [quoted, { corrected, findings }] = [amountOf(check.line), check];
  if (quoted === null) return '';
  if (corrected === null) return `extension ${dollars(quoted)} quoted`;
  const same = (one: number | null) => one !== null && Math.abs(one - corrected) < 0.005;
  if (same(quoted)) return `extension ${dollars(quoted)} as quoted`;
  // Its own arithmetic says it already.
  if (findings.some((one) => one.about === 'extension' && one.verdict === 'differs' && same(one.right))) return '';
  return `extension ${dollars(quoted)} quoted, ${dollars(corrected)} corrected`;
}

/** What isn't known of a line that differs is said with it: a mark that is none of ours, a figure that isn't understood. */
const OPEN_TOO: ReadonlySet<Finding['about']> = new Set<Finding['about']>(['opening', 'column']);

/** Everything on a line that differs, each mistake named once, and what the line then comes to. */
export function correctionText(check: LineCheck, openings: readonly OpeningTakeoff[]): string {
  const named: string[] = [];
  const wrong = check.findings.flatMap((finding) => {
    if (finding.verdict !== 'differs') return [];
    const said = correction(finding, named);
    named.push(...finding.mistakes);
    return [said];
  });
  const amount = amountText(check);
  const open = check.findings.filter(({ verdict, about }) => verdict === "can't tell" && OPEN_TOO.has(about));
  const unknown = open.map(({ words }) => `can't be told: ${reasonOf(words)}`);
  return `${lineName(check, openings)}: ${[...wrong, ...unknown, ...(amount === '' ? [] : [amount])].join('; ')}.`;
}
