import type { QuoteCheck } from '../../../src/check/quote';
import { blankOpening, type Opening } from '../../../src/schedule/opening';
import { defaultStandards, withSettings } from '../../../src/standards';
import { takeoff, type Takeoff } from '../../../src/takeoff/takeoff';
import { valueOf } from '../../value';
import type { MadeQuote, MadeRow } from './makeQuote';
import { FACE, LEG, REVEAL, THICKNESS } from './openings';

/** Our takeoff of a made schedule. Prices of made quotes are not near ours: only what doesn't rest on them is judged. */
export function takeoffOf({ openings }: MadeQuote): Takeoff {
  const standards = valueOf(withSettings(defaultStandards(), { priceBand: 10 }));
  const rows = openings.map(({ mark, quantity, arch, rise, legs }, at): Opening => ({
    ...blankOpening(at + 2),
    mark,
    quantity,
    head: arch.shape,
    span: arch.span,
    rise,
    face: FACE,
    reveal: REVEAL,
    thickness: THICKNESS,
    species: 'Poplar',
    ends: legs ? 'legs' : 'radial',
    leg: legs ? LEG : null,
  }));
  return takeoff(rows, standards);
}

interface Judged {
  readonly verdict: string;
  /** Whether it is said what the mistake is, alone or beside others that fit as well. */
  readonly named: boolean;
  readonly texts: readonly string[];
}

/** What the check says of one made row. */
export function judged(check: QuoteCheck, { row, what, planted }: MadeRow): Judged {
  const line = check.lines.find((one) => one.line.row === row);
  const sum = check.sums.find(({ item }) => item.row === row)?.finding;
  const findings = what === 'line' ? (line?.findings ?? []) : sum ? [sum] : [];
  const verdict = what === 'line' ? line?.verdict : what === 'alternate' ? line?.verdict : sum?.verdict;
  const wrong = findings.filter((one) => one.verdict !== 'agrees');
  const named = wrong.some(
    ({ about, text, mistakes }) =>
      planted !== null && [about, text, `${about} ${mistakes.join(' ')}`].some((one) => planted.named.test(one)),
  );
  return {
    verdict: verdict ?? 'no such row',
    named,
    texts: findings.map(({ verdict: said, text }) => `${said}: ${text}`),
  };
}
