import { live } from "../server/now";
import * as state from "../state";

/** Choose an answer, which is then drawn on the plan; null: none. */
export function choose(key: string | null): void {
  state.shown.value = key;
  state.laid.value = null;
  state.goesAlong.value = key !== null;
  live.value?.show(key);
}
