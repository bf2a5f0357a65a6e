import { settingsNotSet, type Setting, type SettingKey, type Standards } from './standards';
import type { Unit } from './unit';
import { settingUnit } from './settingUnit';

/** Begins the sentence that names the machine's settings that nobody has set. */
export const NOT_SET = 'Not set yet in Standards, neutral figures are used: ';

/** What stands before and behind the figure of a setting in that sentence. */
export function notSetPart({ label, measure }: Setting, unit: Unit): { before: string; after: string } {
  const name = label.charAt(0).toLowerCase() + label.slice(1);
  return { before: `${name} `, after: measure === 'count' ? '' : ` ${settingUnit(measure, unit)}` };
}

/**
 * Which of the machine's settings nobody has set, with the neutral figures that stand in: a takeoff says it until they are set.
 * Empty: all are set.
 */
export function notSetSentence(standards: Standards): string {
  const parts = settingsNotSet(standards).map((setting) => {
    const { before, after } = notSetPart(setting, standards.unit);
    return `${before}${standards[setting.key as SettingKey]}${after}`;
  });
  return parts.length === 0 ? '' : `${NOT_SET}${parts.join(', ')}.`;
}
