import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";
import { momentShown } from "../../workbook/grid/words/day-words";
import { openSample } from "./files/commands";
import { sampleName } from "./files/sample";
import { download } from "./files/download";
import { readKept, setAside, type Damage, type Kept } from "./keep/storage";
import type { Session } from "./session";
import { showNotice } from "./words/notices";

/**
 * What the grid shows first: the work kept in this browser; on the very first start the sample batch; otherwise an
 * empty workbook.
 *
 * @returns whether it is the sample that is open, by its name
 */
export async function openFirstWorkbook(session: Session, kept: Kept | undefined, startEmpty: boolean): Promise<{ isSample: boolean }> {
  if (kept === undefined) {
    showNotice({
      kind: "warning",
      text: "This browser keeps nothing for this page (a private window, perhaps). Save your work as a file before you leave.",
    });
  }
  const { states, damages } = kept ?? { states: [], damages: [] };
  const opened = await openNewest(session, states, damages);
  if (damages.length > 0) reportDamage(damages, opened);
  if (opened !== undefined) return { isSample: session.name === sampleName };
  if (!startEmpty && damages.length === 0 && (await sampleOpened(session))) return { isSample: true };
  await session.openEmpty();
  return { isSample: false };
}

export async function readKeptOrNothing(): Promise<Kept | undefined> {
  try {
    return await readKept();
  } catch (problem) {
    console.error(problem);
    return undefined;
  }
}

/** A record may look whole and still not open; then the one before it is tried. */
async function openNewest(session: Session, states: Kept["states"], damages: Damage[]): Promise<Date | undefined> {
  for (const { place, savedAt, ...state } of states) {
    try {
      await session.open(state);
      return savedAt;
    } catch (problem) {
      console.error(problem);
      damages.push(await setAside(place, state, `the grid refused it: ${(problem as Error).message}`));
    }
  }
  return undefined;
}

function reportDamage(damages: readonly Damage[], opened: Date | undefined): void {
  const instead =
    opened === undefined
      ? "A fresh workbook is open instead."
      : `The state from ${momentShown(dayNumberAt(opened.getTime()))} is open instead.`;
  showNotice({
    kind: "warning",
    text: `The work kept in this browser was damaged (${damages.map(({ reason }) => reason).join("; ")}). ${instead} What was damaged is set aside.`,
    actions: damages.map((damage) => ({
      label: "Download what is left",
      act: () => {
        download(JSON.stringify(damage.record, undefined, 1), `${damage.key.replaceAll(":", "-")}.json`, "application/json");
        return false;
      },
    })),
  });
}

async function sampleOpened(session: Session): Promise<boolean> {
  try {
    return await openSample(session);
  } catch (problem) {
    console.error(problem);
    return false;
  }
}
