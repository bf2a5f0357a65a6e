import type { OpeningField } from '../../../src/schedule/opening';
import { withPoint } from '../format';
import type { Bench } from './bench';

/**
 * A figure typed in place of what the schedule gave; taken by the schedule's own rules or refused in a sentence. A bare
 * figure is in `unit`, the workbook's where left out.
 */
export async function fixOpening(
  { core, store, options }: Bench,
  at: number,
  field: OpeningField,
  text: string,
  unit = store.get().standards.unit,
): Promise<boolean> {
  const { schedule, standards } = store.get();
  if (!schedule) return false;
  const fixed = await core.fix(schedule.openings, at, field, withPoint(text, options.locale), standards, unit);
  if (!fixed.ok) {
    store.send({ type: 'figure refused', at, field, message: fixed.message });
    return false;
  }
  store.send({ type: 'opening fixed', at, opening: fixed.value, field, typed: { text, unit } });
  return true;
}
