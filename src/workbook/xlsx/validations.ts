import type { Validation } from '../sheet';
import { escapeText } from './xml';

/** What a range of cells may hold, as a file says it. */
export function validationXml({ range, rule, message }: Validation): string {
  const kind = rule.kind === 'list' ? 'list' : rule.whole ? 'whole' : 'decimal';
  const bounds =
    rule.kind === 'list'
      ? `<formula1>${escapeText(`"${rule.choices.join(',')}"`)}</formula1>`
      : `<formula1>${rule.min}</formula1><formula2>${rule.max}</formula2>`;
  return (
    `<dataValidation type="${kind}" allowBlank="1" showErrorMessage="1" error="${escapeText(message)}" sqref="${range}">` +
    `${bounds}</dataValidation>`
  );
}

/** The rule that a file's words stand for; null for kinds that are not kept. */
export function ruleOf(type: string, one: string, other: string): Validation['rule'] | null {
  if (type === 'list') {
    const quoted = /^"(.*)"$/s.exec(one.trim())?.[1];
    return quoted === undefined ? null : { kind: 'list', choices: quoted.split(',') };
  }
  if (type !== 'decimal' && type !== 'whole') return null;
  if (one === '' || other === '' || Number.isNaN(Number(one)) || Number.isNaN(Number(other))) return null;
  return { kind: 'number', min: Number(one), max: Number(other), ...(type === 'whole' ? { whole: true } : {}) };
}
