/** Longest text that a cell of Excel holds; a file with a longer one is called damaged. */
export const LONGEST_TEXT = 32_767;

/** A text as a cell can hold it: a longer one is cut, and says so at its end. */
export function fittingText(text: string): string {
  if (text.length <= LONGEST_TEXT) return text;
  const said = ` … (cut here: ${text.length.toLocaleString('en-US')} characters in all)`;
  return text.slice(0, LONGEST_TEXT - said.length) + said;
}
