import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";

/** Today on the wall calendar, as Excel counts days. */
export const todayNumber = (): number => Math.floor(dayNumberAt(Date.now()));
