/** A change that means nothing. */
interface Explained {
  readonly file: string;
  readonly text: string;
  readonly change: string;
  readonly why: string;
}

/**
 * Changes that no test can notice, because the changed line gives the same: the line as it stands, the change, and why. One that
 * a test notices after all is reported, and goes.
 */
export const EXPLAINED: readonly Explained[] = [
  {
    file: 'src/arc.ts',
    text: 'if (radius <= half) return ok(half);',
    change: '<= → <',
    why: 'At radius = half the formula below gives half², divided by half: the same.',
  },
  {
    file: 'src/arc.ts',
    text: 'return ok(rise >= diameter ? 0 : 2 * Math.sqrt(rise * (diameter - rise)));',
    change: '>= → >',
    why: 'At rise = diameter the root is that of 0.',
  },
  {
    file: 'src/arc.ts',
    text: 'return depth < 0 ? upright - depth : ((half - x) * (half + x)) / (upright + depth);',
    change: '< → <=',
    why: 'At depth 0 both are the upright, half² − x² being its square.',
  },
];
