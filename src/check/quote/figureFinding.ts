import { makeHead } from '../../head/makeHead';
import { lengthText } from '../../lengthText';
import { ok } from '../../result';
import { roundTo } from '../../rounding';
import { figure } from '../../schedule/figure';
import type { Standards } from '../../standards';
import type { Inputs } from '../../takeoff/inputs';
import type { OwnFigures } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { perInch, type Unit } from '../../unit';
import type { Casing } from '../casing';
import { judge } from '../judge';
import { knownLengths, type KnownFigure } from '../lengthMistakes';
import { knownRadii } from '../radiusMistakes';
import { SCALE_MISTAKES, WRITING_MISTAKES } from '../scaleMistakes';
import { isNear } from '../rules/lineRules';
import { agrees, differs, type About, type Finding } from './finding';

/** An opening whose figures are all there. */
export interface Complete {
  readonly inputs: Inputs;
  readonly own: OwnFigures;
}

export function complete(opening: OpeningTakeoff): Complete | null {
  const { inputs, own } = opening;
  return inputs !== null && own !== null ? { inputs, own } : null;
}

export function plainMistakes(right: number, unit: Unit): readonly KnownFigure[] {
  const inch = perInch(unit);
  return [
    ...SCALE_MISTAKES.map(({ name, scale }) => ({ mistake: name, figure: right * scale, scale })),
    ...WRITING_MISTAKES.flatMap(({ name, figures }) =>
      figures(right / inch).map((figure) => ({ mistake: name, figure: figure * inch, slip: true })),
    ),
  ];
}

/** A quoted length as it is, to four decimals where it is no fraction of the tape: 5.985 is not "6". */
export function asQuoted(length: number, unit: Unit): string {
  return unit === 'mm' ? String(roundTo(4, length)) : figure(length);
}

/** One length-like figure judged; `known` is only worked out where the figure is not right, `which` says which one it is: "at the long point". */
export function figureFinding(
  about: About,
  quoted: number,
  right: number,
  known: readonly KnownFigure[] | (() => readonly KnownFigure[]),
  { tolerance, unit }: Standards,
  which: string,
): Finding {
  const [said, is] = [asQuoted(quoted, unit), lengthText(right, unit)];
  if (isNear(quoted, right, tolerance)) return agrees(about, `${about} ${said} agrees`, quoted, right);
  const { mistakes } = judge(quoted, right, typeof known === 'function' ? known() : known, tolerance);
  const off = `${lengthText(Math.abs(quoted - right), unit)} ${quoted < right ? 'short' : 'long'}`;
  const words = mistakes.length > 0 ? mistakes.join(' or ') : `unexplained: ${off}`;
  const why = mistakes.length > 0 ? `: ${words} (${off})` : `, ${words}`;
  const cause = mistakes[0] ?? `${about} off, unexplained`;
  const at = `${is} right${which && ` ${which}`}`;
  return differs(about, `${about} ${said} quoted, ${at}${why}`, {
    words,
    mistakes,
    cause,
    quoted,
    right,
    said: { quoted: said, right: at },
  });
}

/** The known mistakes suppose inches (feet, rounding); their figures come back in the workbook's unit. */
function inUnit(
  { inputs, own }: Complete,
  unit: Unit,
  of: (casing: Casing) => readonly KnownFigure[],
): readonly KnownFigure[] {
  const inch = perInch(unit);
  const rise = inputs.rise === null ? null : inputs.rise / inch;
  const head = inch === 1 ? ok(own.curve.head) : makeHead(inputs.head, inputs.span / inch, rise);
  if (!head.ok) return [];
  const casing: Casing = {
    head: head.value,
    face: inputs.face / inch,
    reveal: inputs.reveal / inch,
    ends: inputs.ends,
  };
  return of(casing).map((one) => ({ ...one, figure: one.figure * inch }));
}

export function lengthMistakes(at: Complete, unit: Unit): readonly KnownFigure[] {
  return inUnit(at, unit, knownLengths);
}

export function radiusMistakes(at: Complete, unit: Unit): readonly KnownFigure[] {
  return inUnit(at, unit, knownRadii);
}
