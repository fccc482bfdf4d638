/** The live link of the job that is open now. */
import { signal } from "@preact/signals";
import type { Live } from "./link";

export const live = signal<Live | null>(null);
