import { beforeEach, expect, test, vi } from "vitest";

vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => undefined, removeItem: () => undefined });
const state = await import("./state");

beforeEach(() => {
  state.kept.value = { name: "hut", storeys: [], devices: [{ id: "a" }, { id: "b" }] } as never;
  state.answers.value = new Map();
});

test("changed records take the place of the old ones, new ones come last, gone ones go", () => {
  state.take([{ key: "devices/a", record: { id: "a", name: "new" } }, { key: "devices/b", record: null }, { key: "devices/c", record: { id: "c" } }, { key: "name", record: "cabin" }]);
  expect(state.site.value?.devices).toEqual([{ id: "a", name: "new" }, { id: "c" }]);
  expect(state.site.value?.name).toBe("cabin");
});

test("what waits is shown as done, on top of whatever the server says meanwhile", () => {
  state.ahead.value = [{ do: "turn-device", device: "a", heading_deg: 30 }];
  state.take([{ key: "devices/a", record: { id: "a", heading_deg: 10, name: "said" } }]);
  expect(state.site.value?.devices?.[0]).toEqual({ id: "a", heading_deg: 30, name: "said" });
  state.ahead.value = [];
  expect(state.site.value?.devices?.[0]).toEqual({ id: "a", heading_deg: 10, name: "said" });
});

test("a board brings only what changed, and what it does not name any more goes", () => {
  const board = { kind: "board", revision: 1, number: null, waiting: [], findings: null, tags: {}, overlays: {}, strip: "", walk: [], engine_ms: 1, drawing_ms: 1, fault: "" };
  state.takeBoard({ ...board, order: ["1/a", "1/b"], answers: [{ key: "1/a" }, { key: "1/b" }] } as never, 0);
  state.takeBoard({ ...board, order: ["1/b"], answers: [] } as never, 0);
  expect([...state.answers.value.keys()]).toEqual(["1/b"]);
});

test("answers that wait for a hand to rest are known until they are asked again", () => {
  const board = { kind: "board", revision: 1, number: null, findings: null, answers: [], tags: {}, overlays: {}, strip: "", walk: [], engine_ms: 1, drawing_ms: 1, fault: "" };
  state.takeBoard({ ...board, order: ["1/b", "3/c"], waiting: ["3/c"] } as never, 0);
  expect([...state.later.value]).toEqual(["3/c"]);
  state.takeBoard({ ...board, order: ["1/b", "3/c"], waiting: [] } as never, 0);
  expect(state.later.value.size).toBe(0);
});

test("while something is dragged the plan is drawn at once, and what stands beside it a few times a second", () => {
  vi.useFakeTimers();
  const board = { kind: "board", revision: 1, findings: null, tags: {}, strip: "", walk: [], engine_ms: 1, drawing_ms: 1, fault: "", order: ["1/a"], waiting: [] };
  const tried = (number: number | null, value: string) =>
    state.takeBoard({ ...board, number, overlays: { ground: value }, answers: [{ key: "1/a", value }] } as never, 0);
  const shown = () => [state.overlays.value["ground"], (state.answers.value.get("1/a") as { value: string }).value];
  tried(null, "kept");
  tried(1, "first");
  tried(2, "second");
  expect(shown()).toEqual(["second", "kept"]);
  vi.advanceTimersByTime(450);
  expect(shown()).toEqual(["second", "second"]);
  tried(3, "third");
  tried(null, "let go");
  expect(shown()).toEqual(["let go", "let go"]);
  vi.useRealTimers();
});

test("a board that says what is wrong leaves the answers as they were", () => {
  state.takeBoard({ kind: "board", revision: 1, number: 4, order: [], waiting: [], answers: [], findings: null, overlays: {}, strip: "", walk: [], engine_ms: 0, drawing_ms: 0, fault: "It is on no wall" } as never, 0);
  expect(state.note.value).toBe("It is on no wall");
});

test("how a fact is known: marked, told, or default", () => {
  const door = { lock: "latch", habit: "shut", basis: { lock: "guessed" } };
  expect(["lock", "habit", "covering"].map((field) => state.knownBy(door, field))).toEqual(["guessed", "told", "default"]);
});
