import { UNIT } from '../rules/moneyRules';
import { isNear } from '../rules/lineRules';
import { agrees, agreesIn, cantTell, differs, notGiven, type Finding } from './finding';
import { lengthText } from '../../lengthText';
import { roundTo } from '../../rounding';
import { figure, listed } from '../../schedule/figure';
import type { Standards } from '../../standards';
import { perInch } from '../../unit';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { LineMatch } from './match';
import type { SameOpening } from './sameOpening';
import { amountOf, SIDE_FIGURES, type QuoteLine } from '../../quote/quote';
import { lengthFinding, radiusFinding, type Beside } from './curveFindings';
import { describedFinding } from './describedFindings';
import { asQuoted, complete, type Complete } from './figureFinding';
import { rightFigure } from './rightFigure';
import { countedTogether, extensionFinding, priceFinding, quantityFinding } from './moneyFindings';
import { legCountFinding, sideFinding, sizeFindings } from './sideFindings';
import { namedIn, wordsFindings } from './words';
import { name, noOpening, surplus } from './whichOpening';

/** Everything that is found of one line, in the order of its figures. */
export function findingsOf(
  match: LineMatch,
  same: SameOpening,
  openings: readonly OpeningTakeoff[],
  standards: Standards,
  beside: Beside,
): Finding[] {
  const { line, places } = match;
  const strange = match.strange.map((mark) => cantTell('opening', `${JSON.stringify(mark)} is no mark of the takeoff`));
  if (match.part === 'alternate') return [cantTell('opening', 'an alternate, beside what the quote comes to')];
  if (places.length === 0) return [noOpening(match, openings), ...present(extensionFinding(line, null))];
  if (places.length > 1) return [...strange, ...severalOpenings(match, openings, standards, beside)];
  const opening = openings[places[0]!]!;
  const extension = present(extensionFinding(line, opening.known.quantity));
  if (match.part === 'other') return [...partFindings(line, opening, standards), ...extension];
  const twice = surplus(match, same, opening);
  if (twice) return [twice, ...extension];
  const at = complete(opening);
  const needs = opening.needs.join(' ');
  const quantity = countOf(match, same, opening);
  if (at === null) {
    return [
      cantTell('opening', `${name(opening)} in the takeoff needs something first. ${needs.replace(/\.$/, '')}`),
      quantity,
      ...extension,
    ];
  }
  const words = wordsFindings(namedIn(line), at);
  const shape = shapeOf(line, at, at.inputs.quantity, beside, standards);
  return withUnread(line, [
    ...strange,
    ...words,
    quantity,
    ...shape,
    ...extension,
    priceOfLine(match, same, opening, standards, shape),
  ]);
}

/** Every figure of the shape that a line gives, in its columns or its words. */
function shapeOf(line: QuoteLine, at: Complete, pieces: number, beside: Beside, standards: Standards): Finding[] {
  const unread = line.problems.filter(({ field }) => (OF_SHAPE as readonly string[]).includes(field));
  return [
    ...unread.map(({ field, message }) =>
      cantTell(
        field === 'face'
          ? 'casing width'
          : field === 'span'
            ? 'width'
            : field === 'legCount'
              ? 'leg count'
              : (field as SideAbout),
        message,
      ),
    ),
    ...SIDE_FIGURES.flatMap((kind) => {
      const quoted = line.side[kind];
      return quoted === undefined || (kind === 'leg' && quoted === 0) ? [] : [sideFinding(kind, quoted, at, standards)];
    }),
    ...(line.side.span === undefined && line.size !== null ? sizeFindings(line.size, at, standards) : []),
    ...(line.legCount === null ? [] : [legCountFinding(line.legCount, at, pieces)]),
    radiusFinding(line, at, standards),
    lengthFinding(line, at, pieces, standards, beside),
    ...line.described.flatMap((one) => describedFinding(one, line, at, pieces, standards, beside)),
  ];
}

const OF_SHAPE = [...SIDE_FIGURES, 'legCount'] as const;
type SideAbout = 'rise' | 'thickness' | 'reveal' | 'leg';

/** The legs of an opening on a line of their own; other parts aren't in the takeoff by themselves. */
function partFindings(line: QuoteLine, opening: OpeningTakeoff, standards: Standards): Finding[] {
  const at = complete(opening);
  if (at === null || !/\blegs?\b|side casing/i.test(line.description))
    return [cantTell('opening', `a part of ${name(opening)} that is priced with its head`)];
  const found: Finding[] = [];
  const { quantity } = line;
  if (quantity !== null && line.by === 'piece') found.push(legCountFinding(quantity, at, at.inputs.quantity));
  const length = line.side.leg ?? line.length;
  if (length !== null) found.push(sideFinding('leg', length, at, standards));
  for (const kind of ['face', 'thickness'] as const)
    if (line.side[kind] !== undefined) found.push(sideFinding(kind, line.side[kind], at, standards));
  const rest = line.described.filter(({ kind }) => kind === 'unknown');
  const unread = rest.map(({ text }) => cantTell('column', `what ${JSON.stringify(text)} is of`));
  return found.length === 0
    ? [cantTell('opening', `a part of ${name(opening)} that is priced with its head`)]
    : [...wordsFindings(namedIn(line), at).filter(({ about }) => about === 'species'), ...found, ...unread];
}

/** A line with figures that weren't understood is not called right: it says what it agrees in. */
function withUnread({ unread }: QuoteLine, findings: readonly Finding[]): Finding[] {
  if (unread.length === 0) return [...findings];
  const agreeing = agreesIn(findings);
  const rest = agreeing.length === 0 ? '' : `; agrees in ${listed(agreeing)}`;
  return [
    cantTell('column', `${listed(unread)} ${unread.length === 1 ? 'was' : 'were'} not understood${rest}`),
    ...findings,
  ];
}

function present(finding: Finding | null): Finding[] {
  return finding === null ? [] : [finding];
}

function countOf(match: LineMatch, same: SameOpening, opening: OpeningTakeoff): Finding {
  const { line } = match;
  const wanted = opening.known.quantity;
  if (wanted === null) return cantTell('quantity', 'the takeoff has no quantity for this opening');
  if (line.by === 'foot') return footage(line, opening);
  return countedTogether(match, same, wanted, unitOf(line) ?? opening.cost?.unitPrice ?? null);
}

/** Feet may hold allowances and waste: that they agree can be told, that they don't is no mistake yet. */
function footage(line: QuoteLine, { own, known }: OpeningTakeoff): Finding {
  if (line.quantity === null) return notGiven('quantity', 'quantity', line);
  if (own === null || known.quantity === null)
    return cantTell('quantity', 'priced by the foot', { quoted: line.quantity });
  return cantTell('quantity', `priced by the foot (${line.quantity} ft), so the pieces can't be counted`, {
    quoted: line.quantity,
  });
}

/** The price of one piece, from the extension where no unit price is given. */
function unitOf({ unitPrice, extension, quantity, by }: QuoteLine): number | null {
  if (by !== 'piece') return null;
  return UNIT.of({ unitPrice, extension, quantity });
}

function priceOfLine(
  match: LineMatch,
  { heads, others, sharing }: SameOpening,
  opening: OpeningTakeoff,
  { priceBand, unit: unitOfLength }: Standards,
  shape: readonly Finding[],
): Finding {
  const { line } = match;
  const ours = opening.cost!;
  const wanted = opening.inputs!.quantity;
  if (others.length > 0) {
    if (match !== heads[0])
      return cantTell('unit price', `judged with row ${heads[0]!.line.row}`, { notGiven: true, words: '' });
    const amounts = [...heads, ...others].map((one) => amountOf(one.line));
    if (amounts.some((amount) => amount === null)) return notGiven('unit price', 'price for every part', line);
    const sum = amounts.reduce<number>((total, amount) => total + amount!, 0);
    const rows = [...heads, ...others].map((one) => one.line.row).join(', ');
    return priceFinding(`price of rows ${rows} together`, sum, ours.price, 1, priceBand, []);
  }
  const unit = unitOf(line);
  if (unit !== null) {
    const many = sharing === 'together' ? line.quantity! : wanted;
    return priceFinding(
      line.byFoot || line.unitPrice === null ? 'price of one' : 'unit price',
      unit,
      ours.unitPrice,
      many,
      priceBand,
      shape,
    );
  }
  if (line.footPrice !== null && opening.own !== null) {
    const feet = opening.own.curve.length / (12 * perInch(unitOfLength));
    const price = feet * line.footPrice;
    return priceFinding(`price by our ${figure(roundTo(2, feet))} ft`, price, ours.unitPrice, wanted, priceBand, []);
  }
  const amount = amountOf(line);
  if (amount === null || heads.length > 1) return notGiven('unit price', 'price', line);
  return priceFinding(line.by === 'lot' ? 'lump sum' : 'amount', amount, ours.price, 1, priceBand, shape);
}

/** One line for several openings: counts and prices are added up; figures of the shape are judged only where they are alike. */
function severalOpenings(
  match: LineMatch,
  openings: readonly OpeningTakeoff[],
  standards: Standards,
  beside: Beside,
): Finding[] {
  const { line, places } = match;
  const rows = places.map((place) => openings[place]!);
  const names = rows.map(name).join(', ');
  const wanted = rows.reduce<number | null>(
    (sum, { known }) => (sum === null || known.quantity === null ? null : sum + known.quantity),
    0,
  );
  const quantity =
    wanted === null
      ? cantTell('quantity', `not every opening of ${names} has a quantity`)
      : line.by === 'foot'
        ? cantTell('quantity', "priced by the foot, so the pieces can't be counted")
        : quantityFinding(line, line.quantity, wanted, unitOf(line));
  const extension = present(extensionFinding(line, wanted));
  const all = rows.map(complete);
  if (all.some((at) => at === null) || match.shared)
    return [cantTell('opening', `not every opening of ${names} is complete in the takeoff`), quantity, ...extension];
  const first = all[0]!;
  const same = all.every(
    (at) =>
      Math.abs(at!.own.curve.length - first.own.curve.length) <= standards.tolerance / 2 &&
      at!.inputs.head === first.inputs.head &&
      at!.own.crown?.ring.inside === first.own.crown?.ring.inside,
  );
  const shape = same
    ? shapeOf(line, first, wanted!, beside, standards)
    : (['radius', 'length'] as const).map((about) =>
        line[about] === null ? notGiven(about, about, line) : unlikeFinding(about, line, rows, standards),
      );
  const ours = rows.reduce((sum, { cost }) => sum + cost!.price, 0);
  const amount = amountOf(line);
  const price =
    amount === null
      ? notGiven('unit price', 'price', line)
      : priceFinding(`amount for ${names}`, amount, ours, 1, standards.priceBand, []);
  return withUnread(line, [quantity, ...shape, ...extension, price]);
}

/** One figure for openings that have different ones: right for some of them only, or nothing can be told. */
function unlikeFinding(
  about: 'radius' | 'length',
  line: QuoteLine,
  rows: readonly OpeningTakeoff[],
  { tolerance, unit }: Standards,
): Finding {
  const quoted = line[about]!;
  const rights = rows.map((row) => ({ name: name(row), right: rightFigure(line, about, row) }));
  const fitsOf = (right: number | null) => right !== null && isNear(quoted, right, tolerance);
  const others = rights.filter(({ right }) => !fitsOf(right));
  const said = asQuoted(quoted, unit);
  if (others.length === 0) return agrees(about, `${about} ${said} agrees`, quoted, rights[0]!.right);
  if (others.length === rows.length || others.some(({ right }) => right === null)) {
    const all = rights.map((one) => one.name).join(', ');
    return cantTell(about, `${all} have different ${about === 'radius' ? 'radii' : 'lengths'}`);
  }
  const fits = rights.filter(({ right }) => fitsOf(right)).map((one) => one.name);
  const is = others.map(({ name: mark, right }) => `${lengthText(right!, unit)} right for ${mark}`).join(', ');
  const mistake = `the ${about} of ${listed(fits)} for all`;
  return differs(about, `${about} ${said} quoted, ${is}: ${mistake}`, {
    mistakes: [mistake],
    cause: `one ${about} for openings that differ`,
    quoted,
    said: { quoted: said, right: is },
  });
}
