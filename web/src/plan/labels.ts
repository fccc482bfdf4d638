/** Where the letters of devices go: the first good place about each mark, on no other letters and on no mark. All in drawn millimetres. */

export interface Box { x0: number; y0: number; x1: number; y1: number }
export type Spot = readonly [number, number];
export interface Mark { id: string; at: Spot; wide: number; /** How far the edge of its letters keeps from it, if farther than others. */ clear?: number; /** In the drawing, y downward. [rad] */ toward: number; /** The end of the stroke where it looks. */ look: Spot | null }
export interface Wall { from: Spot; to: Spot; thick: number }
export interface Ground { sheet: Box; names: readonly Box[]; walls: readonly Wall[]; /** How much larger than on paper marks are. */ grown: number }

/** Of the box with the letters, and how far its edge keeps from its mark. [mm on paper] */
export const HIGH_MM = 3.8;
const CLEAR_MM = 2;
const DOT_MM = 1;
const LOOK_MM = 1.3;
const APART_MM = 0.3;
const STEP_MM = 2;
const RINGS = 7;
const STEPS: readonly Spot[] = [[1, 0], [0, 1], [-1, 0], [0, -1], [0.7, 0.7], [-0.7, 0.7], [-0.7, -0.7], [0.7, -0.7]];
/** What it costs to lie on a name or on a wall wholly, to be a step farther off, and what the line to the letters crosses. */
const COST = { name: 3, wall: 1, ring: 0.06, rank: 0.004, crossed: 0.3, walled: 0.6 };
const GOOD = 0.02;
/** A mark so near to the axis of a wall is in its opening: its letters may go to either side. */
const ON_AXIS_MM = 0.2;

export const boxAbout = ([x, y]: Spot, wide: number, high: number): Box => ({ x0: x - wide / 2, y0: y - high / 2, x1: x + wide / 2, y1: y + high / 2 });

export function shared(a: Box, b: Box): number {
  const wide = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const high = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** By mark: where the middle of its letters is, seen from the mark. */
export function laid(marks: readonly Mark[], ground: Ground): Map<string, Spot> {
  const grown = ground.grown;
  const taken: Box[] = marks.flatMap((one) => [
    boxAbout(one.at, 2 * DOT_MM * grown, 2 * DOT_MM * grown),
    ...(one.look ? [boxAbout(one.look, 2 * LOOK_MM * grown, 2 * LOOK_MM * grown)] : []),
  ]);
  const found = new Map<string, Spot>();
  for (const mark of marks) {
    const spot = best(mark, ground, taken);
    taken.push(boxAbout(spot, mark.wide * grown, HIGH_MM * grown));
    found.set(mark.id, [spot[0] - mark.at[0], spot[1] - mark.at[1]]);
  }
  return found;
}

function best(mark: Mark, ground: Ground, taken: readonly Box[]): Spot {
  let found: Spot | null = null;
  let least = Infinity;
  let worst: Spot = mark.at;
  let worstCost = Infinity;
  for (let ring = 0; ring < RINGS && least >= GOOD; ring += 1) {
    for (const [rank, spot] of about(mark, ring, ground.grown).entries()) {
      const cost = costOf(spot, mark, ground, taken) + COST.rank * rank + COST.ring * ring;
      if (cost < worstCost) [worst, worstCost] = [spot, cost];
      if (cost < least && isFree(spot, mark, ground, taken)) [found, least] = [spot, cost];
    }
  }
  return found ?? nearestFree(mark, ground, taken) ?? worst;
}

/** The places of one ring about a mark, the direction that is liked best first. */
function about(mark: Mark, ring: number, grown: number): Spot[] {
  const quarter = (Math.round(mark.toward / (Math.PI / 2)) * Math.PI) / 2;
  const [cos, sin] = [Math.cos(quarter), Math.sin(quarter)];
  const away = (share: number, size: number) =>
    grown * ((size / 2 + (mark.clear ?? CLEAR_MM)) * share + (Math.abs(share) > 0.1 ? Math.sign(share) * ring * STEP_MM : 0));
  return STEPS.map(([sx, sy]) => [mark.at[0] + away(sx * cos - sy * sin, mark.wide), mark.at[1] + away(sx * sin + sy * cos, HIGH_MM)] as const);
}

function isFree(spot: Spot, mark: Mark, { sheet, grown }: Ground, taken: readonly Box[]): boolean {
  const box = boxAbout(spot, mark.wide * grown, HIGH_MM * grown);
  if (box.x0 < sheet.x0 || box.y0 < sheet.y0 || box.x1 > sheet.x1 || box.y1 > sheet.y1) return false;
  const apart = boxAbout(spot, (mark.wide + 2 * APART_MM) * grown, (HIGH_MM + 2 * APART_MM) * grown);
  return taken.every((other) => shared(apart, other) === 0);
}

function costOf(spot: Spot, mark: Mark, { names, walls, grown }: Ground, taken: readonly Box[]): number {
  const box = boxAbout(spot, mark.wide * grown, HIGH_MM * grown);
  const area = (box.x1 - box.x0) * (box.y1 - box.y0);
  let cost = (COST.name * names.reduce((sum, one) => sum + shared(box, one), 0)) / area;
  for (const wall of walls) {
    cost += COST.wall * onWall(box, wall);
    if (offLine(mark.at, wall) > ON_AXIS_MM && crosses(mark.at, spot, wall.from, wall.to)) cost += COST.walled;
  }
  for (const other of taken) {
    const middle: Spot = [(other.x0 + other.x1) / 2, (other.y0 + other.y1) / 2];
    if (Math.hypot(middle[0] - mark.at[0], middle[1] - mark.at[1]) > 2.5 * grown && runsOver(mark.at, spot, other)) cost += COST.crossed;
  }
  return cost;
}

/** The free place of the whole sheet that is nearest, looked for on a lattice. */
function nearestFree(mark: Mark, ground: Ground, taken: readonly Box[]): Spot | null {
  const step = (STEP_MM / 2) * ground.grown;
  let found: Spot | null = null;
  let least = Infinity;
  for (let x = ground.sheet.x0; x <= ground.sheet.x1; x += step) {
    for (let y = ground.sheet.y0; y <= ground.sheet.y1; y += step) {
      const away = Math.hypot(x - mark.at[0], y - mark.at[1]);
      if (away < least && isFree([x, y], mark, ground, taken)) [found, least] = [[x, y], away];
    }
  }
  return found;
}

/** What share of a box lies on a wall, by fifteen of its points. */
function onWall(box: Box, wall: Wall): number {
  let inside = 0;
  for (let i = 0; i < 5; i += 1) {
    for (let j = 0; j < 3; j += 1) {
      const at: Spot = [box.x0 + ((i + 0.5) / 5) * (box.x1 - box.x0), box.y0 + ((j + 0.5) / 3) * (box.y1 - box.y0)];
      if (offLine(at, wall) <= wall.thick / 2) inside += 1;
    }
  }
  return inside / 15;
}

/** How far a place is from a wall's axis. */
function offLine([x, y]: Spot, { from, to }: Wall): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const share = Math.min(1, Math.max(0, ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy);
}

const side = (a: Spot, b: Spot, c: Spot) => Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
const crosses = (a: Spot, b: Spot, c: Spot, d: Spot) => side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

/** Whether a line runs over a box. */
function runsOver(a: Spot, b: Spot, box: Box): boolean {
  const has = ([x, y]: Spot) => x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1;
  return has(b) || crosses(a, b, [box.x0, box.y0], [box.x1, box.y1]) || crosses(a, b, [box.x0, box.y1], [box.x1, box.y0]);
}

/** From a mark to the edge of its letters; null where they are close by. */
export function leader([x, y]: Spot, wide: number): Spot | null {
  const share = 1 - Math.min(1, wide / 2 / (Math.abs(x) || 1e-9), HIGH_MM / 2 / (Math.abs(y) || 1e-9));
  return Math.hypot(x, y) * share > CLEAR_MM + 0.1 ? [x * share, y * share] : null;
}
