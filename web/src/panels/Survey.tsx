import { enqueue } from "../edits/queue";
import * as state from "../state";
import { words } from "../words";
import { Known } from "./Known";

interface Row { id: string; name?: string; kind?: string }
interface Kind { of: "people" | "pets" | "targets" | "fixtures" | "outlets"; title: string; fields: Record<string, readonly string[] | "number" | "space"> }

const KINDS: readonly Kind[] = [
  { of: "people", title: words.survey.people, fields: { pace: ["slow", "usual", "quick"], bed: "space", comes: ["lives", "visits"] } },
  { of: "pets", title: words.survey.pets, fields: { kind: ["cat", "small-dog", "big-dog", "rabbit", "bird", "other"], height_m: "number", mass_kg: "number" } },
  { of: "targets", title: words.survey.targets, fields: { space: "space", worth: ["low", "medium", "high"] } },
  { of: "fixtures", title: words.survey.fixtures, fields: { heat: ["none", "warm", "hot"], height_m: "number" } },
  { of: "outlets", title: words.survey.outlets, fields: { kind: ["power", "fused-spur", "network", "router"] } },
];
const DEFAULTS: Record<string, string | number> = { pace: "usual", comes: "lives", kind: "other", height_m: 0.3, mass_kg: 5, worth: "medium", heat: "none" };

export function Survey() {
  const site = state.site.value;
  if (!site) return null;
  return (
    <section class="survey" aria-labelledby="survey-title">
      <h2 id="survey-title">{words.survey.title}</h2>
      <p class="hint">{words.survey.intro}</p>
      <Openings />
      {KINDS.map((kind) => <Rows key={kind.of} kind={kind} />)}
      <North />
    </section>
  );
}

function Openings() {
  return (
    <details open>
      <summary>{words.survey.openings}</summary>
      <ul class="rows openings">
        {(state.site.value?.openings ?? []).filter((one) => one.kind !== "gap").map((one) => (
          <li key={one.id}>
            <button type="button" class="plain" onClick={() => { state.chosen.value = { of: "openings", id: one.id }; }}>{one.name}</button>
            <span class="fact">{one.lock ?? words.survey.unknown}</span> <Known basis={state.knownBy(one, "lock")} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Rows({ kind }: { kind: Kind }) {
  const site = state.site.value;
  const rows = ((site as unknown as Record<string, Row[]> | null)?.[kind.of] ?? []) as Row[];
  return (
    <details>
      <summary>{kind.title} <span class="count">{rows.length}</span></summary>
      {rows.length === 0 ? <p class="hint">{words.survey.none}</p> : null}
      <ul class="rows">
        {rows.map((row) => (
          <li key={row.id}>
            <span class="name">{row.name ?? row.id}</span>
            {Object.entries(kind.fields).map(([field, form]) => <Fact key={field} of={kind.of} row={row} field={field} form={form} />)}
            <button type="button" class="plain" onClick={() => void enqueue([{ do: "remove", of: kind.of, id: row.id }])}
              aria-label={`${words.survey.remove}: ${row.name ?? row.id}`}>{words.survey.remove}</button>
          </li>
        ))}
      </ul>
      {kind.of === "people" || kind.of === "pets" || kind.of === "targets" ? <NewRow kind={kind} taken={rows} /> : null}
    </details>
  );
}

function Fact({ of, row, field, form }: { of: string; row: Row; field: string; form: readonly string[] | "number" | "space" }) {
  const value = (row as unknown as Record<string, unknown>)[field] ?? DEFAULTS[field] ?? "";
  const tell = (fact: unknown) => void enqueue([{ do: "tell", of, id: row.id, facts: { [field]: fact } }]);
  const label = `${field.replace(/_(m|kg)$/, "").replaceAll("_", " ")}: ${row.name ?? row.id}`;
  if (form === "number") {
    return (
      <span class="fact"><input type="number" step={0.05} min={0.05} aria-label={label} value={Number(value)} onChange={(event) => tell(Number(event.currentTarget.value))} />
        {field.endsWith("_kg") ? "kg" : "m"} <Known basis={state.knownBy(row, field)} /></span>
    );
  }
  const options = form === "space" ? (state.site.value?.spaces ?? []).map((one) => [one.id, one.name] as const) : form.map((one) => [one, one] as const);
  return (
    <span class="fact">
      <select aria-label={label} value={String(value)} onChange={(event) => tell(event.currentTarget.value || null)}>
        {form === "space" ? <option value="">{words.survey.unknown}</option> : null}
        {options.map(([id, name]) => <option key={id} value={id}>{name}</option>)}
      </select>
      <Known basis={state.knownBy(row, field)} />
    </span>
  );
}

function NewRow({ kind, taken }: { kind: Kind; taken: readonly Row[] }) {
  const add = (event: Event) => {
    event.preventDefault();
    const input = (event.currentTarget as HTMLFormElement).elements.namedItem("name") as HTMLInputElement;
    const name = input.value.trim();
    if (!name) return;
    const stem = name.toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || kind.of;
    let id = stem;
    for (let n = 2; taken.some((one) => one.id === id); n += 1) id = `${stem}-${n}`;
    const record: Record<string, unknown> = { id, name };
    if (kind.of === "targets") record["space"] = state.site.value?.spaces?.[0]?.id;
    void enqueue([{ do: "add", to: kind.of, record }]);
    input.value = "";
  };
  return (
    <form class="new" onSubmit={add}>
      <input name="name" maxLength={60} aria-label={`${words.survey.name}: ${kind.title}`} placeholder={words.survey.name} />
      <button type="submit">{words.survey.add}</button>
    </form>
  );
}

function North() {
  const place = (state.site.value?.place ?? {}) as Record<string, unknown>;
  const tell = (value: number | null) => void enqueue([{ do: "tell", of: "place", facts: { north_deg: value } }]);
  return (
    <details>
      <summary>{words.survey.place}</summary>
      <label>
        <span>{words.survey.north}</span> <Known basis={state.knownBy(place, "north_deg")} />
        <span class="with-unit"><input type="number" min={-360} max={360} step={1} value={place["north_deg"] == null ? "" : Number(place["north_deg"])}
          placeholder={words.survey.unknown} onChange={(event) => tell(event.currentTarget.value === "" ? null : Number(event.currentTarget.value))} /> {"\u00b0"}</span>
      </label>
    </details>
  );
}
