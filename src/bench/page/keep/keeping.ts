import { dayNumberAt } from "../../../workbook/brewing/companion/wall-clock";
import { timeShown } from "../../../workbook/grid/words/day-words";
import { ask } from "../words/ask";
import { showNotice, showStatus } from "../words/notices";
import type { Session } from "../session";
import { startAutosave } from "./autosave";
import { claimTurn } from "./one-tab";

const timeOfDay = (at: Date) => timeShown(dayNumberAt(at.getTime()));

export interface Keeping {
  flush: () => Promise<void>;
  readonly keepsHere: boolean;
}

export interface KeepingOptions {
  session: Session;
  storageWorks: boolean;
  /** Opens what is kept, after another tab handed it over. */
  reopen: () => Promise<void>;
}

/** Keeps the work in this browser, and settles which tab does so when the bench is open in several. */
export async function startKeeping({ session, storageWorks, reopen }: KeepingOptions): Promise<Keeping> {
  let closeNotice: (() => void) | undefined;
  let closeRefusal: (() => void) | undefined;
  const autosave = startAutosave({
    state: () => session.state(),
    mayWrite: () => storageWorks && turn.mine,
    written: (at) => {
      closeRefusal?.();
      closeRefusal = undefined;
      showStatus(`kept in this browser at ${timeOfDay(at)}`);
    },
    failed: (problem) => {
      console.error(problem);
      showStatus("not kept: this browser refused to store it");
      // Once for a row of refusals: it is tried again after every change.
      closeRefusal ??= showNotice({
        kind: "warning",
        text: "This browser refused to keep the latest changes (its storage may be full). Save the workbook as a file.",
      });
    },
  });
  const turn = await claimTurn({
    beforeLoss: autosave.flush,
    lost: () => tellSecond("The work goes on in another tab. What you change here from now on is not kept."),
  });

  function tellSecond(text: string): void {
    session.forgetEdits();
    showStatus("not kept: open in another tab");
    closeNotice?.();
    closeNotice = showNotice({
      kind: "warning",
      text,
      stays: true,
      actions: [{ label: "Work in this tab instead", act: () => (void takeOver(), false) }],
    });
  }

  async function takeOver(): Promise<void> {
    if (session.edited && !(await agreesToLoss())) return;
    await turn.take();
    closeNotice?.();
    await reopen();
    showStatus("kept in this browser as you go");
  }

  session.onChanged(autosave.touch);
  window.addEventListener("beforeunload", (event) => {
    if (session.edited && !(storageWorks && turn.mine)) event.preventDefault();
  });
  if (!storageWorks) showStatus("not kept: this browser stores nothing here");
  else if (turn.mine) showStatus("kept in this browser as you go");
  else tellSecond("This workbook is open in another tab, which keeps it. What you change here is not kept.");
  return {
    flush: autosave.flush,
    get keepsHere() {
      return storageWorks && turn.mine;
    },
  };
}

async function agreesToLoss(): Promise<boolean> {
  const answer = await ask<true>({
    title: "Work in this tab instead?",
    text: "The workbook is opened again as the other tab left it. What you changed in this tab is lost; cancel and save it as a file if you want it.",
    choices: [{ label: "Open it as the other tab left it", value: true, main: true }],
  });
  return answer === true;
}
