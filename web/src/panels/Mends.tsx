import { enqueue } from "../edits/queue";
import type { BoardMend } from "../server/types";
import * as state from "../state";
import { words } from "../words";

/** What would mend an answer or a finding; where the program can do it itself, with a button. */
export function Mends({ mends, isAmongMany = false }: { mends: readonly BoardMend[]; isAmongMany?: boolean }) {
  if (!mends.length) return <p class="hint">{state.later.value.size ? words.panel.later : words.panel.noMend}</p>;
  return (
    <>
      <ul class="mends">
        {mends.map((mend) => (
          <li key={mend.text}>
            <span>{mend.text}</span>
            {mend.operations
              ? <button type="button" class="do" aria-label={words.panel.doThat(mend.text)} onClick={() => void enqueue([...(mend.operations ?? [])])}>{words.panel.doIt}</button>
              : <span class="hint">{words.panel.byHand}</span>}
          </li>
        ))}
      </ul>
      {isAmongMany ? null : <Beware cautions={mends.flatMap((mend) => mend.cautions)} />}
    </>
  );
}

/** Each caution once, however many mends ask for such work. */
export function Beware({ cautions }: { cautions: readonly string[] }) {
  const told = [...new Set(cautions)].filter(Boolean);
  return told.length ? <p class="caution"><strong>{words.panel.beware}</strong> {told.join(" ")}</p> : null;
}
