import { words } from "../words";

/** How a fact is known. */
export function Known({ basis }: { basis: string }) {
  return <span class={`known known-${basis}`}>{words.panel.basis[basis] ?? basis}</span>;
}
