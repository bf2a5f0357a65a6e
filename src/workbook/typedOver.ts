/** Whether cells that ought to hold formulas hold none, as a native formula. */
export function isTypedOver(cells: string): string {
  return `NOT(ISFORMULA(${cells}))`;
}

/** The rule by which such cells of a range (`H6:K65`) stand out, told of its first cell. Blank ones are no figures. */
export function typedOverRule(range: string): string {
  const first = range.split(':')[0]!;
  return `AND(${first}<>"",${isTypedOver(first)})`;
}

/** How they stand out: #RRGGBB. */
export const TYPED_OVER_LOOK = { ink: '#7F3F00', fill: '#FFE08A' } as const;
