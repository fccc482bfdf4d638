import { batch, useComputed } from "@preact/signals";
import type { RefObject } from "preact";
import { enqueue } from "../edits/queue";
import { live } from "../server/now";
import type { Operation, ScreenStorey, Wall } from "../server/types";
import * as state from "../state";
import { point } from "../units";
import { words } from "../words";
import { held, hold, pointed, put, release } from "./held";
import { drawn } from "./view";

const STEP_M = 0.05;
/** A wall is pressed on a stroke at least so wide. [mm] */
export const WALL_MM = 3;

interface Props { svg: RefObject<SVGSVGElement | null>; storey: ScreenStorey }

/** Each wall can be chosen, dragged to its side, or moved by arrow keys. */
export function WallMarks({ svg, storey }: Props) {
  const site = state.site.value;
  if (!site || state.step.value !== "Survey") return null;
  return (
    <g class="walls">
      {(site.walls ?? []).filter((one) => one.storey === storey.storey).map((wall) => (
        <WallMark key={wall.id} svg={svg} storey={storey} wall={wall} />
      ))}
    </g>
  );
}

const endsOf = (wall: Wall) => wall.line_m as [[number, number], [number, number]];
const middleOf = (wall: Wall) => {
  const [[ax, ay], [bx, by]] = endsOf(wall);
  return [(ax + bx) / 2, (ay + by) / 2] as const;
};

/** A wall's ends, drawn about its middle. [mm] */
export function across(wall: Wall, storey: ScreenStorey): [[number, number], [number, number]] {
  const [[ax, ay], [bx, by]] = endsOf(wall);
  const [x, y] = [((bx - ax) / 2) * storey.mm_per_m, ((ay - by) / 2) * storey.mm_per_m];
  return [[-x, -y], [x, y]];
}

function WallMark({ svg, storey, wall }: Props & { wall: Wall }) {
  const [[ax, ay], [bx, by]] = endsOf(wall);
  const length = Math.hypot(bx - ax, by - ay) || 1;
  const normal = [-(by - ay) / length, (bx - ax) / length] as const;
  const end = (x: number, y: number) => drawn(storey, point(x, y)).map((n) => n.toFixed(2)).join(" ");
  const isChosen = state.chosen.value?.of === "walls" && state.chosen.value.id === wall.id;
  const isHeld = useComputed(() => held.value?.of === "walls" && held.value.id === wall.id).value;
  const operation = (by_m: number): Operation => ({ do: "move-wall", wall: wall.id, by_m: Math.round(by_m * 1000) / 1000 });
  const take = (event: PointerEvent) => {
    if (!svg.current) return;
    event.stopPropagation();
    const handle = event.currentTarget as Element;
    handle.setPointerCapture(event.pointerId);
    const [x, y] = middleOf(wall);
    let by = 0;
    batch(() => {
      state.chosen.value = { of: "walls", id: wall.id };
      hold({ of: "walls", id: wall.id }, svg.current as SVGSVGElement, drawn(storey, point(x, y)));
    });
    const from = pointed(storey, event.clientX, event.clientY);
    const move = (to: Event) => {
      const here = pointed(storey, (to as PointerEvent).clientX, (to as PointerEvent).clientY);
      by = Math.round(((here[0] - from[0]) * normal[0] + (here[1] - from[1]) * normal[1]) / 0.01) * 0.01;
      put(drawn(storey, point(x + normal[0] * by, y + normal[1] * by)));
      live.value?.try([operation(by)]);
    };
    const done = (how: Event) => {
      handle.removeEventListener("pointermove", move);
      for (const name of ["pointerup", "pointercancel"]) handle.removeEventListener(name, done);
      batch(() => {
        release();
        if (how.type === "pointerup" && Math.abs(by) >= 0.01) { live.value?.settle(); void enqueue([operation(by)]); }
        else live.value?.try([]);
      });
    };
    handle.addEventListener("pointermove", move);
    for (const name of ["pointerup", "pointercancel"]) handle.addEventListener(name, done);
  };
  const key = (event: KeyboardEvent) => {
    const way = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
    if (way === undefined) return;
    event.preventDefault();
    void enqueue([operation(way * STEP_M)]);
  };
  return (
    <path class={`wall-mark ${isChosen ? "is-chosen" : ""} ${isHeld ? "is-held" : ""}`} data-wall={wall.id} d={`M${end(ax, ay)}L${end(bx, by)}`}
      tabindex={0} role="button" style={{ strokeWidth: Math.max(WALL_MM, (wall.thickness_m ?? 0.1) * storey.mm_per_m) }}
      aria-label={words.plan.wall(wall.id.replaceAll("-", " "))} onPointerDown={take} onKeyDown={key} />
  );
}
