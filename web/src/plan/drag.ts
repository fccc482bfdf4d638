/** Dragging a device: follows the pointer along wall faces, asks for the answers meanwhile, keeps when let go. */
import { batch } from "@preact/signals";
import { enqueue } from "../edits/queue";
import type { Device, Operation, ScreenStorey } from "../server/types";
import * as state from "../state";
import { live } from "../server/now";
import { nearestFace, standOf } from "./faces";
import { hold, pointed, put, release } from "./held";
import { drawn } from "./view";
import type { Point } from "../units";

type Mount = Device["mount"];

/** Where a device goes if it is put at a place: on the nearest face, or just there. */
export function mountAt(device: Device, at: Point): Mount | null {
  const site = state.site.value;
  const mount = device.mount;
  const stand = site ? standOf(site, device) : null;
  if (!site || !stand) return null;
  if (mount.on === "wall") {
    const face = nearestFace(site, stand.storey, at, mount.height_m);
    return face && { on: "wall", wall: face.wall, side: face.side, offset_m: face.offset, height_m: mount.height_m };
  }
  if (mount.on === "opening") return null;
  return { ...mount, at_m: [Math.round(at[0] * 1000) / 1000, Math.round(at[1] * 1000) / 1000] };
}

export function movedTo(device: Device, mount: Mount): Operation {
  const turns = mount.on === "wall" && device.mount.on === "wall" && (mount.wall !== device.mount.wall || mount.side !== device.mount.side);
  return { do: "mount-device", device: device.id, mount, heading_deg: turns ? null : (device.heading_deg ?? null) };
}

/** Show a device as it would be, and ask what the answers would be. */
export function tried(device: Device, operation: Operation): void {
  state.trial.value = { device };
  live.value?.try([operation]);
}

export function letGo(operation: Operation | null): void {
  if (operation) { live.value?.settle(); void enqueue([operation]); }
  else { state.trial.value = null; live.value?.try([]); }
}

/** Take hold of a device with a pointer. */
export function takeHold(event: PointerEvent, svg: SVGSVGElement, storey: ScreenStorey, device: Device): void {
  const site = state.site.value;
  const stood = site && standOf(site, device);
  if (!site || !stood) return;
  event.preventDefault();
  event.stopPropagation();
  const handle = event.currentTarget as Element;
  handle.setPointerCapture(event.pointerId);
  state.chosen.value = { of: "devices", id: device.id };
  let operation: Operation | null = null;
  let face = faceOf(device.mount);
  let hasMoved = false;
  const start = [event.clientX, event.clientY] as const;
  const move = (to: PointerEvent) => {
    if (!hasMoved) {
      if (Math.hypot(to.clientX - start[0], to.clientY - start[1]) < 4) return;
      hasMoved = true;
      hold({ of: "devices", id: device.id }, svg, drawn(storey, stood.at));
    }
    const mount = mountAt(device, pointed(storey, to.clientX, to.clientY));
    if (!mount) return;
    operation = movedTo(device, mount);
    const moved: Device = { ...device, mount, heading_deg: operation.do === "mount-device" ? (operation.heading_deg ?? null) : null };
    const stand = standOf(site, moved);
    if (stand) put(drawn(storey, stand.at));
    // Beside the plan a device is told anew only when it goes over to another face.
    if (!state.trial.value || faceOf(mount) !== face) { face = faceOf(mount); state.trial.value = { device: moved }; }
    live.value?.try([operation]);
  };
  const end = (how: Event) => {
    handle.removeEventListener("pointermove", move as EventListener);
    for (const name of ["pointerup", "pointercancel"]) handle.removeEventListener(name, end);
    if (hasMoved) batch(() => { release(); letGo(how.type === "pointerup" ? operation : null); });
  };
  handle.addEventListener("pointermove", move as EventListener);
  for (const name of ["pointerup", "pointercancel"]) handle.addEventListener(name, end);
}

const faceOf = (mount: Mount) => (mount.on === "wall" ? `${mount.wall} ${mount.side}` : "");

const STEP_M = 0.05;
const TURN_DEG = 5;

/** What a key does to a device; null: nothing. */
export function byKey(device: Device, key: string): Operation | null {
  const mount = device.mount;
  const along = { ArrowLeft: -STEP_M, ArrowRight: STEP_M, ArrowDown: -STEP_M, ArrowUp: STEP_M }[key];
  if (along !== undefined && mount.on === "wall") {
    return movedTo(device, { ...mount, offset_m: Math.round((mount.offset_m + along) * 1000) / 1000 });
  }
  if (along !== undefined && (mount.on === "free" || mount.on === "ceiling")) {
    const isAcross = key === "ArrowLeft" || key === "ArrowRight";
    const [x, y] = mount.at_m as [number, number];
    return movedTo(device, { ...mount, at_m: [isAcross ? x + along : x, isAcross ? y : y + along] });
  }
  const site = state.site.value;
  const stand = site && standOf(site, device);
  if ((key === "[" || key === "]") && stand) {
    return { do: "turn-device", device: device.id, heading_deg: Math.round(stand.heading + (key === "[" ? TURN_DEG : -TURN_DEG)) };
  }
  if ((key === "+" || key === "-" || key === "=") && (mount.on === "wall" || mount.on === "free")) {
    const height = Math.round(((mount.height_m ?? 1) + (key === "-" ? -STEP_M : STEP_M)) * 100) / 100;
    return { do: "mount-device", device: device.id, mount: { ...mount, height_m: height }, heading_deg: device.heading_deg ?? null };
  }
  if (key === "Delete") return { do: "remove", of: "devices", id: device.id };
  return null;
}
