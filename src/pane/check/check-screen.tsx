import { counted } from "../../workbook/grid/words/counted";
import { useEffect, useRef, useState } from "preact/hooks";
import { checkWorkbook, type CheckReport } from "../../workbook/care/check/check-workbook";
import type { Finding, Repair } from "../../workbook/care/check/finding";
import { hostWords } from "../../workbook/grid/words/host-words";
import { GoTo } from "../parts/go-to";
import { useLongWork } from "../parts/use-long-work";
import { WorkProgress } from "../parts/work-progress";
import { todayNumber } from "../parts/today-number";
import { RepairForm } from "./repair-form";
import type { Repaired } from "./repair-work";

const weightWords: Readonly<Record<Finding["weight"], string>> = { stop: "Stop", look: "Look", fill: "To fill in" };

/** Looks through the whole workbook and lists what is wrong, sheet by sheet, each with a way to the cell. */
export function CheckScreen() {
  const work = useLongWork();
  const [report, setReport] = useState<CheckReport>();
  const [problem, setProblem] = useState<string>();
  const [repaired, setRepaired] = useState<Repaired>();
  const [checks, setChecks] = useState(0);

  /** After a repair the workbook is looked through by itself: what was found before it would contradict it. */
  const check = async (after?: Repaired): Promise<void> => {
    setRepaired(after);
    setProblem(undefined);
    try {
      setReport(
        await work.run((longWork) => Excel.run({ delayForCellEdit: true }, (context) => checkWorkbook(context, longWork, todayNumber()))),
      );
      setChecks((before) => before + 1);
    } catch (failure) {
      setReport(undefined);
      setProblem(`The check did not finish. ${hostWords(failure)}`);
    }
  };

  const findings = report?.sheets.flatMap((sheet) => sheet.findings) ?? [];
  const repairs = findings.flatMap(({ repair }): Repair[] => (repair ? [repair] : []));
  return (
    <section class="screen" aria-labelledby="check-title">
      <h1 id="check-title">Check this workbook</h1>
      <p class="lead">Looks for what is impossible, missing or unsafe on every sheet. It changes nothing.</p>
      <button type="button" class="main-action" disabled={work.progress !== undefined} onClick={() => void check()}>
        {report ? "Check again" : "Check now"}
      </button>
      {repaired && <RepairedNote {...repaired} />}
      <WorkProgress label="Checking" work={work} />
      {problem !== undefined && (
        <p class="bad" role="alert">
          {problem}
        </p>
      )}
      {report && work.progress === undefined && (
        <>
          <p role="status" class="outcome">
            {outcome(report, findings)}
          </p>
          {report.passedOver.length > 0 && <p class="hint">Not read, since they are too large: {report.passedOver.join(", ")}.</p>}
          {report.unplugged.length > 0 && (
            <p class="hint">
              Unplugged, so looked through for errors only: {report.unplugged.join(", ")}. Plug{" "}
              {report.unplugged.length === 1 ? "it" : "them"} back in to have the batch checked (Share, Unplug).
            </p>
          )}
          {repairs.length > 0 && <RepairForm key={checks} repairs={repairs} onWritten={(written) => void check(written)} />}
          {report.sheets.map(({ sheet, findings: own }) => (
            <section key={sheet} aria-label={sheet}>
              <h2>{sheet}</h2>
              <ul class="findings">
                {own.map((finding, index) => (
                  <li key={index} class={finding.weight}>
                    <strong>{weightWords[finding.weight]}</strong>
                    <p>{finding.words}</p>
                    {finding.address !== undefined && (
                      <GoTo place={{ sheet, range: finding.address }} label={`Go to ${finding.address}`} onProblem={setProblem} />
                    )}
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </>
      )}
    </section>
  );
}

/** Has the focus, since the button that led here is gone with its form. */
function RepairedNote({ isGood, words }: Repaired) {
  const note = useRef<HTMLDivElement>(null);
  useEffect(() => note.current?.focus(), [words]);
  return (
    <div ref={note} class="note" role="status" tabIndex={-1}>
      <p class={isGood ? "good" : "bad"}>{words}</p>
    </div>
  );
}

function outcome({ checked, total, wasStopped }: CheckReport, findings: readonly Finding[]): string {
  const scope = wasStopped ? `Stopped after ${counted(checked, "sheet")} of ${String(total)}. ` : "";
  const of = (weight: Finding["weight"]) => findings.filter((finding) => finding.weight === weight).length;
  if (findings.length === 0)
    return `${scope}${counted(checked, "sheet")} looked through: no problems found. What nobody typed in, nobody can check.`;
  return `${scope}${counted(checked, "sheet")} looked through: ${String(of("stop"))} to stop for, ${String(of("look"))} to look at, ${String(of("fill"))} to fill in.`;
}
