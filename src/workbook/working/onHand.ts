/** How many of the shop's own knives, or guides of this inside radius, serve the row: by the same measure as `takeoff/shares.ts`. */
export function owned(kind: 'knife' | 'guides', insideRadius?: string): string {
  const near = (name: string, cell: string) =>
    `OnHand_${name},">="&(${cell}-0.0005),OnHand_${name},"<="&(${cell}+0.0005)`;
  const radius = insideRadius === undefined ? '' : `,${near('inside_radius', insideRadius)}`;
  return `COUNTIFS(OnHand_kind,"${kind}",OnHand_profile,{profile},${near('face', '{face}')},${near('thickness', '{thickness}')}${radius})`;
}
