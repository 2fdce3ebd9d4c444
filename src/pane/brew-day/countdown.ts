const two = (number: number): string => String(number).padStart(2, "0");

/** "4:05", "1:04:05": hours only where there are any. */
export function lengthOfTime(milliseconds: number): string {
  const seconds = Math.floor(Math.abs(milliseconds) / 1000);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor((seconds % 3600) / 60)];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/** What is left, counted up at its end so that "0:00" is the very moment. */
export const timeLeft = (until: number, now: number): string => lengthOfTime(Math.ceil((until - now) / 1000) * 1000);

/** What the clock on the wall shows: "10:55". */
export function clockTime(instant: number): string {
  const shown = new Date(instant);
  return `${two(shown.getHours())}:${two(shown.getMinutes())}`;
}
