import type { TakeoffColumn } from './columns/column';
import { LENGTH_COLUMNS } from './columns/lengths';
import { MACHINE_COLUMNS } from './columns/machine';
import { OPENING_COLUMNS, TO_DO_COLUMNS } from './columns/opening';
import { PRICE_COLUMNS } from './columns/price';
import { BLANK_TEXT, CROWN_COLUMNS, HAUNCH_COLUMNS } from './columns/ring';
import { WOOD_COLUMNS } from './columns/wood';

/** Every column of the takeoff from left to right. */
export const TAKEOFF_COLUMNS: readonly TakeoffColumn[] = [
  ...OPENING_COLUMNS,
  ...TO_DO_COLUMNS,
  BLANK_TEXT,
  ...CROWN_COLUMNS,
  ...LENGTH_COLUMNS,
  ...HAUNCH_COLUMNS,
  ...MACHINE_COLUMNS,
  ...WOOD_COLUMNS,
  ...PRICE_COLUMNS,
];
