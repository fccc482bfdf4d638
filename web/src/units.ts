/** Lengths of the house and of the drawing are different things: the compiler keeps them apart. */
export type Metres = number & { readonly unit: "m" };
export type DrawnMm = number & { readonly unit: "mm" };
export type Point = readonly [Metres, Metres];

export const metres = (value: number): Metres => value as Metres;
export const point = (x: number, y: number): Point => [metres(x), metres(y)];

const INCHES_PER_METRE = 39.37007874015748;

/** A length in words: metres to the centimetre, or feet and inches to the half inch. */
export function lengthWords(value: number, system: "metric" | "feet"): string {
  if (system === "metric") return `${value.toFixed(2)} m`;
  const halves = Math.round(value * INCHES_PER_METRE * 2);
  const feet = Math.trunc(halves / 24);
  const rest = Math.abs(halves % 24) / 2;
  const inches = `${Math.floor(rest) || (rest % 1 ? "" : 0)}${rest % 1 ? "\u00bd" : ""}`;
  return feet ? `${feet}\u2032 ${inches}\u2033` : `${halves < 0 ? "-" : ""}${inches}\u2033`;
}

/** A direction on the plan in words. */
export function towardWords(degrees: number): string {
  const names = ["east", "north-east", "north", "north-west", "west", "south-west", "south", "south-east"];
  const turn = ((degrees % 360) + 360) % 360;
  return `${names[Math.round(turn / 45) % 8]} on the plan (${Math.round(turn)}\u00b0)`;
}

/** The size of a file in words. */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  return bytes < 1_000_000 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(bytes < 10_000_000 ? 1 : 0)} MB`;
}

/** A moment of the server's clock, by this machine's day and hour. */
export function momentWords(at: string, locale: string): string {
  return new Date(at).toLocaleString(locale, { day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit" });
}
