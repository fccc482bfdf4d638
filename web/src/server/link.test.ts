import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { Live } from "./link";

const sent: { kind: string; number?: number; operations?: { wall: string }[] }[] = [];
let socket: Fake | null = null;

class Fake {
  static OPEN = 1;
  readyState = 1;
  onopen: (() => void) | null = null;
  onmessage: ((event: { data: string }) => void) | null = null;
  onclose: (() => void) | null = null;
  constructor() { socket = this; }
  send(text: string): void { sent.push(JSON.parse(text)); }
  close(): void { this.readyState = 3; }
}

const wish = (wall: string) => [{ do: "move-wall", wall, by_m: 0.1 }] as never;
const tried = () => sent.filter((one) => one.kind === "try").map((one) => one.operations?.[0]?.wall);
const answered = (number: number) => socket?.onmessage?.({ data: JSON.stringify({ kind: "board", number, engine_ms: 1, drawing_ms: 1 }) });

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("WebSocket", Fake);
  vi.stubGlobal("location", { href: "http://localhost/" });
  sent.length = 0;
});
afterEach(() => { vi.useRealTimers(); vi.unstubAllGlobals(); });

test("one thing is asked at a time, not oftener than the page is to be drawn, and of what is wished meanwhile the latest", () => {
  const live = new Live("hut.job", { board: () => undefined, news: () => undefined, state: () => undefined });
  live.try(wish("a"));
  live.try(wish("b"));
  expect(tried()).toEqual(["a"]);
  vi.advanceTimersByTime(40);
  answered(1);
  live.try(wish("c"));
  expect(tried()).toEqual(["a"]);
  vi.advanceTimersByTime(70);
  expect(tried()).toEqual(["a", "c"]);
  vi.advanceTimersByTime(200);
  live.try(wish("d"));
  expect(tried()).toEqual(["a", "c"]);
  answered(2);
  expect(tried()).toEqual(["a", "c", "d"]);
});

test("what is kept or given up is not asked any more", () => {
  const live = new Live("hut.job", { board: () => undefined, news: () => undefined, state: () => undefined });
  live.try(wish("a"));
  answered(1);
  live.try(wish("b"));
  live.settle();
  vi.advanceTimersByTime(500);
  expect(tried()).toEqual(["a"]);
});
