import { signal } from "@preact/signals";
import type { RefObject } from "preact";
import type { ScreenStorey, Space } from "../server/types";
import * as state from "../state";
import { point } from "../units";
import { words } from "../words";
import { chosenPart, isDrawing, letPass, mayBe, person, spacesOf, told, TURNS } from "./passing";
import { drawn } from "./view";

interface Props { svg: RefObject<SVGSVGElement | null>; storey: ScreenStorey }

/** What is being drawn, in the plan's metres. */
const line = signal<[number, number][]>([]);
/** A shorter way is a press on one space. [px] */
const PRESS_PX = 6;

/** Each space can be pressed, or a line drawn through several: it says where somebody may be. */
export function PassMarks({ svg, storey }: Props) {
  const site = state.site.value;
  if (!site || !isDrawing.value || !person.value || !chosenPart.value) return null;
  const path = line.value.map(([x, y]) => drawn(storey, point(x, y)).map((n) => n.toFixed(2)).join(" ")).join("L");
  return (
    <g class="passes">
      <defs>
        <pattern id="may-not" width="3" height="3" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V3M0 0H3" /></pattern>
        <pattern id="may" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r=".45" /></pattern>
      </defs>
      {spacesOf(site).filter((one) => one.storey === storey.storey).map((one) => <SpaceMark key={one.id} svg={svg} storey={storey} space={one} />)}
      {path ? <path class="pass-line" d={`M${path}`} /> : null}
    </g>
  );
}

function SpaceMark({ svg, storey, space }: Props & { space: Space }) {
  const [one, part] = [person.value, chosenPart.value];
  if (!one || !part) return null;
  const now = told(one, part.id, space.id);
  const outline = space.outline_m.map(([x, y]) => drawn(storey, point(x as number, y as number)).map((n) => n.toFixed(2)).join(" ")).join("L");
  const turn = () => letPass(TURNS[now], { spaces: [space.id] });
  const take = (event: PointerEvent) => {
    const sheet = svg.current;
    if (!sheet || event.button !== 0) return;
    event.stopPropagation();
    const from = [event.clientX, event.clientY] as const;
    const handle = event.currentTarget as Element;
    handle.setPointerCapture(event.pointerId);
    line.value = [spot(sheet, storey, event)];
    const move = (to: Event) => { line.value = [...line.value, spot(sheet, storey, to as PointerEvent)]; };
    const done = (how: Event) => {
      handle.removeEventListener("pointermove", move);
      for (const name of ["pointerup", "pointercancel"]) handle.removeEventListener(name, done);
      const { clientX, clientY } = how as PointerEvent;
      const drawnLine = line.value;
      line.value = [];
      if (how.type !== "pointerup") return;
      if (Math.hypot(clientX - from[0], clientY - from[1]) < PRESS_PX && drawnLine.length < 8) turn();
      else letPass(TURNS[now], { storey: storey.storey, line_m: thinned(drawnLine) });
    };
    handle.addEventListener("pointermove", move);
    for (const name of ["pointerup", "pointercancel"]) handle.addEventListener(name, done);
  };
  const key = (event: KeyboardEvent) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    turn();
  };
  return (
    <path class="pass-mark" data-space={space.id} data-told={now} data-ordinary={mayBe(one, part.id, space.id)} d={`M${outline}Z`} tabindex={0} role="button"
      aria-label={words.passes.mark(space.name, one.name, part.name, words.passes.told[now] ?? now)} onPointerDown={take} onKeyDown={key} />
  );
}

/** The server takes no more points than it needs. */
const thinned = (all: [number, number][]) => all.filter((_, i) => i === all.length - 1 || i % Math.ceil(all.length / 500) === 0);

function spot(sheet: SVGSVGElement, storey: ScreenStorey, event: PointerEvent): [number, number] {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(sheet.getScreenCTM()?.inverse());
  const [x0, , , y1] = storey.bounds as [number, number, number, number];
  return [at.x / storey.mm_per_m + x0, y1 - at.y / storey.mm_per_m];
}
