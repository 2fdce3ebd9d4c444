import { batchStage } from "../workbook/batch/read/batch-stage";
import { screens, type Place, type Screen } from "./screens";
import { today } from "./sheets/typed";
import { dayNumber } from "../workbook/grid/words/day-number";

const memory = "gylebook-screen";

/** For as long as the pane's window lives, a reload comes back to where we were. */
export function rememberScreen({ title }: Screen): void {
  try {
    sessionStorage.setItem(memory, title);
  } catch {
    // A host that keeps nothing: the pane opens as for the first time.
  }
}

function remembered(): Screen | undefined {
  try {
    return screens.find(({ title }) => title === sessionStorage.getItem(memory));
  } catch {
    return undefined;
  }
}

/** The screen of last time, or the one that serves the sheet in front: a batch on its brewing day, in the fermenter, packaged. */
export async function firstScreen(): Promise<Screen | undefined> {
  const before = remembered();
  if (before) return before;
  return screenOf(await stageOfSheetInFront()) ?? screens[0];
}

const screenOf = (place: Place): Screen | undefined => screens.find((screen) => screen.place === place);

/** A workbook that cannot be read just now is no reason to keep the brewer waiting. */
async function stageOfSheetInFront(): Promise<Place> {
  try {
    return await Excel.run((context) => batchStage(context, dayNumber(today())));
  } catch {
    return "Plan";
  }
}
