import type { WorkingColumns } from './column';
import { HIGH_LEG_COLUMNS } from './highLeg';
import type { WorkingKey } from './keys';
import { LENGTH_COLUMNS } from './lengths';
import { MACHINE_COLUMNS } from './machine';
import { INPUT_COLUMNS, TO_DO_COLUMNS } from './opening';
import { PRICE_COLUMNS, SHARE_COLUMNS } from './price';
import { BLANK_TEXT, CROWN_COLUMNS, HAUNCH_COLUMNS, SET_UPS } from './ring';
import { WOOD_COLUMNS } from './wood';

/** Every column of the sheet Working from left to right. Number and shares stand first: they are looked up together. */
export const WORKING_COLUMNS: WorkingColumns<WorkingKey> = {
  ...SHARE_COLUMNS,
  ...INPUT_COLUMNS,
  ...TO_DO_COLUMNS,
  blank: BLANK_TEXT,
  'set-up': SET_UPS,
  ...CROWN_COLUMNS,
  ...HIGH_LEG_COLUMNS,
  ...LENGTH_COLUMNS,
  ...HAUNCH_COLUMNS,
  ...MACHINE_COLUMNS,
  ...WOOD_COLUMNS,
  ...PRICE_COLUMNS,
};
