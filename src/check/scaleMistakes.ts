/** Mistakes of unit: any figure can suffer them. `right` is in inches; `scale` is what the mistake multiplies it by. */
export const SCALE_MISTAKES: readonly { readonly name: string; readonly scale: number }[] = [
  { name: 'feet read as inches', scale: 1 / 12 },
  { name: 'inches read as feet', scale: 12 },
  { name: 'millimeters read as inches', scale: 25.4 },
  { name: 'inches read as millimeters', scale: 1 / 25.4 },
  { name: 'centimeters read as millimeters', scale: 1 / 10 },
  { name: 'millimeters read as centimeters', scale: 10 },
  { name: '25 mm taken for an inch', scale: 25.4 / 25 },
  { name: '25 mm taken for an inch', scale: 25 / 25.4 },
];

/** Mistakes of writing: what becomes of a figure in inches that is copied or read carelessly. */
export const WRITING_MISTAKES: readonly {
  readonly name: string;
  readonly figures: (right: number) => readonly number[];
}[] = [
  { name: 'two digits changed places', figures: swappedDigits },
  { name: 'decimal feet read as feet and inches', figures: (right) => asFeetAndInches(right) },
  { name: 'feet and inches read as decimal feet', figures: (right) => asDecimalFeet(right) },
  { name: 'fraction dropped', figures: (right) => [Math.floor(right + 1e-9)] },
];

/** 68 1/8 becomes 86 1/8: neighboring digits of the whole inches, or of the inches after the feet. */
function swappedDigits(right: number): readonly number[] {
  const whole = Math.floor(right);
  const rest = right - whole;
  const digits = String(whole);
  const swapped = [...digits]
    .slice(1)
    .map((digit, at) => Number(digits.slice(0, at) + digit + digits[at]! + digits.slice(at + 2)) + rest);
  const [feet, inches] = [Math.floor(right / 12), right % 12];
  const [tens, ones] = [Math.floor(inches / 10), Math.floor(inches) % 10];
  const ofInches = tens === 1 && ones === 0 ? [feet * 12 + 1 + rest] : [];
  return [...swapped, ...ofInches, Math.floor(inches) * 12 + feet + rest];
}

/** 5.68 ft becomes 5'-6.8". */
function asFeetAndInches(right: number): readonly number[] {
  const feet = right / 12;
  const whole = Math.floor(feet);
  const tenths = Math.round((feet - whole) * 10);
  return [whole * 12 + (feet - whole) * 10, ...(tenths < 10 ? [whole * 12 + tenths] : [])];
}

/** 5'-8 1/8" becomes 5.8 ft, 5'-11" also 5.11 ft. */
function asDecimalFeet(right: number): readonly number[] {
  const whole = Math.floor(right / 12);
  const inches = right - 12 * whole;
  return [inches, Math.round(inches), Math.floor(inches)].flatMap((part) => [
    12 * (whole + part / 10),
    ...(part >= 10 ? [12 * (whole + part / 100)] : []),
  ]);
}
