/** Where the names of rooms and fixtures lie: the house's drawing says it. */
import { boxAbout, type Box } from "./labels";

const TEXT = /<text class="ink-([a-z-]+)" x="([-\d.]+)" y="([-\d.]+)"(?: text-anchor="(\w+)")?( transform="[^"]*")?>([^<]*)</g;
/** Mean width of a letter as a share of its size (assumption, as in the drawing itself). */
const LETTER = 0.54;

/** The boxes of all texts of a drawing, as large as they are shown. */
export function namesOn(drawing: string, inks: string, grown: number, isCrowded: boolean): Box[] {
  const found: Box[] = [];
  for (const [, style = "", x, y, anchor, turned, text = ""] of drawing.matchAll(TEXT)) {
    if (isCrowded && style === "space-area") continue;
    const size = Number(new RegExp(`\\.ink-${style}\\{[^}]*font-size:([\\d.]+)px`).exec(inks)?.[1] ?? 2.5) * grown;
    const [wide, high] = [text.length * size * LETTER, size];
    const shift = anchor === "middle" ? 0 : anchor === "end" ? -wide / 2 : wide / 2;
    const middle = [Number(x) + (turned ? 0 : shift), Number(y) - 0.35 * size] as const;
    found.push(boxAbout(middle, turned ? high : wide, turned ? wide : high));
  }
  return found;
}
