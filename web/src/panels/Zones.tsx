import { enqueue } from "../edits/queue";
import type { Zone } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { behaviours } from "./Details";
import { Known } from "./Known";

const TIMES = [["entry", "entry_time_s", 30], ["exit", "exit_time_s", 30], ["abort", "abort_delay_s", 0]] as const;

/** What is wired to a zone, where its name does not say so already. */
function Wired({ zone }: { zone: Zone }) {
  const names = zone.devices.map((id) => state.site.value?.devices?.find((one) => one.id === id)?.name ?? id);
  return names.length === 1 && names[0] === zone.name ? null : <span class="hint">{names.join(", ") || words.zones.noDevice}</span>;
}

export function Zones() {
  const site = state.site.value;
  if (!site) return null;
  const parts = site.parts?.map((one) => one.id) ?? ["full", "night"];
  const programme = (site.programme ?? {}) as Record<string, unknown>;
  const tell = (id: string, facts: Record<string, unknown>) => void enqueue([{ do: "tell", of: "zones", id, facts }]);
  return (
    <details class="zones">
      <summary>{words.zones.title}</summary>
      <div class="scroll" tabindex={0} role="group" aria-label={words.zones.title}>
        <table>
          <thead>
            <tr>{[words.zones.number, words.zones.name, words.zones.behaviour, words.zones.parts, words.zones.partSet].map((one) => <th key={one} scope="col">{one}</th>)}</tr>
          </thead>
          <tbody>
            {[...(site.zones ?? [])].sort((a, b) => a.number - b.number).map((zone) => (
              <tr key={zone.id}>
                <td>{zone.number}</td>
                <th scope="row">{zone.name}<Wired zone={zone} /></th>
                <td>
                  <select aria-label={`${words.zones.behaviour}: ${zone.name}`} value={zone.behaviour} onChange={(event) => tell(zone.id, { behaviour: event.currentTarget.value })}>
                    {behaviours().map((one) => <option key={one} value={one}>{one}</option>)}
                  </select>
                  <Known basis={state.knownBy(zone, "behaviour")} />
                </td>
                <td class="parts">
                  {parts.map((part) => {
                    const now = zone.parts ?? ["full"];
                    return (
                      <label key={part}>
                        <input type="checkbox" checked={now.includes(part)}
                          onChange={(event) => tell(zone.id, { parts: event.currentTarget.checked ? [...now, part] : now.filter((one) => one !== part) })} /> {part}
                      </label>
                    );
                  })}
                </td>
                <td>
                  <select aria-label={`${words.zones.partSet}: ${zone.name}`} value={zone.behaviour_part_set ?? ""}
                    onChange={(event) => tell(zone.id, { behaviour_part_set: event.currentTarget.value || null })}>
                    <option value="">{words.zones.asAlways}</option>
                    {behaviours().map((one) => <option key={one} value={one}>{one}</option>)}
                  </select>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <fieldset>
        <legend>{words.zones.times}</legend>
        {TIMES.map(([key, field, usual]) => (
          <label key={field}>
            <span>{words.zones[key]}</span> <Known basis={state.knownBy(programme, field)} />
            <span class="with-unit"><input type="number" min={0} max={255} step={5} value={Number(programme[field] ?? usual)}
              onChange={(event) => void enqueue([{ do: "tell", of: "programme", facts: { [field]: Number(event.currentTarget.value) } }])} /> s</span>
          </label>
        ))}
      </fieldset>
    </details>
  );
}
