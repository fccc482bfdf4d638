import type { Signal } from "@preact/signals";
import { signal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import * as works from "../server/works";
import type { WorkNews } from "../server/types";
import { words } from "../words";

const TICK_MS = 250;

/** Long work as it is followed on the page: how it stands, and since when by the page's own clock. */
export interface Followed { news: WorkNews; since: number }

/** Follow work into a signal until it has ended, which empties it; its last word is given back. */
export async function followInto(into: Signal<Followed | null>, begun: WorkNews): Promise<WorkNews> {
  const since = performance.now() - 1000 * begun.seconds;
  into.value = { news: begun, since };
  try {
    return await works.follow(begun.id, (news) => { into.value = { news, since }; });
  } finally {
    into.value = null;
  }
}

/** Why work gave no result, in one sentence; empty where it gave one. */
export function faultOf(news: WorkNews): string {
  if (news.fault) return `${news.fault.where}: ${news.fault.what}. ${news.fault.cure}.`;
  return news.state === "stopped" ? words.work.stopped : "";
}

const clock = signal(0);

/** What is done now, how far it is, and the button that stops it. */
export function Working({ of, onStop }: { of: Followed; onStop(): void }) {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => button.current?.focus(), []);
  useEffect(() => {
    clock.value = performance.now();
    const ticking = setInterval(() => { clock.value = performance.now(); }, TICK_MS);
    return () => clearInterval(ticking);
  }, []);
  const { news, since } = of;
  const said = news.is_stopping ? words.work.stopping : news.state === "waiting" ? words.work.waiting : news.step;
  const seconds = Math.max(0, Math.floor((clock.value - since) / 1000));
  return (
    <div class="working">
      <p><strong role="status">{said}</strong> <span class="amount">{words.work.far(news.begun, news.of, seconds)}</span></p>
      <progress aria-label={news.what} value={Math.max(0, news.begun - 0.5)} max={news.of} />
      <button type="button" ref={button} disabled={news.is_stopping} onClick={onStop}>{words.work.stop}</button>
    </div>
  );
}
