import { lengthInWords } from '../lengthText';
import type { Standards } from '../standards';
import { COMMON_PRACTICE } from './cautions';
import type { Setup } from './setups';

/** One step at the machine, in order, and where it comes from. */
export interface SetupStep {
  readonly text: string;
  readonly source: string;
}

/** How a set-up is made, from the disconnected cutter to the first piece, with the set-up's own figures. */
export function setupSteps(setup: Setup, standards: Standards): readonly SetupStep[] {
  const { unit, thinEdge, clearance, knives } = standards;
  const length = (value: number) => lengthInWords(value, unit, 32);
  const steps: (SetupStep | null)[] = [
    practice('Disconnect the cutter and lock it out.'),
    {
      text:
        knives === 1
          ? `Mount one knife, ${setup.knife}, and a counterweight of the same weight opposite it. Tighten and check the balance.`
          : `Mount ${knives} knives, ${setup.knife}, of the same weight, so that they cut in one circle. Tighten and check the balance.`,
      source: '29 CFR 1910.213(s)(2)',
    },
    practice('The bevel of the knife faces the infeed side.'),
    setup.guides?.ok
      ? practice(
          `Lay the guide boards on the bed, R ${length(setup.guides.value.inside)} inside and R ${length(setup.guides.value.outside)} outside, ` +
            "their center line under the lowest point of the knife's swing. Fix each with three screws.",
        )
      : null,
    setup.guides?.ok
      ? practice(
          `See that a blank slides through with ${length(clearance)} clear on each edge, without binding or play.`,
        )
      : null,
    setup.insideRadius === null
      ? practice('Set the fences to the width of the stock, parallel to the feed.')
      : practice(`The thin edge of the molding lies to the ${thinEdge} of the radius. Check it against the order.`),
    practice('Wax the bed and the guides.'),
    practice('Dry run: knife up, cutter without power. Feed one blank through on the feed rollers from end to end.'),
    {
      text: 'Put the hood on and fasten it, check the feed roll guards, then start dust collection. Only then connect the cutter.',
      source: '29 CFR 1910.213; 8 CCR 4318',
    },
    practice(
      setup.passes === 1
        ? 'Run the test piece in one pass, check the profile, then run the pieces.'
        : `Run the test piece in ${setup.passes} passes, a little deeper each time, check the profile, then run every piece at each depth before setting the next.`,
    ),
    practice('Check knife, guides and screws for tightness again about every two hours of running.'),
  ];
  return steps.filter((step) => step !== null);
}

function practice(text: string): SetupStep {
  return { text, source: COMMON_PRACTICE };
}
