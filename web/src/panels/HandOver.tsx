import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as link from "../server/link";
import type { PaperClass } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { look, PaperLook } from "./PaperLook";

const classes = signal<readonly PaperClass[]>([]);
const told = words.later["Hand over"];

/** The papers by class of copy: each class in a frame of its own, the fitter's with its warning. */
export function HandOver() {
  const file = state.file.value ?? "";
  useEffect(() => {
    let isWanted = true;
    link.papers(file)
      .then((found) => { if (isWanted) classes.value = found; })
      .catch((fault: unknown) => { state.note.value = (fault as Error).message; });
    return () => { isWanted = false; };
  }, [file, state.revision.value]);
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{told.title}</h2>
      <p class="hint">{told.intro} {told.wait}</p>
      {classes.value.map((one) => (
        <div key={one.copy_class} class={`copy is-${one.copy_class}`}>
          <h3>{one.stamp}</h3>
          <p class="warning">{one.warning}</p>
          <ul>
            {one.papers.map((paper) => (
              <li key={paper.name}>
                <span>{paper.title} <span class="hint">{paper.name}</span></span>
                <span class="acts">
                  {paper.name.endsWith(".pdf") ? (
                    <button type="button" aria-label={told.lookAt(paper.title, one.stamp)}
                      onClick={() => look(file, one.copy_class, one.stamp, paper)}>{told.look}</button>
                  ) : null}
                  <a class="button" href={link.paper(file, one.copy_class, paper.name)} download aria-label={told.get(paper.title, one.stamp)}>{told.download}</a>
                </span>
              </li>
            ))}
          </ul>
        </div>
      ))}
      <p class="not-yet">{told.notYet}</p>
      <PaperLook />
    </section>
  );
}
