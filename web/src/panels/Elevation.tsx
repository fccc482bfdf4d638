import { useRef } from "preact/hooks";
import type { Device } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { standOf } from "../plan/faces";

const PX_PER_M = 56;
const PERSON_M = 1.75;

interface Props { device: Device; onTry(height: number): void; onKeep(height: number): void }

/** The wall from the side: floor, ceiling, a person, and the device at its height. */
export function Elevation({ device, onTry, onKeep }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const site = state.site.value;
  const stand = site && standOf(site, device);
  if (!stand) return null;
  const ceiling = site?.storeys.find((one) => one.id === stand.storey)?.height_m ?? 2.4;
  const floor = (ceiling + 0.25) * PX_PER_M;
  const y = (height: number) => floor - height * PX_PER_M;
  const hold = (event: PointerEvent) => {
    const here = svg.current;
    if (!here) return;
    event.preventDefault();
    here.setPointerCapture(event.pointerId);
    const height = (to: PointerEvent) => {
      const box = here.getBoundingClientRect();
      const at = ((to.clientY - box.top) / box.height) * (floor + 16);
      return Math.min(ceiling, Math.max(0, Math.round(((floor - at) / PX_PER_M) * 20) / 20));
    };
    const move = (to: PointerEvent) => onTry(height(to));
    const end = (to: PointerEvent) => {
      here.removeEventListener("pointermove", move);
      here.removeEventListener("pointerup", end);
      onKeep(height(to));
    };
    here.addEventListener("pointermove", move);
    here.addEventListener("pointerup", end);
  };
  return (
    <figure class="elevation">
      <svg ref={svg} viewBox={`0 0 220 ${floor + 16}`} aria-label={words.things.elevation} role="img" onPointerDown={hold}>
        <path class="edge" d={`M8 ${floor}H212M8 ${y(ceiling)}H212`} />
        <path class="edge thick" d={`M8 ${floor}V${y(ceiling)}`} />
        <g class="person">
          <circle cx={150} cy={y(PERSON_M) + 7} r={7} />
          <path d={`M150 ${y(PERSON_M) + 14}V${y(0.85)}M150 ${y(0.85)}L142 ${floor}M150 ${y(0.85)}L158 ${floor}M136 ${y(1.0)}L150 ${y(1.42)}L164 ${y(1.0)}`} />
        </g>
        <path class="measure" d={`M40 ${floor}V${y(stand.height)}M34 ${floor}H46M34 ${y(stand.height)}H46`} />
        <rect class="ink-device" x={8} y={y(stand.height) - 7} width={13} height={14} />
        <circle class="touch" cx={15} cy={y(stand.height)} r={24} />
      </svg>
    </figure>
  );
}
