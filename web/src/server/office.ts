/** The firm's own data, once for all jobs of the folder; and what a job costs by them. */
import type { Firm, OfficeSaid, ShownQuote } from "./types";
import { asked } from "./works";

const told = <T>(path: string, options?: RequestInit) => asked<T>(path, options, true);

export const office = () => told<OfficeSaid>("office");
export const keepFirm = (firm: Firm) =>
  told<OfficeSaid>("office/firm", { method: "PUT", body: JSON.stringify(firm), headers: { "content-type": "application/json" } });
export const keepPrices = (file: File) =>
  told<OfficeSaid>(`office/prices?name=${encodeURIComponent(file.name)}`, { method: "PUT", body: file });
export const dropPrices = () => told<OfficeSaid>("office/prices", { method: "DELETE" });
export const quote = (file: string) => told<ShownQuote>(`jobs/${encodeURIComponent(file)}/quote`);
