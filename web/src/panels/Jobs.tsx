import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as link from "../server/link";
import type { JobLine } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { Intake } from "./Intake";
import { Office } from "./Office";

const lines = signal<JobLine[]>([]);

export function Jobs({ onOpen }: { onOpen(file: string): void }) {
  useEffect(() => { void link.jobs().then((found) => { lines.value = found; }); }, []);
  const begin = async (sample: string) => {
    let file = `${sample}.job`;
    for (let n = 2; lines.value.some((one) => one.file === file); n += 1) file = `${sample}-${n}.job`;
    try {
      await link.make(file, sample);
      onOpen(file);
    } catch (fault) { state.note.value = (fault as Error).message; }
  };
  return (
    <main class="jobs">
      <h1>{words.product}</h1>
      <h2>{words.jobs.title}</h2>
      {lines.value.length === 0 ? <p class="hint">{words.jobs.none}</p> : null}
      <ul>
        {lines.value.map((one) => (
          <li key={one.file}>
            {one.fault ? <span>{one.file}: {one.fault}</span> : (
              <button type="button" class="job" onClick={() => onOpen(one.file)}>
                <strong>{one.name}</strong><span class="hint">{one.file}, {words.jobs.revision(one.revision)}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      <Intake onOpen={onOpen} />
      <h2>{words.jobs.sample}</h2>
      <ul class="samples">
        {Object.entries(words.jobs.samples).map(([sample, text]) => (
          <li key={sample}><button type="button" onClick={() => void begin(sample)}>{text}</button></li>
        ))}
      </ul>
      <Office />
      <p class="hint">{words.jobs.caution}</p>
    </main>
  );
}
