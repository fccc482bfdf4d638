import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { ScreenStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { Compared } from "./Compared";
import { DeviceMark } from "./DeviceMark";
import { Held } from "./Held";
import { OpeningMarks } from "./OpeningMarks";
import { PassMarks } from "./PassMarks";
import { ScaleBar } from "./ScaleBar";
import { WallMarks } from "./WallMarks";
import { Walker } from "./Walker";
import { answersGrow, isCrowded, lettersGrow, room, view, whole, zoomed } from "./view";

/** The house, what lies over it and the marks to press are sheets of their own: what changes on one is drawn on that one alone. */
export function Plan() {
  const svg = useRef<SVGSVGElement>(null);
  const storey = state.storeys.value.find((one) => one.storey === state.storey.value);
  useEffect(() => { if (storey) view.value = whole(storey); }, [storey?.storey, state.file.value]);
  useEffect(() => {
    const here = svg.current;
    const wheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const matrix = here?.getScreenCTM()?.inverse();
      if (!matrix || !view.value) return;
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
      view.value = zoomed(view.value, Math.exp(-event.deltaY / 300), at);
    };
    here?.addEventListener("wheel", wheel, { passive: false });
    const watched = new ResizeObserver(([one]) => {
      if (one) room.value = { wide: one.contentRect.width, high: one.contentRect.height };
    });
    if (here) watched.observe(here);
    return () => { here?.removeEventListener("wheel", wheel); watched.disconnect(); };
  }, [storey?.storey]);
  if (!storey || !state.site.value) return null;
  const box = view.value ?? whole(storey);
  const sheet = `${box.x} ${box.y} ${box.wide} ${box.high}`;
  return (
    <div class="plan">
      <svg class="sheet" viewBox={sheet} aria-hidden="true">
        <g class="house" style={`--letters:${lettersGrow.value}`} data-crowded={isCrowded.value} dangerouslySetInnerHTML={{ __html: state.houses.value[storey.storey] ?? "" }} />
      </svg>
      <svg class="sheet" viewBox={sheet} aria-hidden="true">
        <Overlay storey={storey.storey} />
      </svg>
      <svg ref={svg} class="marks" viewBox={sheet} role="group"
        aria-label={words.plan.name(storey.name)} onPointerDown={(event) => panned(event, svg.current)}>
        <Compared storey={storey} />
        <Walker storey={storey} />
        {state.step.value === "Survey" || state.step.value === "Design" ? <WallMarks svg={svg} storey={storey} /> : null}
        {state.isOnSite.value ? null : <OpeningMarks storey={storey} />}
        <Devices svg={svg} storey={storey} />
        {state.step.value === "Design" ? <PassMarks svg={svg} storey={storey} /> : null}
      </svg>
      <Held storey={storey} />
      <ScaleBar storey={storey} />
      <div class="plan-tools" role="group" aria-label={words.plan.storey}>
        {state.storeys.value.map((one) => (
          <button type="button" aria-pressed={one.storey === storey.storey} onClick={() => { state.storey.value = one.storey; }}>{one.name}</button>
        ))}
        <span class="gap" />
        <button type="button" aria-label={words.plan.closer} onClick={() => { view.value = zoomed(box, 1.3); }}>+</button>
        <button type="button" aria-label={words.plan.farther} onClick={() => { view.value = zoomed(box, 1 / 1.3); }}>{"\u2212"}</button>
        <button type="button" aria-label={words.plan.whole} onClick={() => { view.value = whole(storey); }}>{words.plan.wholeShort}</button>
      </div>
    </div>
  );
}

/** Its own component: while one device moves, only its mark is drawn anew. */
function Devices({ svg, storey }: { svg: RefObject<SVGSVGElement | null>; storey: ScreenStorey }) {
  return <>{(state.site.value?.devices ?? []).map((device) => <DeviceMark key={device.id} svg={svg} storey={storey} device={device} />)}</>;
}

/** Its own component: a new answer draws nothing else anew. */
function Overlay({ storey }: { storey: string }) {
  return <g class="over" style={`--letters:${answersGrow.value}`} dangerouslySetInnerHTML={{ __html: (state.laid.value ?? state.overlays.value)[storey] ?? "" }} />;
}

function panned(event: PointerEvent, svg: SVGSVGElement | null): void {
  if (!svg || !view.value || event.button !== 0) return;
  const start = { x: event.clientX, y: event.clientY, view: view.value };
  const scale = svg.getScreenCTM()?.a ?? 1;
  svg.setPointerCapture(event.pointerId);
  const move = (to: PointerEvent) => {
    view.value = { ...start.view, x: start.view.x - (to.clientX - start.x) / scale, y: start.view.y - (to.clientY - start.y) / scale };
  };
  const end = (last: PointerEvent) => {
    svg.removeEventListener("pointermove", move);
    svg.removeEventListener("pointerup", end);
    svg.removeEventListener("pointercancel", end);
    if (Math.hypot(last.clientX - start.x, last.clientY - start.y) < 4) state.chosen.value = null;
  };
  svg.addEventListener("pointermove", move);
  svg.addEventListener("pointerup", end);
  svg.addEventListener("pointercancel", end);
}
