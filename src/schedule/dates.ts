/** Dates as spreadsheets keep them: a number of days, and a number format that shows it as a date. */

/** A format code is a date's when letters of date parts stand in it outside quotes, colors and escapes. */
export function isDateFormat(code: string): boolean {
  const bare = code
    .replace(/"[^"]*"|\\.|_.|\*./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '')
    .replace(/general/gi, '')
    .split(';')[0];
  return /[ymdhs]/i.test(bare ?? '') && !/[#0?]\s*\/|^[^ymdhs]*[#?]/i.test(bare ?? '');
}

/** Serial day numbers count from 1900 (with its 29 February that never was) or from 1904. */
export function dateOfSerial(serial: number, from1904 = false): Date {
  const days = from1904 ? serial + 1462 : serial < 60 ? serial + 1 : serial;
  return new Date(Math.round((days - 25_569) * 86_400_000));
}
