import type { SheetExtras } from "../../../excel-stand-in/excel/sheet-extras";
import type { Session } from "../session";
import { ask } from "../words/ask";
import type { Paper } from "./paper";

/** Print and PDF of the sheet in front. The part that lays pages out is fetched when the bench has time, so that its start does not wait for it. */
export function paperButtons(
  session: Session,
  extrasOf: (unitId: string, sheetId: string) => SheetExtras | undefined,
): { print: () => Promise<void>; pdf: () => Promise<void>; fetchSoon: () => void } {
  let paper: Promise<Paper> | undefined;
  const fetched = (): Promise<Paper> =>
    (paper ??= import(/* webpackChunkName: "paper" */ "./paper").then(({ Paper }) => new Paper(session, extrasOf)));

  const print = async (): Promise<void> => (await fetched()).print();
  const pdf = async (): Promise<void> => {
    const answer = await ask<"go">({
      title: "Save this sheet as a PDF?",
      text: "The browser makes it: in the window that opens, choose “Save as PDF” where the printer is named, and leave its scale at 100 %.",
      choices: [{ label: "Open that window", value: "go", main: true }],
    });
    if (answer === "go") await print();
  };
  /** The browser's own menu prints too, and does not wait. */
  const fetchSoon = (): void => {
    const idle = window.requestIdleCallback ?? ((act: () => void) => setTimeout(act, 2000));
    idle(() => void fetched(), { timeout: 10_000 });
  };
  return { print, pdf, fetchSoon };
}
