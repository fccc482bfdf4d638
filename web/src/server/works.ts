/** Long work of the server: begun, followed step by step over its own link, stopped; and files handed in for it. */
import { Refusal } from "./link";
import type { AttachmentLine, HandedIn, HandedInLimits, IntakeWish, SignedLine, WorkNews } from "./types";

const LEAST_PAUSE_MS = 250;
const LONGEST_PAUSE_MS = 4000;
const name = encodeURIComponent;
const body = (value: unknown): RequestInit => ({ method: "POST", body: JSON.stringify(value), headers: { "content-type": "application/json" } });

/** Ask the server; what it refuses is told with its cure, and with its place where that says which line of a form it is. */
export async function asked<T>(path: string, options?: RequestInit, withPlace = false): Promise<T> {
  const answer = await fetch(`api/${path}`, options);
  if (answer.status === 204) return undefined as T;
  const said = (await answer.json()) as T & { what?: string; where?: string; cure?: string };
  if (answer.ok) return said;
  const place = withPlace && said.where ? `${said.where}: ` : "";
  throw new Refusal(said.what ? `${place}${said.what}. ${said.cure ?? ""}.` : `The server said ${answer.status}.`);
}

export const limits = () => asked<HandedInLimits>("limits");
export const handIn = (file: File, signal: AbortSignal) =>
  asked<HandedIn>(`files?name=${name(file.name)}`, { method: "POST", body: file, signal });
export const letGo = (id: string) => asked<undefined>(`files/${name(id)}`, { method: "DELETE" });
export const bringHouse = (wish: IntakeWish) => asked<WorkNews>("intake", body(wish));

export const attachments = (file: string) => asked<AttachmentLine[]>(`jobs/${name(file)}/attachments`);
export const attach = (file: string, content: File, facts: { about: string; note: string; author: string }) =>
  asked<AttachmentLine>(`jobs/${name(file)}/attachments?${new URLSearchParams({ name: content.name, ...facts })}`, { method: "POST", body: content });
export const changeAttachment = (file: string, number: number, what: "removed" | "put back", author: string) =>
  asked<AttachmentLine>(`jobs/${name(file)}/attachments/${number}/changes`, body({ what, author }));
export const contentOf = (file: string, number: number) => `api/jobs/${name(file)}/attachments/${number}`;

export const signed = (file: string) => asked<SignedLine[]>(`jobs/${name(file)}/signed`);
export const sign = (file: string, revision: number, author: string, what: string) =>
  asked<WorkNews>(`jobs/${name(file)}/signed`, body({ revision, author, what }));
export const sinceSigned = (file: string, number: number) => asked<WorkNews>(`jobs/${name(file)}/signed/${number}/compared`, body({}));

export const campaign = (file: string, trials: number) => asked<WorkNews>(`jobs/${name(file)}/campaign`, body({ trials }));

export const stop = (id: string) => asked<WorkNews>(`works/${name(id)}/stop`, body({}));
export const hasEnded = (news: WorkNews) => news.state === "done" || news.state === "stopped" || news.state === "failed";

/** Hear of each step until it has ended; a link that was cut comes back, and a server that forgot it says so. */
export async function follow(id: string, hear: (news: WorkNews) => void): Promise<WorkNews> {
  for (let pause = LEAST_PAUSE_MS; ; pause = Math.min(LONGEST_PAUSE_MS, 2 * pause)) {
    const last = await linked(id, hear);
    if (last && hasEnded(last)) return last;
    await new Promise((go) => { setTimeout(go, pause); });
    try {
      const news = await asked<WorkNews>(`works/${name(id)}`);
      hear(news);
      if (hasEnded(news)) return news;
      pause = LEAST_PAUSE_MS / 2;
    } catch (fault) {
      if (fault instanceof Refusal) throw fault;
    }
  }
}

function linked(id: string, hear: (news: WorkNews) => void): Promise<WorkNews | null> {
  return new Promise((go) => {
    let last: WorkNews | null = null;
    const address = new URL(`api/works/${name(id)}/live`, location.href);
    address.protocol = address.protocol.replace("http", "ws");
    const socket = new WebSocket(address);
    socket.onmessage = (event) => { last = JSON.parse(event.data as string) as WorkNews; hear(last); };
    socket.onclose = () => go(last);
  });
}
