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
  {
    file: 'src/head/fourCentered.ts',
    text: 'if (!(least < most)) {',
    change: '< → <=',
    why: 'Where both limits are one, no haunch lies between them either.',
  },
  {
    file: 'src/head/fourCentered.ts',
    text: 'if (!(r > least && r < most)) {',
    change: '> → >=',
    why: 'The least is 0, which is no haunch, or rests on √3, which no size is equal to.',
  },
  {
    file: 'src/head/fourCentered.ts',
    text: 'if (!(upper > 0)) {',
    change: '> → >=',
    why: 'An angle reckoned from roots is next to 0, not 0.',
  },
  {
    file: 'src/blank/width.ts',
    text: 'return half <= Math.PI / 2 ? of.width + of.inside * versine : of.outside * versine;',
    change: '<= → <',
    why: 'At 90° the versine is 1, and inside radius and width together are the outside radius.',
  },
  {
    file: 'src/blank/segments.ts',
    text: 'const fits = (count: number) => sectorWidth(of.value, halfSegment(angle, count)) <= boardWidth + slack;',
    change: '<= → <',
    why: 'They are equal only where a board misses by the slack to the last bit; within it either answer is right.',
  },
  {
    file: 'src/blank/nest.ts',
    text: 'return left < 0 ? 0 : 1 + Math.floor(left / nestPitch(of, half, kerf));',
    change: '< → <=',
    why: 'It is 0 only where a board misses by the slack to the last bit; within it either answer is right.',
  },
  {
    file: 'src/blank/nest.ts',
    text: 'if (-inner * cosine <= of.inside) return inner;',
    change: '<= → <',
    why: 'There the nearest point of the end is the corner itself: its distance is reach / sine, too.',
  },
  {
    file: 'src/blank/nest.ts',
    text: 'if (-outer * cosine >= of.outside) return outer;',
    change: '>= → >',
    why: 'There the nearest point of the end is the corner itself: its distance is reach / sine, too.',
  },
  {
    file: 'src/standards.ts',
    text: 'return Number(limit.toPrecision(6));',
    change: '6 → 7',
    why: 'It drops the noise of a conversion: no limit has seven digits.',
  },
  {
    file: 'src/feetInches.ts',
    text: 'return ok({ negative: inches < 0 && (whole > 0 || over > 0), whole, fraction });',
    change: '< → <=',
    why: 'Zero has neither whole inches nor parts.',
  },
  {
    file: 'src/dimension.ts',
    text: 'const bareNumber = inches[2] === undefined ? inches[1] : undefined;',
    change: '2 → 3',
    why: 'Groups 2 and 3 are the two figures of one fraction: matched together.',
  },
  {
    file: 'src/standardsJson.ts',
    text: 'for (let at = 0; at < text.length; at += 1) {',
    change: '< → <=',
    why: 'Behind the last character there is none to count.',
  },
  {
    file: 'src/takeoff/hands.ts',
    text: "return letter === undefined ? word?.toLowerCase() : letter.toLowerCase() === 'l' ? 'left' : 'right';",
    change: '=== → !==',
    why: 'Hands are taken only where there are as many of each.',
  },
  {
    file: 'src/takeoff/guideSets.ts',
    text: 'up: Math.min(guideTolerance, flatter > 0 ? radius(flatter) - r : Infinity),',
    change: '> → >=',
    why: 'The radius of a sagitta of 0 is infinite.',
  },
  {
    file: 'src/takeoff/guideSets.ts',
    text: 'down: Math.min(guideTolerance, r - (rounder < b ? radius(rounder) : b)),',
    change: '< → <=',
    why: 'The radius of the sagitta b over a half chord b is b.',
  },
  {
    file: 'src/takeoff/guideSets.ts',
    text: 'return r > b ? (b * b) / (r + Math.sqrt((r - b) * (r + b))) : b;',
    change: '> → >=',
    why: 'The sagitta at r = b is b by either.',
  },
  {
    file: 'src/takeoff/guideSets.ts',
    text: 'if (radius > end) {',
    change: '> → >=',
    why: 'They are equal only to the last bit of the billionth that is allowed.',
  },
  {
    file: 'src/takeoff/guideSets.ts',
    text: 'if (Math.abs(radius - inside) <= SAME_SIZE) return { name: guide, radius: ring.inside, owned: has !== null };',
    change: '<= → <',
    why: 'Half a thousandth between two radii is held as a little more or less than that, never as it.',
  },
  {
    file: 'src/takeoff/factors.ts',
    text: 'if (own === null || ownCost === null || share === null) continue;',
    change: '|| → &&',
    why: 'An opening has all three or none.',
  },
  {
    file: 'src/takeoff/costKinds.ts',
    text: 'const rows = openings.flatMap(({ cost, share }) => (cost && share ? [{ cost, share }] : []));',
    change: '&& → ||',
    why: 'An opening has both or none.',
  },
  {
    file: 'src/takeoff/attention.ts',
    text: 'const isShort = (length: number) => length < standards.shortestPiece - NEARLY;',
    change: '< → <=',
    why: 'They are equal only to the last bit of the billionth that is allowed.',
  },
  {
    file: 'src/head/pointed.ts',
    text: 'fits: (span, rise) => rise > span / 2 && !isHalfSpan(span, rise),',
    change: '> → >=',
    why: 'Half the span is refused by the second half.',
  },
  {
    file: 'src/head/threeCentered.ts',
    text: 'fits: (span, rise) => rise > 0 && rise < span / 2 && !isHalfSpan(span, rise),',
    change: '< → <=',
    why: 'Half the span is refused by the last part.',
  },
  {
    file: 'src/takeoff/setups.ts',
    text: "return one.knife.localeCompare(other.knife, 'en') || (one.insideRadius ?? -1) - (other.insideRadius ?? -1);",
    change: '1 → 2',
    why: 'Any figure below every radius puts straight set-ups first.',
  },
  {
    file: 'src/takeoff/setups.ts',
    text: 'if (inputs === null || own === null) return [];',
    change: '|| → &&',
    why: 'An opening has both or none.',
  },
  {
    file: 'src/takeoff/arcPieces.ts',
    text: 'const isShort = (angle: number) => radians(angle) * center < shop.shortestPiece - NEARLY;',
    change: '< → <=',
    why: 'They are equal only to the last bit of the billionth that is allowed.',
  },
  {
    file: 'src/takeoff/arcPieces.ts',
    text: 'across > shop.largestAcross + NEARLY || deep > shop.largestHigh + NEARLY || finished > shop.largestTurn + NEARLY',
    change: '> → >=',
    why: 'They are equal only to the last bit of the billionth that is allowed.',
  },
];
