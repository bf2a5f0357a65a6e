import type { BoardsAlike, Part, WoodOrder, WoodPlan } from '../../src/boards/order';

/**
 * An independent look at a plan, piece by piece: outlines from the radii and the angle, where they stand on the board, what lies
 * between them. It shares nothing with the planner but the shape of a plan. Gives sentences; none: the plan can be sawn.
 */

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Lengths this little off are rounding. */
const NEAR = 1e-5;

export function faultsOf(plan: WoodPlan, order: WoodOrder): string[] {
  const faults: string[] = [];
  const made = order.parts.map(() => 0);
  const bought = order.boards.map(() => 0);
  let cents = 0;
  for (const [at, alike] of plan.boards.entries()) {
    bought[alike.board]! += alike.count;
    cents += alike.count * Math.round(order.boards[alike.board]!.price * 100);
    faults.push(...faultsOfBoard(alike, order).map((fault) => `boards ${at + 1}: ${fault}`));
    for (const piece of piecesOf(alike)) made[piece.part]! += alike.count;
  }
  const short = new Map(plan.short.map(({ part, count }) => [part, count]));
  order.parts.forEach(({ count }, part) => {
    const wanted = plan.tooLarge.includes(part) ? 0 : count - (short.get(part) ?? 0);
    if (made[part] !== wanted) faults.push(`part ${part}: ${wanted} wanted, ${made[part]} made`);
  });
  order.boards.forEach(({ limit }, board) => {
    if (limit !== null && bought[board]! > limit) faults.push(`board ${board}: ${bought[board]} of ${limit} on hand`);
  });
  if (Math.abs(plan.cost * 100 - cents) > 1e-6) faults.push(`the boards cost ${cents / 100}, not ${plan.cost}`);
  if (plan.lowerBound > plan.cost + 1e-9) faults.push(`the bound ${plan.lowerBound} is over the cost ${plan.cost}`);
  if (plan.proven !== (plan.cost <= plan.lowerBound && plan.short.length === 0)) faults.push('proven says otherwise');
  return faults;
}

function piecesOf({ sections }: BoardsAlike) {
  return sections.flatMap(({ lanes }) => lanes.flatMap(({ rows }) => rows.flatMap(({ pieces }) => pieces)));
}

function faultsOfBoard({ board, sections, left }: BoardsAlike, { parts, boards, kerf, trim }: WoodOrder): string[] {
  const faults: string[] = [];
  const { width, length } = boards[board]!;
  if (sections.length === 0 || sections.length > 2) faults.push(`${sections.length} sections`);
  if (sections.filter(({ lanes }) => lanes.length > 1).length > 1) faults.push('two sections are ripped');
  let end = trim - kerf;
  for (const section of sections) {
    if (section.at < end + kerf - NEAR)
      faults.push(`a section begins at ${section.at}, less than a saw cut after ${end}`);
    end = section.at + section.length;
    let top = -kerf;
    for (const lane of section.lanes) {
      if (lane.at < top + kerf - NEAR) faults.push(`a lane lies at ${lane.at}, less than a saw cut over ${top}`);
      top = lane.at + lane.width;
      if (section.lanes.length === 1 && lane.width !== width)
        faults.push('a section not ripped is not as wide as its board');
      let last = section.at - kerf;
      for (const row of lane.rows) {
        if (row.at < last + kerf - NEAR) faults.push(`a row begins at ${row.at}, less than a saw cut after ${last}`);
        last = row.at + row.length;
        if (row.width > lane.width + NEAR) faults.push(`a row ${row.width} wide lies in a lane ${lane.width} wide`);
        faults.push(...faultsOfRow(row, parts, kerf));
      }
      if (Math.abs(last + lane.left - end) > NEAR)
        faults.push(`a lane ends at ${last} with ${lane.left} left, not at ${end}`);
    }
    if (top > width + NEAR) faults.push(`lanes reach ${top} on a board ${width} wide`);
  }
  if (end > length - trim + NEAR) faults.push(`sections reach ${end}, and the trim begins at ${length - trim}`);
  else if (Math.abs(end + left - (length - trim)) > Math.max(NEAR, kerf + NEAR))
    faults.push(`${left} is said to be left after ${end}`);
  return faults;
}

function faultsOfRow(
  { at, length, width, pieces }: BoardsAlike['sections'][number]['lanes'][number]['rows'][number],
  parts: readonly Part[],
  kerf: number,
): string[] {
  const faults: string[] = [];
  const outlines = pieces.map((piece) => outline(parts[piece.part]!, piece.at, piece.flipped));
  for (const points of outlines) {
    for (const { x, y } of points) {
      if (x < at - NEAR || x > at + length + NEAR)
        faults.push(`a corner at ${x} is outside its row, ${at} to ${at + length}`);
      if (y < -NEAR || y > width + NEAR) faults.push(`a corner ${y} high is outside its row, ${width} wide`);
    }
  }
  for (let one = 0; one + 1 < outlines.length; one++) {
    for (let other = one + 1; other < Math.min(outlines.length, one + 3); other++) {
      const apart = distance(outlines[one]!, outlines[other]!);
      if (apart < kerf - NEAR) faults.push(`pieces ${one + 1} and ${other + 1} of a row are ${apart} apart`);
    }
  }
  return faults;
}

/** Corners of a part whose leftmost point is at x, its long edge down unless flipped: plane geometry of the ring. */
function outline(part: Part, x: number, flipped: boolean): Point[] {
  if (part.kind === 'straight') return box(x, part.length, part.width);
  const { inside, outside, half } = part;
  // The outside edge is the tangent at the middle of the arc, cut off by the two joints' radial lines; the inside corners lie on them.
  const long = 2 * outside * Math.tan(half);
  const short = 2 * inside * Math.sin(half);
  const width = outside - inside * Math.cos(half);
  const inset = (long - short) / 2;
  const [down, up] = flipped ? [width, 0] : [0, width];
  return [
    { x, y: down },
    { x: x + long, y: down },
    { x: x + long - inset, y: up },
    { x: x + inset, y: up },
  ];
}

function box(x: number, length: number, width: number): Point[] {
  return [
    { x, y: 0 },
    { x: x + length, y: 0 },
    { x: x + length, y: width },
    { x, y: width },
  ];
}

/** Least distance of two convex outlines that don't overlap; 0 or less where they do, by the axes of their sides. */
function distance(one: readonly Point[], other: readonly Point[]): number {
  let most = -Infinity;
  for (const [a, b] of [...sides(one), ...sides(other)]) {
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const across = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
    const along = (points: readonly Point[]) => points.map(({ x, y }) => x * across.x + y * across.y);
    const ones = along(one);
    const others = along(other);
    most = Math.max(most, Math.min(...others) - Math.max(...ones), Math.min(...ones) - Math.max(...others));
  }
  return most;
}

function sides(points: readonly Point[]): [Point, Point][] {
  return points.map((point, at) => [point, points[(at + 1) % points.length]!]);
}
