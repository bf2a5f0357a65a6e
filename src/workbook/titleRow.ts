import type { Cell, SheetName } from './sheet';

/**
 * The title of a sheet that is planned, and beside it what says that the plan is older than the rows; an empty text where it is
 * current (a bare reference to one may show a 0). Printed at the top of every page, so that no page of what is no longer so
 * looks like one to work by.
 */
export function titleRow(name: SheetName, older = 'Plan_state'): (Cell | null)[] {
  return [{ value: name, style: 'title' }, null, { value: '', formula: older, style: 'attention' }];
}
