/** Typographic marks and dashes as the plain ones. */
export function straightMarks(text: string): string {
  if (!/[^ -_a-~]/.test(text)) return text;
  return text
    .replace(/[\u2018\u2019\u2032\u00b4`]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u00a0\u2000-\u200b\u202f\u3000\ufeff]/g, ' ');
}
