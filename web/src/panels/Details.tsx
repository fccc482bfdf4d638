import { computed } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { enqueue } from "../edits/queue";
import { standOf } from "../plan/faces";
import { tried, letGo } from "../plan/drag";
import type { Device, Opening, Operation } from "../server/types";
import * as state from "../state";
import { lengthWords, towardWords } from "../units";
import { words } from "../words";
import { AttachedTo } from "./Attachments";
import { Elevation } from "./Elevation";
import { Known } from "./Known";
import { broughtInSight, unlessDragged } from "./inSight";

let last: Device | undefined;

/** The chosen device as it is told here: the same record while it only goes along its wall. */
const looked = computed(() => {
  const now = state.devices.value.find((one) => one.id === state.chosen.value?.id);
  const isAlong = state.trial.value !== null && last !== undefined && now?.id === last.id && told(now) === told(last);
  if (!isAlong) last = now;
  return last;
});

function told({ mount, heading_deg }: Device): string {
  return [heading_deg, "wall" in mount && mount.wall, "side" in mount && mount.side, "height_m" in mount && mount.height_m].join();
}

export function Details() {
  const chosen = state.chosen.value;
  const site = state.site.value;
  const section = useRef<HTMLElement>(null);
  useLayoutEffect(() => unlessDragged(() => broughtInSight(section.current)), [chosen?.id]);
  if (!chosen || !site) return null;
  const device = chosen.of === "devices" ? looked.value : undefined;
  const opening = chosen.of === "openings" ? site.openings?.find((one) => one.id === chosen.id) : undefined;
  if (!device && !opening) return null;
  return (
    <section ref={section} class="details" aria-labelledby="details-title">
      <h2 id="details-title">{device?.name ?? opening?.name}</h2>
      <button type="button" class="close" aria-label={words.things.close} onClick={() => { state.chosen.value = null; }}>{"\u00d7"}</button>
      {device ? <DeviceDetails device={device} /> : null}
      {opening ? <OpeningDetails opening={opening} /> : null}
      <AttachedTo about={`${chosen.of}/${chosen.id}`} />
    </section>
  );
}

function DeviceDetails({ device }: { device: Device }) {
  const site = state.site.value;
  const stand = site && standOf(site, device);
  const mount = device.mount;
  const zone = site?.zones?.find((one) => one.devices.includes(device.id));
  const raise = (height: number): Operation | null =>
    mount.on === "wall" || mount.on === "free"
      ? { do: "mount-device", device: device.id, mount: { ...mount, height_m: height }, heading_deg: device.heading_deg ?? null } : null;
  const turn = (heading: number): Operation => ({ do: "turn-device", device: device.id, heading_deg: heading });
  const tryRaise = (height: number) => {
    const operation = raise(height);
    if (operation && (mount.on === "wall" || mount.on === "free")) tried({ ...device, mount: { ...mount, height_m: height } }, operation);
  };
  return (
    <div class="facts">
      {mount.on === "wall" || mount.on === "free" ? (
        <>
          <Elevation device={device} onTry={tryRaise} onKeep={(height) => letGo(raise(height))} />
          <label>
            <span>{words.things.height}</span>
            <strong class="amount">{lengthWords(mount.height_m ?? 1, state.system.value)}</strong>
            <input type="range" min={0} max={4} step={0.05} value={mount.height_m ?? 1}
              onInput={(event) => tryRaise(Number(event.currentTarget.value))}
              onChange={(event) => letGo(raise(Number(event.currentTarget.value)))} />
          </label>
        </>
      ) : null}
      {stand && mount.on !== "opening" ? (
        <label>
          <span>{words.things.heading}</span>
          <strong class="amount">{towardWords(stand.heading)}</strong>
          <input type="range" min={0} max={359} step={1} value={Math.round(((stand.heading % 360) + 360) % 360)}
            onInput={(event) => { const heading = Number(event.currentTarget.value); tried({ ...device, heading_deg: heading }, turn(heading)); }}
            onChange={(event) => letGo(turn(Number(event.currentTarget.value)))} />
        </label>
      ) : null}
      {zone && site ? (
        <Choice label={words.things.zone} value={zone.behaviour} basis={state.knownBy(zone, "behaviour")}
          options={behaviours()} onChange={(value) => void enqueue([{ do: "tell", of: "zones", id: zone.id, facts: { behaviour: value } }])} />
      ) : <p class="hint">{words.things.noZone}</p>}
      <Choice label={words.things.sensitivity} value={device.sensitivity ?? "usual"} basis={state.knownBy(device, "sensitivity")}
        options={["low", "usual", "high"]} onChange={(value) => void enqueue([{ do: "tell", of: "devices", id: device.id, facts: { sensitivity: value } }])} />
      <button type="button" class="remove" onClick={() => { void enqueue([{ do: "remove", of: "devices", id: device.id }]); state.chosen.value = null; }}>
        {words.things.remove}
      </button>
    </div>
  );
}

const USUAL = ["instant", "entry-exit", "entry-route", "always-on", "log-only", "tamper", "hold-up", "fire", "water"];
export const behaviours = () => [...new Set([...(state.site.value?.behaviours?.map((one) => one.id) ?? USUAL)])];

const CHOICES: Record<string, readonly string[]> = {
  lock: ["none", "latch", "deadlock", "multi-point", "rc2", "rc3", "unknown"],
  habit: ["shut", "ajar", "open"],
  habit_night: ["shut", "ajar", "open"],
  covering: ["none", "curtain", "blind", "shutter"],
};
const DEFAULTS: Record<string, string> = { lock: "unknown", habit: "shut", habit_night: "shut", covering: "none" };

function OpeningDetails({ opening }: { opening: Opening }) {
  const record = opening as unknown as Record<string, unknown>;
  const tell = (facts: Record<string, unknown>) => void enqueue([{ do: "tell", of: "openings", id: opening.id, facts }]);
  const texts = words.things as unknown as Record<string, string>;
  return (
    <div class="facts">
      {Object.entries(CHOICES).map(([field, options]) => (
        <Choice key={field} label={texts[field] ?? field} value={String(record[field] ?? DEFAULTS[field])} options={options}
          basis={state.knownBy(opening, field)} onChange={(value) => tell({ [field]: value })} />
      ))}
      <label class="check">
        <input type="checkbox" checked={opening.is_entry_door ?? false} onChange={(event) => tell({ is_entry_door: event.currentTarget.checked })} />
        <span>{words.things.is_entry_door}</span> <Known basis={state.knownBy(opening, "is_entry_door")} />
      </label>
    </div>
  );
}

interface ChoiceProps { label: string; value: string; options: readonly string[]; basis: string; onChange(value: string): void }

export function Choice({ label, value, options, basis, onChange }: ChoiceProps) {
  return (
    <label>
      <span>{label}</span> <Known basis={basis} />
      <select value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        {options.map((one) => <option key={one} value={one}>{one}</option>)}
      </select>
    </label>
  );
}
