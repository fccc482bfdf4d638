import type { RefObject } from "preact";
import { enqueue } from "../edits/queue";
import { live } from "../server/now";
import type { Operation, ScreenStorey, Wall } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { drawn, onPlan } from "./view";
import { point } from "../units";
import { signal, useComputed } from "@preact/signals";

const STEP_M = 0.05;
const shift = signal<{ wall: string; by: number } | null>(null);

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

function WallMark({ svg, storey, wall }: Props & { wall: Wall }) {
  const [[ax, ay], [bx, by]] = wall.line_m as [[number, number], [number, number]];
  const length = Math.hypot(bx - ax, by - ay) || 1;
  const normal = [-(by - ay) / length, (bx - ax) / length] as const;
  const moved = useComputed(() => (shift.value?.wall === wall.id ? shift.value.by : 0)).value;
  const end = (x: number, y: number) => drawn(storey, point(x + normal[0] * moved, y + normal[1] * moved)).map((n) => n.toFixed(2)).join(" ");
  const isChosen = state.chosen.value?.of === "walls" && state.chosen.value.id === wall.id;
  const operation = (by_m: number): Operation => ({ do: "move-wall", wall: wall.id, by_m: Math.round(by_m * 1000) / 1000 });
  const hold = (event: PointerEvent) => {
    if (!svg.current) return;
    event.stopPropagation();
    const handle = event.currentTarget as Element;
    handle.setPointerCapture(event.pointerId);
    state.chosen.value = { of: "walls", id: wall.id };
    const from = onPlan(svg.current, storey, event.clientX, event.clientY);
    const move = (to: Event) => {
      const here = onPlan(svg.current as SVGSVGElement, storey, (to as PointerEvent).clientX, (to as PointerEvent).clientY);
      const by = Math.round(((here[0] - from[0]) * normal[0] + (here[1] - from[1]) * normal[1]) / 0.01) * 0.01;
      shift.value = { wall: wall.id, by };
      live.value?.try([operation(by)]);
    };
    const done = (how: Event) => {
      handle.removeEventListener("pointermove", move);
      for (const name of ["pointerup", "pointercancel"]) handle.removeEventListener(name, done);
      const by = shift.value?.by ?? 0;
      shift.value = null;
      if (how.type === "pointerup" && Math.abs(by) >= 0.01) { live.value?.settle(); void enqueue([operation(by)]); }
      else live.value?.try([]);
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
    <path class={`wall-mark ${isChosen ? "is-chosen" : ""}`} data-wall={wall.id} d={`M${end(ax, ay)}L${end(bx, by)}`} tabindex={0} role="button"
      style={{ strokeWidth: Math.max(3, (wall.thickness_m ?? 0.1) * storey.mm_per_m) }}
      aria-label={words.plan.wall(wall.id.replaceAll("-", " "))} onPointerDown={hold} onKeyDown={key} />
  );
}
