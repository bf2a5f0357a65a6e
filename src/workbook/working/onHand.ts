import { ON_HAND_KINDS } from '../../onHand';
import { its } from './keys';

/** Rows of the list for the row's profile, width and thickness, as conditions of COUNTIFS and MAXIFS: by the same measure as `onHand.ts`. */
const near = (name: string, cell: string) =>
  `OnHand_${name},">="&(${cell}-0.0005),OnHand_${name},"<="&(${cell}+0.0005)`;
const FOR_ROW = `OnHand_profile,${its.profile},${near('face', its.face)},${near('thickness', its.thickness)}`;
const KNIVES = ON_HAND_KINDS.filter((kind) => kind !== 'guides');

/** How many of the shop's own knives serve the row. */
export const KNIVES_OWNED = `COUNTIFS(OnHand_kind,"knife",${FOR_ROW})`;

/** How many of the shop's own guides hold this inside radius. */
export function guidesOwned(insideRadius: string): string {
  return `COUNTIFS(OnHand_kind,"guides",${FOR_ROW},${near('inside_radius', insideRadius)})`;
}

/** A figure that the list names for the row's knife, the greatest where it names several; else another. */
export function ofKnife(name: 'depth' | 'passes' | 'charge', otherwise: string): string {
  const listed = `${KNIVES.map((kind) => `COUNTIFS(OnHand_kind,"${kind}",${FOR_ROW},OnHand_${name},">=0")`).join('+')}>0`;
  const greatest = KNIVES.map((kind) => `MAXIFS(OnHand_${name},OnHand_kind,"${kind}",${FOR_ROW})`).join(',');
  return `IF(${listed},MAX(${greatest}),${otherwise})`;
}
