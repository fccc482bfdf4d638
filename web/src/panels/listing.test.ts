import { expect, test } from "vitest";
import type { BoardAnswer } from "../server/types";
import { axes, grouped, isShown, placed } from "./listing";

const answer = (question: number, subject: string, verdict: string, more: Partial<BoardAnswer> = {}) =>
  ({ key: `${question}/${subject}`, question, question_name: `Q${question}`, verdict, storey: "ground", about: [subject], span: null, ...more }) as BoardAnswer;
const span = (low: number, value: number, high: number, unit = "s") => ({ span: { low, value, high, unit } });

const ALL = [answer(5, "door", "bad"), answer(1, "window", "thin"), answer(1, "hatch", "unknown", { storey: "first" }), answer(5, "window", "good"), answer(7, "site", "good", { storey: "", about: ["site", "door"] })];
const ORDER = ALL.map((one) => one.key);
const MAP = new Map(ALL.map((one) => [one.key, one]));

test("the question with the worst answer stands first, and what is met stands back", () => {
  const groups = grouped(ORDER, MAP, { storey: "", thing: "" }, null);
  expect(groups.map((one) => one.question)).toEqual([5, 1, 7]);
  expect(groups[0]?.counts).toEqual({ bad: 1, good: 1 });
  expect(groups[0]?.open.map((one) => one.key)).toEqual(["5/door"]);
  expect(groups[1]?.rest.map((one) => one.key)).toEqual(["1/hatch"]);
});

test("the chosen one stays in view when it is met", () => {
  expect(grouped(ORDER, MAP, { storey: "", thing: "" }, "5/window")[0]?.open.map((one) => one.key)).toEqual(["5/door", "5/window"]);
});

test("a storey keeps what is of the whole house, a thing only what has to do with it", () => {
  expect(ALL.filter((one) => isShown(one, { storey: "first", thing: "" })).map((one) => one.key)).toEqual(["1/hatch", "7/site"]);
  expect(ALL.filter((one) => isShown(one, { storey: "", thing: "door" })).map((one) => one.key)).toEqual(["5/door", "7/site"]);
});

test("each unit has an axis of its own, with nought unless all stand far from it", () => {
  const found = axes([answer(1, "a", "bad", span(-7, -1, 1)), answer(1, "b", "bad", span(5, 9, 17, "m")), answer(1, "c", "bad", span(70, 75, 80, "dB")), answer(1, "d", "good", span(2, 2, 2, "ways"))]);
  expect(found).toEqual({ s: { low: -7, high: 1 }, m: { low: 0, high: 17 }, dB: { low: 70, high: 80 } });
  expect(placed(-3, { low: -7, high: 1 })).toBe(50);
});
