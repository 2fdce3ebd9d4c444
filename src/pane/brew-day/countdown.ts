const two = (number: number): string => String(number).padStart(2, "0");

/** "4:05", "1:04:05": hours only where there are any. */
export function lengthOfTime(milliseconds: number): string {
  const seconds = Math.floor(Math.abs(milliseconds) / 1000);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor((seconds % 3600) / 60)];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/** "15 min", "1 h 04 min": minutes that nobody takes for a time of day. */
export function inWords(minutes: number): string {
  const whole = Math.round(Math.abs(minutes));
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${two(whole % 60)} min`;
}

/** What is left, counted up at its end so that "0:00" is the very moment. */
export const timeLeft = (until: number, now: number): string => lengthOfTime(Math.ceil((until - now) / 1000) * 1000);

/** Over by more than an hour: more likely done and not marked than still running. */
export const isForgotten = (endsAt: number, now: number): boolean => now - endsAt > 3_600_000;

/** What the clock on the wall shows: "10:55". */
export function clockTime(instant: number): string {
  const shown = new Date(instant);
  return `${two(shown.getHours())}:${two(shown.getMinutes())}`;
}
