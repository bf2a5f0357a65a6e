/**
 * Text as a formula writes it. A literal holds at most 255 characters, so longer text is joined from parts. Quotation marks
 * go in by code: the workbench's grid loses the names that follow a doubled one.
 */
export function quote(text: string): string {
  const parts = text
    .split('"')
    .flatMap((part, at) => [
      ...(at > 0 ? ['CHAR(34)'] : []),
      ...(part.match(/[^]{1,250}/g) ?? []).map((piece) => `"${piece}"`),
    ]);
  return parts.join('&') || '""';
}
