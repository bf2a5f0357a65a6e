import { canGo, reach, STEPS, type PaneState, type Step } from '../state';

const STEP_NAMES: Readonly<Record<Step, string>> = {
  list: 'List',
  headings: 'Headings',
  openings: 'Openings',
  fill: 'Fill',
};

const WIDTH = 360;
const RISE = 22;
const BAND = 36;
const HALF = WIDTH / 2 - 2;
const OUTER = (HALF * HALF + RISE * RISE) / (2 * RISE);
const INNER = OUTER - BAND;
const TURN = 2 * Math.asin(HALF / OUTER);
const CENTER_Y = OUTER + 2;
const JOINT = 0.0022;

function point(radius: number, turn: number): string {
  return `${(WIDTH / 2 + radius * Math.sin(turn)).toFixed(2)} ${(CENTER_Y - radius * Math.cos(turn)).toFixed(2)}`;
}

function segment(at: number): string {
  const from = -TURN / 2 + (TURN / STEPS.length) * at + JOINT;
  const to = from + TURN / STEPS.length - 2 * JOINT;
  return [
    `M ${point(OUTER, from)}`,
    `A ${OUTER} ${OUTER} 0 0 1 ${point(OUTER, to)}`,
    `L ${point(INNER, to)}`,
    `A ${INNER} ${INNER} 0 0 0 ${point(INNER, from)} Z`,
  ].join(' ');
}

/** The steps as the four segments of a glued-up arch: done ones are wood, the one at hand is marked, the rest are drawn. */
export function StepArch({ state, go }: { readonly state: PaneState; readonly go: (step: Step) => void }) {
  const at = STEPS.indexOf(state.step);
  const furthest = STEPS.indexOf(reach(state));
  const look = (step: number) =>
    step === at ? 'at-hand' : step < at || (state.filled && step <= furthest) ? 'done' : 'ahead';
  return (
    <nav class="arch" aria-label="Steps of the takeoff">
      <svg viewBox={`0 0 ${WIDTH} 62`} aria-hidden="true" focusable="false">
        {STEPS.map((step, index) => (
          <path key={step} class={`segment ${look(index)}`} d={segment(index)} />
        ))}
      </svg>
      <ol>
        {STEPS.map((step, index) => (
          <li key={step} class={`place-${index} ${look(index)}`}>
            <button
              type="button"
              aria-current={index === at ? 'step' : undefined}
              disabled={index !== at && !canGo(state, step)}
              onClick={() => go(step)}
            >
              <span>{STEP_NAMES[step]}</span>
              {look(index) === 'done' && <span class="hidden">, done</span>}
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}
