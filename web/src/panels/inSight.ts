/** What one looks at stays under the eye while the panel beside the plan changes. */

/** Where a finger or the mouse went down; null: it is not. */
let pressed: readonly [number, number] | null = null;
const TAP_PX = 4;

/** Do something now, or when a press is over that was no drag: nothing jumps under a hand that moves something. */
export function unlessDragged(then: () => void): void {
  const from = pressed;
  if (!from) { then(); return; }
  addEventListener("pointerup", (event) => {
    if (Math.hypot(event.clientX - from[0], event.clientY - from[1]) < TAP_PX) then();
  }, { once: true, capture: true });
}

addEventListener("pointerdown", (event) => { pressed = [event.clientX, event.clientY]; }, { capture: true });
for (const over of ["pointerup", "pointercancel"]) addEventListener(over, () => { pressed = null; }, { capture: true });

/** What is chosen on the plan is told in sight, however far one has read; the plan itself stays where it is. */
export function broughtInSight(details: HTMLElement | null): void {
  const plan = document.querySelector("main");
  if (!details || !plan) return;
  const list = listOf(details);
  const edge = list ? list.getBoundingClientRect().top : plan.getBoundingClientRect().bottom;
  const above = details.getBoundingClientRect().top - edge;
  if (above < 0) (list ?? window).scrollBy(0, above - 8);
}

interface Held { key: string; top: number; isSeen: boolean }

const chosen = (key: string) => document.querySelector<HTMLElement>(`.answer[data-answer="${CSS.escape(key)}"]`);

/** The list, where it scrolls by itself: on a small screen the whole page does, and the browser sees to it. */
function listOf(line: HTMLElement): HTMLElement | null {
  const list = line.closest("aside");
  return list && getComputedStyle(list).overflowY !== "visible" ? list : null;
}

/** Where the chosen answer stands before the list is drawn anew. */
export function held(key: string | null): Held | null {
  const line = key === null ? null : chosen(key);
  const list = line && listOf(line);
  if (!key || !line || !list) return null;
  const [here, there] = [line.getBoundingClientRect(), list.getBoundingClientRect()];
  return { key, top: here.top, isSeen: here.bottom > there.top && here.top < there.bottom };
}

/** It is drawn anew: what was seen stays where it was, and what was chosen only now comes into sight. */
export function settled(before: Held | null, key: string | null): void {
  const line = key === null ? null : chosen(key);
  const list = line && listOf(line);
  if (!line || !list) return;
  const here = line.getBoundingClientRect();
  if (before?.key === key) {
    if (before?.isSeen) list.scrollTop += here.top - before.top;
    return;
  }
  const there = list.getBoundingClientRect();
  if (here.top < there.top || here.top > there.bottom - 60) list.scrollTop += here.top - there.top - 60;
}
