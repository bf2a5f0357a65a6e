/** Lengths of casings worked out apart from the program, in closed form; an ellipse by Simpson's rule. Inches and radians. */

export type Shape =
  'segmental' | 'half round' | 'quarter round' | 'round' | 'elliptical' | 'three-centered' | 'pointed';
export interface Arch {
  readonly shape: Shape;
  readonly span: number;
  /** Of the opening, also where the shape gives it. */
  readonly rise: number;
}
type Stop = 'radial' | 'level' | 'legs';

/** The opening's own radius; null where it has several. */
export function radiusOf({ shape, span, rise }: Arch): number | null {
  switch (shape) {
    case 'segmental':
      return (span ** 2 / 4 + rise ** 2) / (2 * rise);
    case 'pointed':
      return (span ** 2 / 4 + rise ** 2) / span;
    case 'quarter round':
      return span;
    case 'elliptical':
    case 'three-centered':
      return null;
    default:
      return span / 2;
  }
}

/** Length at `offset` outside the opening's edge. A pointed head runs on to its center line unless `runOn` is false. */
export function lengthOf(arch: Arch, offset: number, stop: Stop = 'radial', runOn = true): number {
  const { shape, span, rise } = arch;
  const half = span / 2;
  const radius = radiusOf(arch);
  switch (shape) {
    case 'segmental': {
      const outer = radius! + offset;
      if (stop === 'level') return 2 * outer * Math.acos((radius! - rise) / outer);
      if (stop === 'legs') return 2 * outer * Math.asin((half + offset) / outer);
      return outer * 4 * Math.atan((2 * rise) / span);
    }
    case 'pointed':
      return runOn
        ? 2 * (radius! + offset) * Math.acos((radius! - half) / (radius! + offset))
        : 2 * (radius! + offset) * Math.acos((radius! - half) / radius!);
    case 'quarter round':
      return ((radius! + offset) * Math.PI) / 2;
    case 'half round':
      return (radius! + offset) * Math.PI;
    case 'round':
      return (radius! + offset) * 2 * Math.PI;
    case 'elliptical':
      return halfEllipse(half, rise) + Math.PI * offset;
    case 'three-centered': {
      const slant = Math.hypot(half, rise);
      const haunch = (slant ** 2 - (half - rise) * slant) / (2 * half);
      const crown = (slant ** 2 + (half - rise) * slant) / (2 * rise);
      const turn = Math.atan2(half - haunch, crown - rise);
      return 2 * ((haunch + offset) * (Math.PI / 2 - turn) + (crown + offset) * turn);
    }
  }
}

/** Half the perimeter of an ellipse by Simpson's rule over a quarter of it. */
function halfEllipse(across: number, up: number): number {
  const steps = 400;
  const at = (step: number) => {
    const turn = (step / steps) * (Math.PI / 2);
    return Math.hypot(across * Math.sin(turn), up * Math.cos(turn));
  };
  let sum = at(0) + at(steps);
  for (let step = 1; step < steps; step++) sum += at(step) * (step % 2 === 0 ? 2 : 4);
  return (2 * sum * (Math.PI / 2 / steps)) / 3;
}
