import { batchStage } from "../workbook/batch/read/batch-stage";
import { screens, type Place, type Screen } from "./screens";
import { rememberedScreenTitle, rememberScreenTitle, takeAskedScreenTitle } from "./screen-memory";
import { today } from "./fields/typed";
import { dayNumber } from "../workbook/grid/words/day-number";

/** For as long as the pane's window lives, a reload comes back to where we were. */
export const rememberScreen = ({ title }: Screen): void => rememberScreenTitle(title);

export interface FirstScreen {
  readonly screen: Screen | undefined;
  /** Somebody has just asked for it: the keyboard goes there. */
  readonly asked: boolean;
}

/** The screen asked for, that of last time, or the one that serves the sheet in front: a batch on its brewing day, in the fermenter, packaged. */
export async function firstScreen(): Promise<FirstScreen> {
  const asked = titled(takeAskedScreenTitle());
  if (asked) {
    rememberScreen(asked);
    return { screen: asked, asked: true };
  }
  return { screen: titled(rememberedScreenTitle()) ?? screenOf(await stageOfSheetInFront()) ?? screens[0], asked: false };
}

const titled = (title: string | undefined): Screen | undefined => screens.find((screen) => screen.title === title);
const screenOf = (place: Place): Screen | undefined => screens.find((screen) => screen.place === place);

/** A workbook that cannot be read just now is no reason to keep the brewer waiting; one that is being typed into is waited for. */
async function stageOfSheetInFront(): Promise<Place> {
  try {
    return await Excel.run({ delayForCellEdit: true }, (context) => batchStage(context, dayNumber(today())));
  } catch {
    return "Plan";
  }
}
