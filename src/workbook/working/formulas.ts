import type { HeadShape } from '../../head/head';
import { shapesWhere } from '../../head/shapes';
import { its } from './keys';

/** Pieces of formula that several columns share. */

/** Feed in ft/min, whatever the workbook's unit. */
export const FEED = 'Shop_feed/Shop_per_ft_min';

export const STRAIGHT_FEED = 'Shop_straight_feed/Shop_per_ft_min';

/** Heads whose arcs are fitted to an ellipse: their radii and angles have no formula. */
export const FITTED_HEADS: readonly HeadShape[] = shapesWhere(({ rings }) => rings === 'fitted');
/** Heads of several kinds of ring: a crown, and haunches. */
export const HAUNCHED_HEADS: readonly HeadShape[] = shapesWhere(
  ({ rings }) => rings === 'fitted' || rings === 'haunches',
);
export const CLOSED_HEADS: readonly HeadShape[] = shapesWhere(({ closed }) => closed);
export const HIGH_SIDED_HEADS: readonly HeadShape[] = shapesWhere(({ highSide }) => highSide);

export function headIs(...heads: readonly string[]): string {
  const each = heads.map((head) => `${its.head}="${head}"`);
  return each.length === 1 ? each[0]! : `OR(${each.join(',')})`;
}

/** Arcs that stand for half an ellipse. */
export const ARCS = `IF(${its.arcs}="",3,${its.arcs})`;

export const HALF_SPAN = `(${its.span}/2)`;
/** From the opening to the casing's outside edge. */
export const EDGE = `(${its.reveal}+${its.face})`;

const STOCK = `Stock_species,${its.species},Stock_thickness,${its.stockThickness}`;

/** The narrowest board at least this wide. */
export function narrowestBoard(width: string): string {
  return `MINIFS(Stock_width,${STOCK},Stock_width,">="&(${width}-0.000000001))`;
}

/** The longest board at least this wide. */
export function longestBoardAt(width: string): string {
  return `MAXIFS(Stock_length,${STOCK},Stock_width,">="&(${width}-0.000000001))`;
}

/** Price per board foot of boards of this width. */
export function priceAt(width: string): string {
  return `MINIFS(Stock_price,${STOCK},Stock_width,${width})`;
}

export const ROUGH_QUARTERS = `MINIFS(Stock_quarters,${STOCK})`;
export const WIDEST_BOARD = `MAXIFS(Stock_width,${STOCK})`;

/** The thinnest stock that is thick enough; 0 where none is. MAX makes a figure of the nothing that a grid may find. */
export const THICK_ENOUGH = `MAX(0,MINIFS(Stock_thickness,Stock_species,${its.species},Stock_thickness,">="&(${its.thickness}-0.000000001)))`;

/** Equality, because a criterion of MINIFS would take "Po*" for Poplar. */
export const SPECIES_IN_STOCK = `SUMPRODUCT(--(Stock_species=${its.species}))>0`;

export function boardFeet(width: string, length: string, count: string): string {
  return `ARCH.BOARDFEET(${its.quarters}/4,${width}/Shop_per_inch,${length}/Shop_per_inch,${count})`;
}

/** A formula that depends on the head; a blank for heads not named. */
export function byHead(cases: readonly (readonly [head: string, formula: string])[]): string {
  return cases.reduceRight((otherwise, [head, formula]) => `IF(${its.head}="${head}",${formula},${otherwise})`, '""');
}
