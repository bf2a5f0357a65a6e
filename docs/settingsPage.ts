import { JOB_FIELDS, JOB_GROUPS, jobCellName, type JobField, type JobKey } from '../src/job/fields';
import { cellName, limits, SETTING_GROUPS, SETTINGS, type NumberSetting, type Setting } from '../src/standards';
import { settingUnit } from '../src/settingUnit';

/** Every shop setting and every field of a job, by group, from the lists that the core, the sheet Standards and the pane have them from. */
export function settingsPage(): string {
  const groups = SETTING_GROUPS.map((group) => {
    const settings = (SETTINGS as readonly Setting[]).filter((setting) => setting.group === group);
    return [`## ${group}`, ...settings.map(section)].join('\n\n');
  });
  const ofJobs = JOB_GROUPS.map((group) => {
    const fields = (JOB_FIELDS as readonly JobField[]).filter((field) => field.group === group);
    return [`## Each job: ${group}`, ...fields.map(jobSection)].join('\n\n');
  });
  return `${[HEAD, ...groups, JOB_HEAD, ...ofJobs].join('\n\n')}\n`;
}

const HEAD = `# Settings

<!-- Written by npm run docs from src/standards.ts and src/job/fields.ts; edit those. -->

What a shop decides once. The settings stand on the sheet \`Standards\`, where a changed one moves every figure that rests on it, and in
the pane under Shop. A setting that belongs to one machine starts as not set: its cell is blank, a neutral figure is used, and the takeoff
names it until somebody types the machine's own, be it the same; a cleared cell is not set again.
\`archwright takeoff --standards FILE\` takes them from a saved workbook, a .csv or a .json.`;

const JOB_HEAD = `## Each job

Who it is for, and by which rules it is charged. They stand below the settings on the sheet \`Standards\`, and in the pane under Job; \`--job FILE\`
takes them from a .json by the names given here.`;

function jobSection(field: JobField): string {
  const cell = `\`${field.key}\`, cell \`${jobCellName(field.key as JobKey)}\`${taken(field)}.`;
  return [`### ${field.label}`, ...(field.note === '' ? [] : [field.note]), cell].join('\n\n');
}

function taken(field: JobField): string {
  return field.measure === 'choice' ? `: starts as ${field.choices[0]!}; one of ${field.choices.join(', ')}` : '';
}

function section(setting: Setting): string {
  return [
    `### ${setting.label}`,
    setting.note,
    `\`${setting.key}\`, cell \`${cellName(setting.key)}\`: ${starts(setting)}`,
  ].join('\n\n');
}

function starts(setting: Setting): string {
  if (setting.measure === 'text') return `starts as ${setting.value}.`;
  if (setting.measure === 'choice') return `starts as ${setting.value}; one of ${setting.choices.join(', ')}.`;
  const { min, max } = limits(setting, 'in');
  const unit = setting.measure === 'count' ? '' : ` ${settingUnit(setting.measure, 'in')}`;
  const metric =
    setting.metric === undefined
      ? ''
      : `, in a metric workbook as ${setting.metric} ${settingUnit(setting.measure, 'mm')}`;
  const begins = setting.ofMachine ? 'not set at first: until it is, the takeoff says so and uses' : 'starts as';
  const inMetric = setting.ofMachine ? metric.replace(' as ', ' ') : metric;
  return `${begins} ${figure(setting, setting.value)}${unit}${inMetric}; from ${figure(setting, min)} to ${figure(setting, max)}${unit}.`;
}

/** A share stands as the percentage that it is typed as. */
function figure({ measure }: NumberSetting, value: number): string {
  return measure === 'percent'
    ? String(Number((value * 100).toFixed(6)))
    : value.toLocaleString('en-US', { maximumFractionDigits: 4 });
}
