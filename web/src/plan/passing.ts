/** Whom and which part the plan is drawn on for: where somebody may be while a part is set. */
import { computed, signal } from "@preact/signals";
import { enqueue } from "../edits/queue";
import type { Operation, Person, Site } from "../server/types";
import * as state from "../state";

export type May = "may" | "may not" | "not told";
export const TURNS: Record<May, May> = { "not told": "may not", "may not": "may", may: "not told" };

export const who = signal("");
export const part = signal("");
/** Whether the plan is drawn on. */
export const isDrawing = signal(false);

export const people = computed<readonly Person[]>(() => state.site.value?.people ?? []);
/** The parts that are set while somebody is in. */
export const parts = computed(() => (state.site.value?.parts ?? [{ id: "full", name: "full set" }, { id: "night", name: "night part set" }]).filter((one) => one.id !== "full"));
export const person = computed<Person | undefined>(() => people.value.find((one) => one.id === who.value) ?? people.value[0]);
export const chosenPart = computed(() => parts.value.find((one) => one.id === part.value) ?? parts.value[0]);

/** What is told of one space. */
export function told(one: Person, partId: string, space: string): May {
  const passes = (one.passes ?? []).filter((pass) => pass.part === partId);
  if (passes.some((pass) => pass.may_not?.includes(space))) return "may not";
  return passes.some((pass) => pass.may?.includes(space)) ? "may" : "not told";
}

/** Whether being there is ordinary: as the model has it. */
export function mayBe(one: Person, partId: string, space: string): boolean {
  if (space === one.bed) return true;
  const now = told(one, partId, space);
  if (now !== "not told") return now === "may";
  return !(one.passes ?? []).some((pass) => pass.part === partId && pass.may?.length);
}

export function letPass(may: May, where: { spaces: string[] } | { storey: string; line_m: [number, number][] }): void {
  const [one, partOf] = [person.value, chosenPart.value];
  if (!one || !partOf) return;
  void enqueue([{ do: "let-pass", person: one.id, part: partOf.id, may, ...where } as Operation]);
}

/** Ours alone: nobody is asked where the neighbours may be. */
export const spacesOf = (site: Site) => (site.spaces ?? []).filter((one) => (one.belongs ?? "ours") === "ours");
