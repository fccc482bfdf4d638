import type { ScreenStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { alongWall } from "./faces";
import { drawn, larger } from "./view";

/** A place to press on each door and window of the storey, coloured by how its lock is known. */
export function OpeningMarks({ storey }: { storey: ScreenStorey }) {
  const site = state.site.value;
  if (!site) return null;
  return (
    <g class="openings">
      {(site.openings ?? []).map((one) => {
        const wall = site.walls?.find((other) => other.id === one.wall);
        if (!wall || wall.storey !== storey.storey || one.kind === "gap") return null;
        const [x, y] = drawn(storey, alongWall(wall, one.offset_m, 0));
        const isChosen = state.chosen.value?.id === one.id;
        const choose = () => { state.chosen.value = { of: "openings", id: one.id }; };
        return (
          <g key={one.id} class={`opening-mark known-${state.knownBy(one, "lock")} ${isChosen ? "is-chosen" : ""}`} data-opening={one.id}
            tabindex={0} role="button" aria-label={words.plan.opening(one.name)} transform={`translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${larger.value})`}
            onPointerDown={(event) => event.stopPropagation()} onClick={choose}
            onKeyDown={(event) => { if (event.key === "Enter" || event.key === " ") { event.preventDefault(); choose(); } }}>
            <circle class="touch" r={4} />
            {state.step.value === "Survey" || isChosen ? <circle class="dot" r={1.1} /> : null}
          </g>
        );
      })}
    </g>
  );
}
