import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as server from "../server/office";
import type { Firm, FirmRates, FirmText, OfficeSaid } from "../server/types";
import { words } from "../words";

const told = words.office;
const said = signal<OfficeSaid | null>(null);
const draft = signal<Firm | null>(null);
const fault = signal("");
const kept = signal("");

const BLANK: Firm = { name: "", rates: { currency: "", labour_per_hour: "" } };

function take(news: OfficeSaid): void {
  said.value = news;
  draft.value = news.firm ?? BLANK;
}

async function doing(what: () => Promise<OfficeSaid>, done: string): Promise<void> {
  fault.value = kept.value = "";
  try {
    take(await what());
    kept.value = done;
  } catch (wrong) { fault.value = (wrong as Error).message; }
}

/** Without what was left empty: the server then takes the catalogue's own figure. */
function filled<T extends object>(record: T): T {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== "" && value !== null && value !== undefined)) as T;
}

function toKeep(firm: Firm): Firm {
  const tax = firm.tax && firm.tax.percent !== "" ? filled(firm.tax) : null;
  const texts = (firm.text ?? []).filter((one) => one.heading || one.text);
  return filled({ ...firm, rates: filled(firm.rates), tax, text: texts, address: (firm.address ?? []).filter(Boolean) });
}

/** The firm once for all jobs of the folder: who it is, what it charges, its terms, its price list. */
export function Office() {
  useEffect(() => { void server.office().then(take).catch((wrong: unknown) => { fault.value = (wrong as Error).message; }); }, []);
  const firm = draft.value;
  if (!firm) return null;
  const set = (facts: Partial<Firm>) => { draft.value = { ...firm, ...facts }; kept.value = ""; };
  const rate = (facts: Partial<FirmRates>) => set({ rates: { ...firm.rates, ...facts } });
  const texts = firm.text ?? [];
  const text = (at: number, facts: Partial<FirmText>) => set({ text: texts.map((one, i) => (i === at ? { ...one, ...facts } : one)) });
  return (
    <details class="office">
      <summary>{told.title}{said.value?.firm ? <span class="hint"> {said.value.firm.name}</span> : null}</summary>
      <p class="hint">{told.intro}</p>
      {said.value?.fault ? <p class="fault" role="alert">{said.value.fault.where}: {said.value.fault.what}. {said.value.fault.cure}.</p> : null}
      <form onSubmit={(event) => { event.preventDefault(); void doing(() => server.keepFirm(toKeep(firm)), told.kept); }}>
        <fieldset>
          <legend>{told.who}</legend>
          <Field name={told.name} is={firm.name} isWanted onSet={(name) => set({ name })} />
          <label><span>{told.address}</span>
            <textarea rows={3} value={(firm.address ?? []).join("\n")} onInput={(event) => set({ address: event.currentTarget.value.split("\n") })} /></label>
          <Field name={told.phone} is={firm.phone} onSet={(phone) => set({ phone })} />
          <Field name={told.email} is={firm.email} onSet={(email) => set({ email })} />
        </fieldset>
        <fieldset>
          <legend>{told.rates}</legend>
          <Field name={told.currency} is={firm.rates.currency} isWanted most={3} onSet={(currency) => rate({ currency: currency.toUpperCase() })} />
          <Field name={told.hour} is={firm.rates.labour_per_hour} isWanted isNumber onSet={(value) => rate({ labour_per_hour: value })} />
          <Field name={told.journey} is={firm.rates.travel_per_journey} isNumber onSet={(value) => rate({ travel_per_journey: value })} />
          <Field name={told.travel} is={firm.rates.travel_min} isNumber onSet={(value) => rate({ travel_min: value === "" ? null : Number(value) })} />
          <Field name={told.markUp} is={firm.rates.mark_up_percent} isNumber onSet={(value) => rate({ mark_up_percent: value })} />
          <Field name={told.consumables} is={firm.rates.consumables_percent} isNumber onSet={(value) => rate({ consumables_percent: value })} />
        </fieldset>
        <fieldset>
          <legend>{told.tax}</legend>
          <p class="hint">{told.taxHint}</p>
          <Field name={told.taxName} is={firm.tax?.name} onSet={(name) => set({ tax: { percent: "", ...firm.tax, name } })} />
          <Field name={told.taxPercent} is={firm.tax?.percent} isNumber onSet={(percent) => set({ tax: { ...firm.tax, percent } })} />
          <Field name={told.registration} is={firm.tax?.registration} onSet={(registration) => set({ tax: { percent: "", ...firm.tax, registration } })} />
        </fieldset>
        <fieldset>
          <legend>{told.terms}</legend>
          <Field name={told.valid} is={firm.valid_days} isNumber onSet={(value) => set({ valid_days: value === "" ? null : Number(value) })} />
          <Field name={told.deposit} is={firm.deposit_percent} isNumber onSet={(value) => set({ deposit_percent: value })} />
          {texts.map((one, i) => (
            <div key={i} class="term">
              <Field name={told.heading(i + 1)} is={one.heading} onSet={(heading) => text(i, { heading })} />
              <label><span>{told.text(i + 1)}</span><textarea rows={3} value={one.text} onInput={(event) => text(i, { text: event.currentTarget.value })} /></label>
              <button type="button" onClick={() => set({ text: texts.filter((_, k) => k !== i) })}>{told.without(i + 1)}</button>
            </div>
          ))}
          <button type="button" onClick={() => set({ text: [...texts, { heading: "", text: "" }] })}>{told.more}</button>
        </fieldset>
        <p class="acts"><button type="submit" class="main">{told.keep}</button></p>
      </form>
      <h3>{told.prices}</h3>
      <p class="hint">{said.value?.prices ? told.rows(said.value.prices.rows, said.value.prices.oldest) : told.noPrices}</p>
      <p class="acts">
        <label class="file"><span>{told.handIn}</span>
          <input type="file" accept=".csv,.xlsx" onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            event.currentTarget.value = "";
            if (file) void doing(() => server.keepPrices(file), told.pricesKept);
          }} /></label>
        {said.value?.prices ? <button type="button" onClick={() => void doing(server.dropPrices, told.pricesGone)}>{told.drop}</button> : null}
      </p>
      {fault.value ? <p class="fault" role="alert">{fault.value}</p> : null}
      {kept.value ? <p role="status">{kept.value}</p> : null}
    </details>
  );
}

interface Given { name: string; is: string | number | null | undefined; isWanted?: boolean; isNumber?: boolean; most?: number; onSet(value: string): void }

function Field({ name, is, isWanted, isNumber, most, onSet }: Given) {
  return (
    <label><span>{name}</span>
      <input value={is ?? ""} required={isWanted} maxLength={most ?? 200} inputMode={isNumber ? "decimal" : undefined} autocomplete="off"
        onInput={(event) => onSet(isNumber ? event.currentTarget.value.replace(",", ".").trim() : event.currentTarget.value)} /></label>
  );
}
