import { lengthText as tapeText } from '../../src/lengthText';
import type { Unit } from '../../src/unit';

/** Figures as the shop reads them: inches in sixteenths where they are, else decimals; the decimal mark by locale. */
export function lengthText(length: number | null, unit: Unit, locale?: string): string {
  if (length === null) return '–';
  if (unit === 'mm') return `${decimal(length, 1, locale)} mm`;
  return `${unbroken(inchText(length, locale))}″`;
}

/** The same without its unit, as it could be typed back. */
export function typedLength(length: number | null, unit: Unit, locale?: string): string {
  if (length === null) return '';
  return unit === 'mm' ? decimal(length, 6, locale) : inchText(length, locale);
}

/** A fraction stays with its inches at the end of a line. */
function unbroken(text: string): string {
  return text.replace(' ', '\u00a0');
}

/** As on a tape where it is a 64th, else in decimals: nothing shown here may lose digits when it is typed back. */
function inchText(inches: number, locale?: string): string {
  const exact = Math.abs(inches * 64 - Math.round(inches * 64)) < 1e-6;
  return exact ? tapeText(inches, 'in', 64) : decimal(inches, 6, locale);
}

export function decimal(figure: number, places: number, locale?: string): string {
  return figure.toLocaleString(locale, { maximumFractionDigits: places, useGrouping: false });
}

/** Typed text with a decimal point, where the locale writes a comma. */
export function withPoint(text: string, locale?: string): string {
  return decimalMark(locale) === ',' ? text.replace(/(\d),(\d)/g, '$1.$2') : text;
}

function decimalMark(locale?: string): string {
  return new Intl.NumberFormat(locale).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.';
}

export function money(dollars: number, locale?: string): string {
  return dollars.toLocaleString(locale, { style: 'currency', currency: 'USD' });
}

export function count(many: number, of: string): string {
  return many === 1 ? `1 ${of}` : `${many.toLocaleString()} ${of}s`;
}

/** A length as it is read off a tape: to the nearest 1/16 in or 0.1 mm. */
export function onTape(length: number, unit: Unit, locale?: string): string {
  return unit === 'in' ? `${unbroken(tapeText(length, 'in'))}″` : `${decimal(length, 1, locale)} mm`;
}
