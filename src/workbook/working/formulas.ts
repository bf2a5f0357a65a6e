/** Pieces of formula that several columns share. */

/** Feed in ft/min, whatever the workbook's unit. */
export const FEED = 'Shop_feed/Shop_per_ft_min';

export const STRAIGHT_FEED = 'Shop_straight_feed/Shop_per_ft_min';

/** Heads of three arcs: two haunches and a crown. */
export const MULTI_CENTERED = 'OR({head}="elliptical",{head}="three-centered")';

/** Blank for heads without haunches; N() reads that as 0. */
export const HAS_HAUNCH = 'N({haunchRadius})>0';

export const HALF_SPAN = '({span}/2)';

const STOCK = 'Stock_species,{species},Stock_thickness,{stockThickness}';

/** The narrowest board at least this wide. */
export function narrowestBoard(width: string): string {
  return `MINIFS(Stock_width,${STOCK},Stock_width,">="&(${width}-0.000000001))`;
}

/** Price per board foot of boards of this width. */
export function priceAt(width: string): string {
  return `MINIFS(Stock_price,${STOCK},Stock_width,${width})`;
}

export const ROUGH_QUARTERS = `MINIFS(Stock_quarters,${STOCK})`;
export const WIDEST_BOARD = `MAXIFS(Stock_width,${STOCK})`;

/** The thinnest stock that is thick enough; 0 where none is. MAX makes a figure of the nothing that a grid may find. */
export const THICK_ENOUGH =
  'MAX(0,MINIFS(Stock_thickness,Stock_species,{species},Stock_thickness,">="&({thickness}-0.000000001)))';

/** Equality, because a criterion of MINIFS would take "Po*" for Poplar. */
export const SPECIES_IN_STOCK = 'SUMPRODUCT(--(Stock_species={species}))>0';

export function boardFeet(width: string, length: string, count: string): string {
  return `ARCH.BOARDFEET({quarters}/4,${width}/Shop_per_inch,${length}/Shop_per_inch,${count})`;
}

/** Board feet of all an opening's crown rings, or haunch rings. */
export const CROWN_FEET = boardFeet('{boardWidth}', '{blankLength}', '({segments}*{pieces})');
export const HAUNCH_FEET = boardFeet('{haunchBoardWidth}', '{haunchBlankLength}', '({haunchSegments}*{haunchPieces})');

/** The sum over an opening's two kinds of ring, of those it has. */
export function overRings(crown: string, haunch: string): string {
  return `IF({radius}="",0,${crown})+IF(${HAS_HAUNCH},${haunch},0)`;
}

/** Pieces of every opening that runs between these guides. */
export function piecesThrough(guide: string): string {
  return `(SUMIFS({pieces:all},{guide:all},${guide})+SUMIFS({haunchPieces:all},{haunchGuide:all},${guide}))`;
}

/** Minutes at the machine. */
export const RUN_MINUTES = `${overRings('{pieces}*{pieceRun}', '{haunchPieces}*{haunchPieceRun}')}+{straightMinutes}`;

/** A formula that depends on the head; a blank for heads not named. */
export function byHead(cases: readonly (readonly [head: string, formula: string])[]): string {
  return cases.reduceRight((otherwise, [head, formula]) => `IF({head}="${head}",${formula},${otherwise})`, '""');
}
