import { plainMarks, readDimensionIn, type DimensionOptions } from './dimension';
import { quoted } from './require';
import { ok, refuse, type Result } from './result';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Width and height from a door call-out, feet and inches each, width first: `3068` is 36 × 80, `21068` 34 × 80,
 * `3/0 x 6/8` 36 × 80; also two dimensions with an x between (`36 x 80`). Only for a column known to hold call-outs: a
 * plain `3068` is a number anywhere else. Refused: digits with more than one reading (`21110`), and everything else.
 */
export function readCallout(text: string, options: DimensionOptions = { answer: 'in' }): Result<Size> {
  const written = text.trim();
  const plain = plainMarks(written).replace(/[×✕]/g, 'x');
  const refusal = refuse(
    `${quoted(written)} is not a size; accepted are call-outs such as 3068 or 3/0 x 6/8, and sizes such as 36 x 80`,
  );
  // 34 · 25.4 would come out as 863.5999…
  const answer = (inches: number) => (options.answer === 'mm' ? (inches * 254) / 10 : inches);
  const digits = /^\d{4,6}$/.exec(plain) ? digitReadings(plain) : [];
  if (digits.length > 1) {
    return refuse(`${quoted(written)} can be read in ${digits.length} ways; write it as in 2/10 x 6/8`);
  }
  const [only] = digits;
  if (only !== undefined) return ok({ width: answer(only[0]), height: answer(only[1]) });
  const sides = plain.split(/ ?(?:x|by) ?/);
  if (sides.length !== 2) return refusal;
  const [width, height] = sides.map((side) => {
    const feetInches = slashFeet(side);
    if (feetInches !== null) return ok(answer(feetInches));
    return readDimensionIn(side, options);
  });
  return width!.ok && height!.ok ? ok({ width: width!.value, height: height!.value }) : refusal;
}

/** Every way to part the digits into feet, inches, feet, inches. */
function digitReadings(digits: string): [number, number][] {
  const readings: [number, number][] = [];
  for (const widthDigits of [2, 3]) {
    const width = digitFeet(digits.slice(0, widthDigits));
    const height = digitFeet(digits.slice(widthDigits));
    if (width !== null && height !== null) readings.push([width, height]);
  }
  return readings;
}

/** `30` is 36, `210` is 34: a foot digit, then inches 0 to 9 or 10 or 11. */
function digitFeet(digits: string): number | null {
  return /^[1-9](\d|1[01])$/.test(digits) ? Number(digits[0]) * 12 + Number(digits.slice(1)) : null;
}

/** `3/0`, `2/10` or `3-0`: feet and whole inches. */
function slashFeet(text: string): number | null {
  const match = /^(\d{1,2}) ?[/-] ?(\d|1[01])$/.exec(text);
  return match && Number(match[1]) > 0 ? Number(match[1]) * 12 + Number(match[2]) : null;
}
