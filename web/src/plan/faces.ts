/** Where things are on the plan, and which wall face is nearest: for drawing and dragging only; the server decides. */
import type { Device, Opening, Site, Wall } from "../server/types";
import { point, type Point } from "../units";

export const FACE_GAP = 0.04;
const CLEAR_OF_OPENING = 0.08;

export interface Stand { storey: string; at: Point; height: number; heading: number }
export interface Face { wall: string; side: "left" | "right"; offset: number; away: number }

interface Axis { ax: number; ay: number; ux: number; uy: number; length: number }

function axis(wall: Wall): Axis {
  const [[ax, ay], [bx, by]] = wall.line_m as [[number, number], [number, number]];
  const length = Math.hypot(bx - ax, by - ay) || 1e-9;
  return { ax, ay, ux: (bx - ax) / length, uy: (by - ay) / length, length };
}

export function alongWall(wall: Wall, offset: number, left: number): Point {
  const { ax, ay, ux, uy } = axis(wall);
  return point(ax + ux * offset - uy * left, ay + uy * offset + ux * left);
}

/** Straight off a face of a wall. [deg] */
export function straightOff(wall: Wall, side: "left" | "right"): number {
  const { ux, uy } = axis(wall);
  const sign = side === "left" ? 1 : -1;
  return (Math.atan2(sign * ux, sign * -uy) * 180) / Math.PI;
}

export function standOf(site: Site, device: Device): Stand | null {
  const mount = device.mount;
  if (mount.on === "wall") {
    const wall = site.walls?.find((one) => one.id === mount.wall);
    if (!wall) return null;
    const sign = mount.side === "left" ? 1 : -1;
    return {
      storey: wall.storey, height: mount.height_m, at: alongWall(wall, mount.offset_m, sign * ((wall.thickness_m ?? 0) / 2 + FACE_GAP)),
      heading: device.heading_deg ?? straightOff(wall, mount.side),
    };
  }
  if (mount.on === "opening") {
    const opening = site.openings?.find((one) => one.id === mount.opening);
    const wall = site.walls?.find((one) => one.id === opening?.wall);
    if (!opening || !wall) return null;
    return { storey: wall.storey, at: alongWall(wall, opening.offset_m, 0), height: (opening.head_m ?? 2) - 0.1, heading: straightOff(wall, "left") };
  }
  const [x, y] = mount.at_m as [number, number];
  const storey = site.storeys.find((one) => one.id === mount.storey);
  const height = mount.on === "ceiling" ? (storey?.height_m ?? 2.4) : (mount.height_m ?? 1);
  return { storey: mount.storey, at: point(x, y), height, heading: device.heading_deg ?? 0 };
}

/** The wall face nearest to a place of a storey, clear of openings at that height. */
export function nearestFace(site: Site, storey: string, at: Point, height: number): Face | null {
  let best: Face | null = null;
  for (const wall of site.walls ?? []) {
    if (wall.storey !== storey) continue;
    const { ax, ay, ux, uy, length } = axis(wall);
    const run = (at[0] - ax) * ux + (at[1] - ay) * uy;
    const off = -(at[0] - ax) * uy + (at[1] - ay) * ux;
    const offset = clear(wall, site.openings ?? [], Math.min(length - 0.02, Math.max(0.02, run)), height);
    const side = off >= 0 ? "left" : "right";
    const away = Math.hypot(run - offset, Math.abs(off) - (wall.thickness_m ?? 0) / 2);
    if (best === null || away < best.away) best = { wall: wall.id, side, offset: round(offset), away };
  }
  return best;
}

function clear(wall: Wall, openings: readonly Opening[], offset: number, height: number): number {
  for (const one of openings) {
    if (one.wall !== wall.id || height < (one.sill_m ?? 0) || height > (one.head_m ?? 2)) continue;
    const half = one.width_m / 2 + CLEAR_OF_OPENING;
    if (Math.abs(offset - one.offset_m) < half) return one.offset_m + (offset < one.offset_m ? -half : half);
  }
  return offset;
}

const round = (value: number) => Math.round(value * 1000) / 1000;
