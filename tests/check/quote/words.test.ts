import { describe, expect, it } from 'vitest';
import { namedIn } from '../../../src/check/quote/words';
import type { Opening } from '../../../src/schedule/opening';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

/** What a right line in these words is found to contradict. */
function contradicted(description: string, given: Partial<Opening> = {}): string[] {
  const from = takeoff([opening({ head: 'segmental', span: 36, rise: 6, mark: 'W1', ...given })], defaultStandards());
  const check = checkRows(
    [
      ['Mark', 'Description', 'Qty', 'Amount'],
      ['W1', description, 1, from.openings[0]!.cost!.unitPrice],
    ],
    from,
  );
  for (const { cause, dollars } of check.causes) expect([cause, dollars]).toEqual([cause, null]);
  return check.lines[0]!.findings.flatMap(({ verdict, text }) => (verdict === 'differs' ? [text] : []));
}

describe('the words of a line', () => {
  it.each<[string, Partial<Opening>, string]>([
    ['Arch casing, walnut', { species: 'Cherry' }, 'the line says walnut, the takeoff has Cherry'],
    ['white oak casing', { species: 'Red oak' }, 'the line says white oak, the takeoff has Red oak'],
    ['Half round casing', {}, 'the line says half round, the takeoff has a segmental head'],
    ['1/2 round arch', {}, 'the line says half round, the takeoff has a segmental head'],
    ['casing for elliptical window', {}, 'the line says elliptical, the takeoff has a segmental head'],
    ['arch casing, no legs', { ends: 'legs', leg: 40 }, 'the line says no legs, the takeoff has legs'],
  ])('"%s" contradict the opening', (description, given, text) => {
    expect(contradicted(description, given)).toEqual([text]);
  });

  it.each<[string, Partial<Opening>]>([
    ['', {}],
    ['Arch casing', { species: 'Cherry' }],
    ['oak casing', { species: 'Red oak' }],
    ['Full round casing, gable', { head: 'round', span: 30, rise: null }],
    ['poplar, not oak', {}],
    ['not oak', {}],
    ['poplar, cherry stain', {}],
    ['casing with a cherry stain', {}],
    ['Casing for the house in Walnut Street', {}],
    ['to match oak floor', {}],
    ['eyebrow casing', {}],
    ['radius casing, round top, long point', {}],
    ['half round molding', {}],
    ['segmental, where the drawing has a half round', {}],
    ['quarter sawn, straight grain', {}],
    ['head with no legs', { ends: 'radial' }],
    ['mahogany', { species: 'Mahogany' }],
  ])('"%s" accuse nobody', (description, given) => expect(contradicted(description, given)).toEqual([]));

  it('name a wood and a head, however they are spelled', () => {
    expect(namedIn({ description: 'GOTHIC head, Hard Maple' })).toMatchObject({
      head: 'pointed',
      species: 'hard maple',
    });
    expect(namedIn({ description: '3-centered arch' })).toMatchObject({ head: 'three-centered', species: null });
  });
});
