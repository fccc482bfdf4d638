/** Everything that goes to the server and comes from it. */
import type { Board, Compared, Drawn, Edit, GivesWay, HistoryLine, JobLine, LaterSteps, News, Opened, Operation, PaperClass, PaperPage, Refused, ResultWish, SiteResult, Taken } from "./types";

export class Refusal extends Error {}

async function asked<T>(path: string, options?: RequestInit): Promise<{ status: number; said: T }> {
  const answer = await fetch(`api/jobs${path}`, { headers: { "content-type": "application/json" }, ...options });
  const said = (await answer.json()) as T;
  if (answer.status >= 400 && answer.status !== 409) {
    const fault = said as { what?: string; cure?: string; detail?: unknown };
    throw new Refusal(fault.what ? `${fault.what}. ${fault.cure ?? ""}.` : `The server said ${answer.status}.`);
  }
  return { status: answer.status, said };
}

const name = encodeURIComponent;
const body = (value: unknown) => ({ method: "POST", body: JSON.stringify(value) });

export const jobs = async () => (await asked<JobLine[]>("")).said;
export const make = async (file: string, sample: string) => (await asked<JobLine>("", body({ file, sample }))).said;
export const documentOf = (file: string) => `api/jobs/${name(file)}/document`;
export const opened = async (file: string, revision?: number) =>
  (await asked<Opened>(`/${name(file)}${revision === undefined ? "" : `?revision=${revision}`}`)).said;
export const comparison = async (file: string, before: number) =>
  (await asked<Compared>(`/${name(file)}/comparison?before=${before}`)).said;
export const laterSteps = async (file: string) => (await asked<LaterSteps>(`/${name(file)}/steps`)).said;
export const drawn = async (file: string, key: string) => (await asked<Drawn>(`/${name(file)}/steps/drawn?key=${name(key)}`)).said;
export const givesWay = async (file: string, device: string) =>
  (await asked<GivesWay>(`/${name(file)}/steps/gives-way?device=${name(device)}`)).said;
export const results = async (file: string) => (await asked<SiteResult[]>(`/${name(file)}/steps/results`)).said;
export const writeResult = async (file: string, value: ResultWish) => (await asked<SiteResult>(`/${name(file)}/steps/results`, body(value))).said;
export const papers = async (file: string) => (await asked<PaperClass[]>(`/${name(file)}/papers`)).said;
export const paper = (file: string, copy: string, paper: string) => `api/jobs/${name(file)}/papers/${copy}/${name(paper)}`;
export const printed = (file: string, copy: string, name: string) => `${paper(file, copy, name)}?printed=true`;
export const pagesOf = async (file: string, copy: string, paperName: string) =>
  (await asked<PaperPage[]>(`/${name(file)}/papers/${copy}/${name(paperName)}/pages`)).said;
export const page = (file: string, copy: string, name: string, number: number, width: number) =>
  `${paper(file, copy, name)}/pages/${number}?width=${width}`;
export const history = async (file: string) => (await asked<HistoryLine[]>(`/${name(file)}/history`)).said;

export type Outcome = { taken: Taken } | { refused: Refused };

async function outcome(path: string, value: unknown): Promise<Outcome> {
  const { status, said } = await asked<Taken | Refused>(path, body(value));
  return status === 409 ? { refused: said as Refused } : { taken: said as Taken };
}
export const edit = (file: string, value: Edit) => outcome(`/${name(file)}/edits`, value);
export const undo = (file: string, id: string, author: string, base: number) =>
  outcome(`/${name(file)}/undo`, { id, author, base });

export interface Hears { board(board: Board, link: number): void; news(news: News): void; state(isLive: boolean): void }

/** Ten answers a second while something is dragged: it stays smooth. [ms] */
const ASKED_EVERY_MS = 100;

/** The live link: comes back by itself when it was cut. */
export class Live {
  private socket: WebSocket | null = null;
  private number = 0;
  private since = -Infinity;
  private later: ReturnType<typeof setTimeout> | undefined;
  private isAsking = false;
  private wished: Operation[] | null = null;
  private isWanted = true;
  private pause = 250;
  private showing: string | null = null;

  constructor(private readonly file: string, private readonly hears: Hears) { this.open(); }

  private open(): void {
    const address = new URL(`api/jobs/${name(this.file)}/live`, location.href);
    address.protocol = address.protocol.replace("http", "ws");
    const socket = new WebSocket(address);
    this.socket = socket;
    socket.onopen = () => { this.pause = 250; this.hears.state(true); this.show(this.showing); };
    socket.onmessage = (event) => this.heard(JSON.parse(event.data as string) as Board | News);
    socket.onclose = () => {
      if (this.socket !== socket) return;
      this.isAsking = false;
      this.hears.state(false);
      if (this.isWanted) setTimeout(() => this.open(), this.pause);
      this.pause = Math.min(4000, this.pause * 2);
    };
  }

  private heard(said: Board | News): void {
    if (said.kind === "news") { this.hears.news(said); return; }
    const whole = said.number === this.number ? performance.now() - this.since : 0;
    this.hears.board(said, Math.max(0, whole - said.engine_ms - said.drawing_ms));
    this.isAsking = false; // whatever it answers: after each wish, the server says something
    if (this.wished) this.try(this.wished);
  }

  private send(value: object): boolean {
    if (this.socket?.readyState !== WebSocket.OPEN) return false;
    this.socket.send(JSON.stringify(value));
    return true;
  }

  show(key: string | null): void { this.showing = key; this.send({ kind: "show", key }); }

  /** Ask what the answers would be: one thing at a time, not without rest, and of what is wished meanwhile only the latest. */
  try(operations: Operation[]): void {
    const rest = this.since + ASKED_EVERY_MS - performance.now();
    if (this.isAsking || rest > 0) {
      this.wished = operations;
      if (!this.isAsking) this.later ??= setTimeout(() => { this.later = undefined; if (this.wished && !this.isAsking) this.try(this.wished); }, rest);
      return;
    }
    this.number += 1;
    this.wished = null;
    this.since = performance.now();
    this.isAsking = this.send({ kind: "try", number: this.number, operations });
  }

  /** Nothing is tried any more: what was tried is kept now, or given up. */
  settle(): void { this.wished = null; }

  close(): void { this.isWanted = false; this.socket?.close(); }
}
