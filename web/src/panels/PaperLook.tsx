import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import * as link from "../server/link";
import type { PaperClass, PaperLine, PaperPage } from "../server/types";
import { words } from "../words";

const told = words.look;
const PICTURE_PX = 1400;

interface Looked { file: string; copy: PaperClass["copy_class"]; stamp: string; paper: PaperLine }

const looked = signal<Looked | null>(null);
const found = signal<{ of: Looked; pages: readonly PaperPage[] } | null>(null);
const fault = signal("");

/** Look at a paper's pages before it is printed or handed over. */
export function look(file: string, copy: PaperClass["copy_class"], stamp: string, paper: PaperLine): void {
  const one = { file, copy, stamp, paper };
  looked.value = one;
  fault.value = "";
  link.pagesOf(file, copy, paper.name)
    .then((pages) => { if (looked.value === one) found.value = { of: one, pages }; })
    .catch((wrong: unknown) => { if (looked.value === one) fault.value = (wrong as Error).message; });
}

/** The pages of one paper, over the page, as they will come out of the printer; Escape closes it. */
export function PaperLook() {
  const dialog = useRef<HTMLDialogElement>(null);
  const now = looked.value;
  useEffect(() => { if (now && !dialog.current?.open) dialog.current?.showModal(); }, [now]);
  if (!now) return null;
  const { file, copy, stamp, paper } = now;
  const pages = found.value?.of === now ? found.value.pages : null;
  return (
    <dialog ref={dialog} class="viewer paper-look" aria-label={paper.title} onClose={() => { looked.value = null; }}>
      <div class="top">
        <p><strong>{paper.title}</strong><span class={`hint whose is-${copy}`}>{stamp}</span></p>
        <p class="acts">
          <a class="button main" href={link.printed(file, copy, paper.name)} target="_blank" rel="noopener">{told.print}</a>
          <a class="button" href={link.paper(file, copy, paper.name)} download>{told.keep}</a>
          <button type="button" onClick={() => dialog.current?.close()}>{told.close}</button>
        </p>
      </div>
      {fault.value ? <p class="fault" role="alert">{fault.value}</p> : null}
      {pages || fault.value ? null : <p class="hint" role="status">{told.writing}</p>}
      {pages ? <p class="hint" role="status">{told.pages(pages.length)}</p> : null}
      <div class="pages" tabIndex={0} role="group" aria-label={told.allPages}>
        {pages?.map((one, i) => (
          <img key={i} loading="lazy" alt={told.page(i + 1, pages.length, paper.title)}
            style={{ aspectRatio: `${one.width_mm} / ${one.height_mm}` }} data-wide={one.width_mm > one.height_mm}
            src={link.page(file, copy, paper.name, i + 1, PICTURE_PX)} />
        ))}
      </div>
    </dialog>
  );
}
