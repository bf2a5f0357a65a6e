import { readCallout } from '../callout';
import { ok, refuse, type Result } from '../result';
import { cellText } from './cell';
import { capital, quote } from './figure';
import type { CellValue } from './opening';
import { isBare, readLength, type LengthOptions } from './readLength';
import { straightMarks } from './straightMarks';
import { trapped } from './trapped';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Longer text is no size. */
const LONGEST_TEXT = 60;
const BETWEEN = /\s*(?:[x×X*]|\bby\b)\s*/;
/** `3/0`, `6-8`: as a call-out feet and inches. */
const SLASHED = /^\d{1,2}\s*[/-]\s*\d{1,2}$/;
/** A unit behind the second figure that holds for a bare first one, too: `450 x 900 mm`. Feet may be meant for one only. */
const SHARED_UNIT = /^[^'a-z]*\d\s*(mm|cm|m|in\.?|inch(?:es)?|")$/i;

/** A width and a height of an opening: a call-out (`3068`, `3/0 x 6/8`) or two lengths (`36 x 54`, `3'-0" x 6'-8"`). */
export function readSize(cell: CellValue, options: LengthOptions): Result<Size> {
  const text = textOf(cell);
  const trap = trapped(cell, capital(options.name));
  if (trap !== null) return refuse(trap);
  const unread = refuse(
    `${capital(options.name)} can't be read: the cell says ${quote(text)}. Sizes such as 36 x 80, 3/0 x 6/8 or 3068 are understood.`,
  );
  const parts = text.split(BETWEEN);
  if (parts.length === 2 && !parts.every((part) => SLASHED.test(part))) return twoLengths(parts, options, unread);
  // Under a metric heading 1250 is a figure of one side, not 1'-2" by 5'-0".
  if (parts.length === 1 && options.column !== null && /m$/.test(options.column)) return unread;
  const callout = readCallout(text, { answer: options.unit });
  return callout.ok ? callout : unread;
}

/** The two figures of a casing's section, in either order: `3/4 x 3 1/2`. Never a call-out: 3/4 is a fraction here. */
export function readSection(cell: CellValue, options: LengthOptions): Result<Size> {
  const text = textOf(cell);
  const trap = trapped(cell, capital(options.name));
  if (trap !== null) return refuse(trap);
  const unread = refuse(
    `${capital(options.name)} can't be read: the cell says ${quote(text)}. Sizes such as 3/4 x 3 1/2 are understood.`,
  );
  const parts = text.split(BETWEEN);
  return parts.length === 2 ? twoLengths(parts, options, unread) : unread;
}

function textOf(cell: CellValue): string {
  return straightMarks(cellText(cell).slice(0, LONGEST_TEXT + 1));
}

function twoLengths(parts: readonly string[], options: LengthOptions, unread: Result<Size>): Result<Size> {
  const [first = '', second = ''] = parts.map((part) => part.replace(/\s*[wWhH]$/, ''));
  const unit = isBare(first) ? (SHARED_UNIT.exec(second)?.[1] ?? '') : '';
  const texts = [first + unit, second];
  // What is no length at all is said of the whole cell, what is an odd one of its figure.
  if (texts.some((text) => !readLength(text, { ...options, whole: false, most: undefined }).ok)) return unread;
  const [width, height] = texts.map((text) => readLength(text, options));
  if (!width?.ok) return width ?? unread;
  if (!height?.ok) return height ?? unread;
  return ok({ width: width.value, height: height.value });
}
