/** The firm's own data, once for all jobs of the folder; and what a job costs by them. */
import { Refusal } from "./link";
import type { Firm, OfficeSaid, ShownQuote } from "./types";

async function asked<T>(path: string, options?: RequestInit): Promise<T> {
  const answer = await fetch(`api/${path}`, options);
  const said = (await answer.json()) as T & { what?: string; where?: string; cure?: string };
  if (answer.ok) return said;
  throw new Refusal(said.what ? `${said.where ? `${said.where}: ` : ""}${said.what}. ${said.cure ?? ""}.` : `The server said ${answer.status}.`);
}

export const office = () => asked<OfficeSaid>("office");
export const keepFirm = (firm: Firm) =>
  asked<OfficeSaid>("office/firm", { method: "PUT", body: JSON.stringify(firm), headers: { "content-type": "application/json" } });
export const keepPrices = (file: File) =>
  asked<OfficeSaid>(`office/prices?name=${encodeURIComponent(file.name)}`, { method: "PUT", body: file });
export const dropPrices = () => asked<OfficeSaid>("office/prices", { method: "DELETE" });
export const quote = (file: string) => asked<ShownQuote>(`jobs/${encodeURIComponent(file)}/quote`);
