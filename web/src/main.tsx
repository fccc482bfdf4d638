import { batch, effect } from "@preact/signals";
import { render } from "preact";
import { caughtUp, recall, watch } from "./edits/queue";
import { watchResults } from "./edits/results";
import { Attachments } from "./panels/Attachments";
import { Campaign } from "./panels/Campaign";
import { Comparison } from "./panels/Comparison";
import { Details } from "./panels/Details";
import { Findings } from "./panels/Findings";
import { Head } from "./panels/Head";
import { History } from "./panels/History";
import { Jobs } from "./panels/Jobs";
import { Signed } from "./panels/Signed";
import { Quote } from "./panels/Quote";
import { Questions } from "./panels/Questions";
import { Fit } from "./panels/Fit";
import { LookAfter } from "./panels/LaterSteps";
import { Prove } from "./panels/Prove";
import { Passes } from "./panels/Passes";
import { HandOver } from "./panels/HandOver";
import { Survey } from "./panels/Survey";
import { Zones } from "./panels/Zones";
import { Plan } from "./plan/Plan";
import { Live, opened } from "./server/link";
import { live } from "./server/now";
import * as state from "./state";
import "./style.css";
import "./panels/keeping.css";
import "./panels/onsite.css";
import { words } from "./words";

async function open(file: string): Promise<void> {
  try {
    state.begin(await opened(file));
  } catch (fault) {
    state.note.value = (fault as Error).message;
    return;
  }
  recall(file);
  live.value?.close();
  live.value = new Live(file, {
    board: state.takeBoard,
    news: (news) => {
      if (news.revision > state.revision.value) caughtUp(news);
      batch(() => {
        state.storeys.value = state.asBefore(state.storeys.value, news.storeys);
        state.houses.value = { ...state.houses.value, ...news.houses };
      });
    },
    state: (isLive) => { state.isLive.value = isLive; },
  });
  location.hash = encodeURIComponent(file);
}

function leave(): void {
  live.value?.close();
  live.value = null;
  state.file.value = null;
  state.kept.value = null;
  state.compared.value = null;
  location.hash = "";
}

function Panel() {
  const step = state.step.value;
  if (step === "Survey") return <Survey />;
  if (step === "Design") return <><Comparison /><Questions /><Findings /><Campaign /><Zones /><Passes /><Quote /><History /></>;
  if (step === "Fit") return <Fit />;
  if (step === "Prove") return <Prove />;
  return step === "Hand over" ? <><HandOver /><Signed /></> : <LookAfter />;
}

function App() {
  return (
    <>
      {state.note.value ? (
        <div class="note" role="alert">{state.note.value}
          <button type="button" aria-label={words.things.close} onClick={() => { state.note.value = ""; }}>{"\u00d7"}</button></div>
      ) : null}
      {state.file.value === null ? <Jobs onOpen={(file) => void open(file)} /> : (
        <div class="desk" data-step={state.step.value}>
          <Head onLeave={leave} />
          <main><Plan /></main>
          <aside id="panel" tabIndex={-1} aria-label={state.step.value}>{state.isOnSite.value ? null : <Details />}<Panel /><Attachments /></aside>
        </div>
      )}
    </>
  );
}

effect(() => {
  if (state.theme.value) document.documentElement.dataset["theme"] = state.theme.value;
  else delete document.documentElement.dataset["theme"];
});
effect(() => {
  let sheet = document.getElementById("inks");
  if (!sheet) { sheet = document.createElement("style"); sheet.id = "inks"; document.head.append(sheet); }
  // On the screen letters of the plan may be larger than on paper.
  sheet.textContent = state.inks.value.replace(/font-size:([\d.]+)px/g, "font-size:calc($1px * var(--letters, 1))");
});
watch();
watchResults();
render(<App />, document.getElementById("app") as HTMLElement);
const asked = decodeURIComponent(location.hash.slice(1));
if (asked) void open(asked).then(() => { document.documentElement.dataset["ready"] = ""; });
else document.documentElement.dataset["ready"] = "";
