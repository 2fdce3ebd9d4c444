import { isoDay } from "../../workbook/day-number";

/** "5 Sept": short, in the words of the pane. */
export const dayText = (day: number): string => new Date(`${isoDay(day)}T00:00:00Z`).toLocaleDateString("en-GB", { day: "numeric", month: "short", timeZone: "UTC" });

/** "Sat 5 Sept 18:30": the day and the clock on the wall. */
export function momentText(day: number): string {
  const minutes = Math.round((day % 1) * 1440);
  const clock = `${String(Math.floor(minutes / 60) % 24).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
  const weekday = new Date(`${isoDay(day)}T00:00:00Z`).toLocaleDateString("en-GB", { weekday: "short", timeZone: "UTC" });
  return `${weekday} ${dayText(day)} ${clock}`;
}
