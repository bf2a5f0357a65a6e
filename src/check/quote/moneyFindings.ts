import { listed } from '../../schedule/figure';
import { judge } from '../judge';
import { knownQuantities } from '../quantityMistakes';
import { given } from '../rules/expression';
import { amountRule, EXTENSION_RULE, priceRule, quantityRule } from '../rules/lineRules';
import { reasonOf, verdictOf } from '../rules/verdict';
import type { LineMatch } from './match';
import type { SameOpening } from './sameOpening';
import { agrees, cantTell, differs, lacks, notGiven, type Finding } from './finding';
import { dollars } from '../../quote/money';
import type { QuoteLine } from '../../quote/quote';

/** The count of pieces against the takeoff's. `said` is what this line, or lines taken together, quote. */
export function quantityFinding(line: QuoteLine, said: number | null, right: number, unit: number | null): Finding {
  const unread = line.problems.find(({ field }) => field === 'quantity');
  if (unread) return cantTell('quantity', unread.message);
  if (line.by === 'lot') return cantTell('quantity', 'a lump sum, without a count');
  const words = quantityRule('the sum').of({
    place: 0,
    quantity: said,
    together: said,
    ourQuantity: right,
    lacks: lacks(line.unread),
  });
  if (said === null) return notGiven('quantity', 'quantity', line);
  if (verdictOf(words) === 'agrees') return agrees('quantity', `quantity ${said} agrees`, said, right);
  const { mistakes } = judge(said, right, knownQuantities(right), 0);
  const off = said < right ? `${right - said} too few` : `${said - right} too many`;
  const money = unit === null ? null : (said - right) * unit;
  return differs('quantity', `quantity ${said} quoted, ${right} right: ${words}${words === off ? '' : ` (${off})`}`, {
    words,
    mistakes,
    said: { quoted: String(said), right: `${right} right` },
    cause: mistakes.length > 0 ? mistakes.join(' or ') : 'quantity off, unexplained',
    quoted: said,
    right,
    dollars: money,
    stake: Math.abs(money ?? 0),
  });
}

/** Lines that divide pieces between them ("one left, one right") are counted together, and the first says what is wrong with their sum. */
export function countedTogether(
  match: LineMatch,
  { heads, total, sharing }: SameOpening,
  wanted: number,
  unit: number | null,
): Finding {
  const { line } = match;
  if (sharing !== 'together' || total === null) return quantityFinding(line, line.quantity, wanted, unit);
  if (total === wanted)
    return agrees('quantity', `quantity agrees: ${heads.length} lines have ${total} together`, total, wanted);
  if (match !== heads[0])
    return cantTell('quantity', `counted together with row ${heads[0]!.line.row}`, { notGiven: true, words: '' });
  return quantityFinding(line, total, wanted, unit);
}

/** Quantity × unit price against the extension, all three the quote's own. `wanted` is the takeoff's quantity. */
export function extensionFinding(line: QuoteLine, wanted: number | null): Finding | null {
  const { quantity, unitPrice, reckoning, extension, problems } = line;
  const unread = problems.find(({ field }) => field === 'extension' || field === 'unitPrice');
  if (unread) return cantTell('extension', unread.message);
  if (extension === null || unitPrice === null || quantity === null) {
    if (line.by === 'lot') return null;
    const missing =
      extension === null ? 'extension' : unitPrice === null ? (line.byFoot ? 'length' : 'unit price') : 'quantity';
    return notGiven('extension', missing, line);
  }
  const right = reckoning?.amount ?? quantity * unitPrice;
  const off = extension - right;
  const sum = reckoning?.words ?? `${quantity} × ${dollars(unitPrice)}`;
  const words =
    reckoning === null
      ? EXTENSION_RULE.of({ extension, unitPrice, quantity, lacks: lacks(line.unread) })
      : amountRule(given(extension), given(right), given(reckoning.tolerance)).of({});
  if (verdictOf(words) === 'agrees') {
    const how = reckoning === null ? '' : `: ${sum}`;
    return agrees('extension', `extension ${dollars(extension)} agrees${how}`, extension, right);
  }
  const known = [
    { mistake: 'unit price not multiplied by the quantity', figure: unitPrice },
    ...(wanted === null ? [] : [{ mistake: "figured with the takeoff's quantity", figure: wanted * unitPrice }]),
    { mistake: 'multiplied by the quantity twice', figure: quantity * right },
  ].filter(({ figure }) => Math.abs(figure - right) > 0.01);
  const named = judge(extension, right, [...known, ...pointMistakes(right)], 0.011).mistakes;
  const mistakes = named.length > 0 ? named : swapped(extension, right) ? ['two digits changed places'] : [];
  const why = mistakes.length > 0 ? `, ${mistakes.join(' or ')}` : '';
  const text = `extension ${dollars(extension)} quoted, ${sum} is ${dollars(right)}: ${words}${why}`;
  // A discount on the line, or a count of another kind, may stand under a heading that isn't understood.
  if (mistakes.length === 0 && line.unread.length > 0)
    return cantTell('extension', `${text}; ${listed(line.unread)} may say why`, { quoted: extension, right });
  return differs('extension', text, {
    words,
    mistakes,
    said: { quoted: dollars(extension), right: `${sum} is ${dollars(right)}` },
    cause: mistakes[0] === undefined ? 'extension is not quantity × unit price' : mistakes.join(' or '),
    quoted: extension,
    right,
    dollars: off,
    stake: Math.abs(off),
  });
}

/** A decimal point that moved. */
function pointMistakes(right: number): readonly { readonly mistake: string; readonly figure: number }[] {
  return [
    { mistake: 'ten times too much', figure: 10 * right },
    { mistake: 'a tenth of it', figure: right / 10 },
    { mistake: 'a hundred times too much', figure: 100 * right },
  ];
}

/** True where two amounts differ only by two neighboring digits that changed places. */
export function swapped(one: number, other: number): boolean {
  const [first, second] = [one, other].map((amount) => String(Math.round(Math.abs(amount) * 100)));
  if (first!.length !== second!.length) return false;
  const off = [...first!].flatMap((digit, at) => (digit === second![at] ? [] : [at]));
  return (
    off.length === 2 &&
    off[1]! - off[0]! === 1 &&
    first![off[0]!] === second![off[1]!] &&
    first![off[1]!] === second![off[0]!]
  );
}

/**
 * A quoted price against our own for the same thing, within the band. `many` is how many of it the takeoff has; where a wrong
 * length explains the price, the difference is put down to that.
 */
export function priceFinding(
  name: string,
  quoted: number,
  ours: number,
  many: number,
  band: number,
  shape: readonly Finding[],
): Finding {
  const words = priceRule(given(quoted), given(ours), given(band)).of({});
  if (verdictOf(words) === "can't tell") return cantTell('unit price', reasonOf(words), { quoted, right: ours });
  const off = (quoted - ours) / ours;
  if (verdictOf(words) === 'agrees') {
    const percent = `${Math.abs(off * 100).toFixed(1)}% ${off < 0 ? 'below' : 'above'} our ${dollars(ours)}`;
    const near = Math.abs(off) < 0.0005 ? `is our ${dollars(ours)}` : `is ${percent}`;
    return agrees('unit price', `${name} ${dollars(quoted)} ${near}`, quoted, ours);
  }
  const length = shape.find(
    (one) => one.about === 'length' && one.verdict === 'differs' && explains(one.quoted! / one.right!, quoted / ours),
  );
  const money = (quoted - ours) * many;
  const because = length ? `, as the length is ${off < 0 ? 'short' : 'long'}` : '';
  const near = (right: number) => Math.abs(quoted / right - 1) <= band + 1e-9;
  const mistakes = [
    ...(length?.mistakes ?? []),
    ...(near(10 * ours)
      ? ['price ten times ours']
      : near(ours / 10)
        ? ['price a tenth of ours']
        : near(100 * ours)
          ? ['price a hundred times ours']
          : []),
    ...(many > 1 && near(many * ours) ? ['the price of all pieces for one'] : []),
    ...(many > 1 && near(ours / many) ? ['the price of one divided by the pieces'] : []),
  ];
  const why =
    mistakes.length > (length?.mistakes.length ?? 0)
      ? `: perhaps ${mistakes.slice(length?.mistakes.length ?? 0).join(' or ')}`
      : '';
  return differs('unit price', `${name} ${dollars(quoted)} is ${words}${because}${why}`, {
    words,
    mistakes,
    said: { of: name, quoted: dollars(quoted), right: `ours ${dollars(ours)}` },
    cause: length?.cause ?? (why === '' ? priceOff(off) : mistakes[0]!),
    quoted,
    right: ours,
    dollars: money,
    stake: Math.abs(money),
  });
}

/** What prices above or below ours are added up as. */
export function priceOff(off: number): string {
  return `price ${off < 0 ? 'below' : 'above'} our own by more than the band`;
}

/** A price that is off the same way as the length, and by no more than half as much once it is for the right one. */
function explains(length: number, price: number): boolean {
  return length < 1 === price < 1 && Math.abs(Math.log(price / length)) <= Math.abs(Math.log(price)) / 2;
}
