/** Unplugging and plugging in. Draws in @borgar/fx: import it on demand, with the screen that needs it. */
export { PlugInRefused, plugIn, type Conflict, type PluggedIn } from "./plug-in-sheet";
export { canPlugInAgain } from "./can-plug-in";
export { UnplugRefused } from "./plan-unplug";
export { deleteSheets, unpluggedCopies } from "./unplug-sheet";
export type { UnplugChoices, UnpluggedSheet } from "./unplugged-sheet";
