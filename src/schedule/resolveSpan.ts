import type { HeadShape } from '../head/head';
import { SHAPES } from '../head/shapes';
import type { Standards } from '../standards';
import { inches, inWorkbook } from '../unit';
import { figure } from './figure';
import type { Findings, GivenLengths } from './given';
import { isLikelyWhole } from './readLength';

/** A rough opening is no more than this wider than its window or door: what is wider belongs to another. */
const MOST_ROUGH = inches(8, 'in');

/** The span: the width, else the rough opening less the allowance, else what radius and shape say. */
export function resolveSpan(
  given: GivenLengths,
  head: HeadShape | null,
  standards: Standards,
  tolerance: number,
  say: Findings,
): number | null {
  const { width, roughWidth, radius, rise } = given;
  if (width?.fault !== undefined) {
    say.problem('span', width.fault, width.choices);
    return null;
  }
  const allowance = standards.roughWidth;
  if (width !== undefined) {
    if (roughWidth?.fault !== undefined) say.note(`${roughWidth.fault} The opening's own width was used.`);
    else if (roughWidth !== undefined && roughWidth.value < width.value - tolerance) {
      say.problem(
        'span',
        `The rough opening ${figure(roughWidth.value)} is narrower than the width ${figure(width.value)}.`,
      );
      return null;
    } else if (roughWidth !== undefined && roughWidth.value > width.value + inWorkbook(MOST_ROUGH, standards.unit)) {
      const choices = [width.value, roughWidth.value - allowance].map(figure);
      say.problem(
        'span',
        `The width is ${choices[0]}, but the rough opening ${figure(roughWidth.value)} is ${figure(roughWidth.value - width.value)} wider; please say which is right.`,
        choices,
      );
      return null;
    } else if (roughWidth !== undefined && Math.abs(roughWidth.value - width.value - allowance) > tolerance)
      say.note(
        `The rough opening ${figure(roughWidth.value)} is not the width ${figure(width.value)} plus the usual ${figure(allowance)}; the width was used.`,
      );
    return width.value;
  }
  if (roughWidth?.fault !== undefined) {
    say.problem('span', roughWidth.fault, roughWidth.choices);
    return null;
  }
  if (roughWidth !== undefined) {
    const span = roughWidth.value - allowance;
    if (span <= 0) {
      say.problem('span', `The rough opening ${figure(roughWidth.value)} less ${figure(allowance)} leaves no width.`);
      return null;
    }
    say.note(`Width ${figure(span)} is the rough opening ${figure(roughWidth.value)} less ${figure(allowance)}.`);
    say.rough('span', roughWidth.value);
    return span;
  }
  const r = radius?.value;
  const fromRadius = head === null ? undefined : SHAPES[head].rise.spanOfRadius;
  if (r !== undefined && fromRadius) return ofRadius(fromRadius.of(r), fromRadius.said(figure(r)), standards, say);
  const h = rise?.value;
  if (r !== undefined && h !== undefined && h > 0 && h <= r && head === 'segmental') {
    const span = 2 * Math.sqrt(h * (2 * r - h));
    say.note(`Width ${figure(span)} follows from the radius ${figure(r)} and the rise ${figure(h)}.`);
    return span;
  }
  say.problem('span', 'Width is missing; please give the width of the opening or of its rough opening.');
  return null;
}

/** A width that no opening has comes of a radius in another unit. */
function ofRadius(span: number, how: string, { unit }: Standards, say: Findings): number | null {
  if (isLikelyWhole(span, unit)) {
    say.note(`Width ${figure(span)} is ${how}.`);
    return span;
  }
  say.problem(
    'span',
    `Width ${figure(span)} would be ${how}, which can't be right; please check its unit or give the width.`,
  );
  return null;
}
