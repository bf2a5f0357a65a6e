import { lengthText } from '../lengthText';
import { markOrRow } from '../schedule/opening';
import { cautionsFor, NOT_A_SUBSTITUTE } from '../takeoff/cautions';
import { setupFlags } from '../takeoff/setupFlags';
import type { Setup } from '../takeoff/setups';
import { setupSteps } from '../takeoff/setupSteps';
import type { Takeoff } from '../takeoff/takeoff';
import { settingUnit } from './format';
import type { Cell } from './sheet';

/** One set-up as the person at the machine reads it. */
export function setupPage(setup: Setup, { standards }: Takeoff): (Cell | null)[][] {
  const { unit } = standards;
  const length = (value: number) =>
    unit === 'in' ? `${lengthText(value, unit, 32)} in (${value.toFixed(3)})` : `${lengthText(value, unit)} mm`;
  const line = (label: string, text: string): Cell[] => [
    { value: '', style: 'text' },
    { value: label, style: 'text', format: '@' },
    { value: text, style: 'text', format: '@' },
  ];
  const guides = setup.guides?.ok
    ? [
        line(
          'Guide boards',
          `inside ${length(setup.guides.value.inside)}, outside ${length(setup.guides.value.outside)}`,
        ),
      ]
    : [];
  const pieces = setup.pieces.map(({ count, runLength, ...opening }) =>
    line(markOrRow(opening), `${count} ${count === 1 ? 'piece' : 'pieces'}, ${length(runLength)} along the center`),
  );
  const flags = setupFlags(setup, standards);
  return [
    [null, { value: setup.name, style: 'title' }],
    [null, { value: 'Figures on this page are as the takeoff was filled.', style: 'note' }],
    line('Knife', setup.knife),
    ...(setup.insideRadius === null
      ? []
      : [line('Molding', `inside radius ${length(setup.insideRadius)}, thin edge to the ${standards.thinEdge}`)]),
    ...guides,
    line(
      'Feed',
      `${Number(standards.feed.toFixed(2))} ${settingUnit('feed', unit)}, ${setup.cutsCenter.toFixed(1)} knife cuts per inch at the center, ${setup.cutsOutside.toFixed(1)} at the outside edge`,
    ),
    line('Passes', String(setup.passes)),
    line('Minutes', `${setup.runMinutes.toFixed(1)} running, ${standards.setupMinutes} setting up`),
    ...flags.map((flag): Cell[] => [
      { value: '', style: 'text' },
      { value: 'Look at', style: 'attention' },
      { value: flag, style: 'attention', format: '@' },
    ]),
    [null, { value: 'Pieces to run', style: 'group' }],
    ...pieces,
    [null, { value: 'Steps', style: 'group' }],
    ...setupSteps(setup, standards).map((step, at): (Cell | null)[] => [
      { value: at + 1, style: 'text', format: '0' },
      source(step),
      { value: step.text, style: 'text', format: '@' },
    ]),
    [null, { value: 'Cautions', style: 'group' }],
    ...cautionsFor(
      ...(setup.insideRadius === null ? [] : ['glue-up' as const]),
      'setting up',
      'before power',
      'running',
    ).map((caution): (Cell | null)[] => [null, source(caution), { value: caution.text, style: 'text', format: '@' }]),
    [null, null, { value: NOT_A_SUBSTITUTE, style: 'attention' }],
  ];
}

function source(of: { readonly source: string }): Cell {
  return { value: of.source, style: 'note', format: '@', wrap: true };
}
