import type { BoardFinding } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { Beware, Mends } from "./Mends";

const SEVERITIES = ["must mend", "advise", "check with the standard"];

export function Findings() {
  const all = state.findings.value;
  const notRun = all.filter((one) => one.severity === "not run");
  return (
    <section class="findings" aria-labelledby="findings-title">
      <h2 id="findings-title">{words.panel.findings}</h2>
      <Beware cautions={all.flatMap((one) => [...one.mends.flatMap((mend) => mend.cautions), one.caution])} />
      {SEVERITIES.map((severity) => {
        const chosen = all.filter((one) => one.severity === severity);
        return chosen.length ? (
          <div key={severity}>
            <h3>{words.panel.severities[severity]} <span class="count">{chosen.length}</span></h3>
            <ul>{chosen.map((one) => <Finding key={one.key} finding={one} />)}</ul>
          </div>
        ) : null;
      })}
      {notRun.length ? (
        <details>
          <summary>{words.panel.notRun} <span class="count">{notRun.length}</span></summary>
          <ul>{notRun.map((one) => <li key={one.key}><strong>{one.code}</strong> {one.message}</li>)}</ul>
        </details>
      ) : null}
    </section>
  );
}

function Finding({ finding }: { finding: BoardFinding }) {
  const site = state.site.value;
  const isDevice = site?.devices?.some((one) => one.id === finding.subject_id);
  const isOpening = site?.openings?.some((one) => one.id === finding.subject_id);
  const show = () => {
    if (isDevice) state.chosen.value = { of: "devices", id: finding.subject_id };
    else if (isOpening) state.chosen.value = { of: "openings", id: finding.subject_id };
  };
  // Its subject stands above as a button: it need not be said twice.
  const start = `${finding.subject}: `;
  const rest = finding.message.startsWith(start) ? finding.message.slice(start.length) : finding.message;
  return (
    <li class={`finding is-${finding.severity.replaceAll(" ", "-")}`}>
      <p class="about">
        <strong>{finding.code}</strong>
        {isDevice || isOpening ? <button type="button" class="plain" onClick={show}>{finding.subject}</button> : <span>{finding.subject}</span>}
      </p>
      <p>{rest[0]?.toUpperCase()}{rest.slice(1)}</p>
      <p class="cure">{finding.cure}</p>
      {finding.mends.length ? <Mends mends={finding.mends} isAmongMany /> : null}
    </li>
  );
}
