import type { Unit } from '../../src/unit';

/** Figures as the shop reads them: inches in sixteenths where they are, else decimals; the decimal mark by locale. */
export function lengthText(length: number | null, unit: Unit, locale?: string): string {
  if (length === null) return '–';
  if (unit === 'mm') return `${decimal(length, 1, locale)} mm`;
  return `${inchText(length, locale)}″`;
}

/** The same without its unit, as it could be typed back. */
export function typedLength(length: number | null, unit: Unit, locale?: string): string {
  if (length === null) return '';
  return unit === 'mm' ? decimal(length, 2, locale) : inchText(length, locale);
}

function inchText(inches: number, locale?: string): string {
  const sixtyFourths = Math.round(inches * 64);
  if (Math.abs(inches * 64 - sixtyFourths) > 1e-6 || inches < 0) return decimal(inches, 4, locale);
  const whole = Math.floor(sixtyFourths / 64);
  let top = sixtyFourths - whole * 64;
  if (top === 0) return String(whole);
  let bottom = 64;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

export function decimal(figure: number, places: number, locale?: string): string {
  return figure.toLocaleString(locale, { maximumFractionDigits: places, useGrouping: false });
}

export function money(dollars: number, locale?: string): string {
  return dollars.toLocaleString(locale, { style: 'currency', currency: 'USD' });
}

export function count(many: number, of: string): string {
  return many === 1 ? `1 ${of}` : `${many.toLocaleString()} ${of}s`;
}
