import { useState } from "preact/hooks";
import { giveOwnMark } from "../../workbook/brewing/companion/own-mark";
import { carryOut } from "../../workbook/brewing/companion/outcome";

interface CopiedSheetsProps {
  /** Groups of sheets that carry one mark. */
  readonly groups: readonly (readonly string[])[];
  /** What is shown has to be read again. */
  readonly onGiven: () => void;
}

const quoted = (names: readonly string[]): string => new Intl.ListFormat("en-GB").format(names.map((name) => `“${name}”`));

/** Asks which of the sheets that carry one mark is the copy, since nothing in a workbook tells; that one gets a mark of its own. */
export function CopiedSheets({ groups, onGiven }: CopiedSheetsProps) {
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<{ readonly isGood: boolean; readonly words: string }>();
  const give = async (sheetName: string) => {
    setBusy(true);
    let log = false;
    const outcome = await carryOut(async (context) => {
      log = await giveOwnMark(context, sheetName);
    });
    setBusy(false);
    if (outcome.kind !== "written") return setSaid({ isGood: false, words: outcome.message });
    setSaid({
      isGood: true,
      words: `“${sheetName}” is a batch of its own now.${log ? " It brought a log along: clear the times and readings that are the other batch's." : ""}`,
    });
    onGiven();
  };
  return (
    <>
      {groups.map((names) => (
        <div key={names.join()} class="note copied">
          <p>
            {quoted(names)} are copies of one sheet and carry the same mark, so until you say which is the copy they count as one batch and
            cannot draw on the stores. The copy gets a mark of its own.
          </p>
          {names.map((name) => (
            <button key={name} type="button" disabled={busy} onClick={() => void give(name)}>
              “{name}” is the copy
            </button>
          ))}
        </div>
      ))}
      <div aria-live="polite">{said && <p class={said.isGood ? "good" : "bad"}>{said.words}</p>}</div>
    </>
  );
}
