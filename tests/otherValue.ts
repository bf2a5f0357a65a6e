import type { Setting } from '../src/standards';

/** Another value the setting may have, one that matters. */
export function otherValue(setting: Setting): string | number {
  if (setting.measure === 'choice') return setting.choices.find((choice) => choice !== setting.value)!;
  if (setting.measure === 'text') return setting.key === 'species' ? 'Cherry' : 'Ogee';
  if (setting.measure === 'count') return setting.value + 1;
  const more = setting.value * 1.25 || 1;
  return more > setting.max ? setting.value / 2 : more;
}
