import { dayNumber } from "../../workbook/day-number";

/** Today on the wall calendar, as Excel counts days. */
export function todayNumber(now = new Date()): number {
  return dayNumber(`${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`);
}
