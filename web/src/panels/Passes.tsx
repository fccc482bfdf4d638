import { chosenPart, isDrawing, letPass, mayBe, part, parts, people, person, spacesOf, told, who, type May } from "../plan/passing";
import * as state from "../state";
import { words } from "../words";

const ALL: readonly May[] = ["not told", "may", "may not"];

/** Who may be where while a part is set: drawn on the plan, or said space by space. */
export function Passes() {
  const site = state.site.value;
  const [one, now] = [person.value, chosenPart.value];
  if (!site) return null;
  return (
    <details class="passes">
      <summary>{words.passes.title}</summary>
      <p class="hint">{words.passes.intro}</p>
      {!one || !now ? <p class="hint">{words.passes.nobody}</p> : (
        <>
          <label><span>{words.passes.who}</span>
            <select aria-label={words.passes.who} value={one.id} onChange={(event) => { who.value = event.currentTarget.value; }}>
              {people.value.map((each) => <option key={each.id} value={each.id}>{each.name}</option>)}
            </select></label>
          <label><span>{words.passes.part}</span>
            <select aria-label={words.passes.part} value={now.id} onChange={(event) => { part.value = event.currentTarget.value; }}>
              {parts.value.map((each) => <option key={each.id} value={each.id}>{each.name}</option>)}
            </select></label>
          <button type="button" aria-pressed={isDrawing.value} onClick={() => { isDrawing.value = !isDrawing.value; }}>{words.passes.draw}</button>
          <ul class="rows">
            {spacesOf(site).map((space) => (
              <li key={space.id}>
                <span class="name">{space.name}</span>
                {space.id === one.bed ? <span class="fact">{words.passes.bed}</span> : (
                  <span class="fact">
                    <select aria-label={`${words.passes.title}: ${space.name}`} value={told(one, now.id, space.id)}
                      onChange={(event) => letPass(event.currentTarget.value as May, { spaces: [space.id] })}>
                      {ALL.map((each) => <option key={each} value={each}>{words.passes.told[each]}</option>)}
                    </select>
                    {mayBe(one, now.id, space.id) ? null : <span class="hint"> {words.passes.wrong}</span>}
                  </span>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
