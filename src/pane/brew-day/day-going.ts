import { useEffect, useState } from "preact/hooks";

/** Sheet of the brew day that the screen Brew day last showed going on. Only its name: what is due stands in the sheet. */
let going: string | undefined;
const listeners = new Set<() => void>();

export function setDayGoing(sheetName: string | undefined): void {
  if (going === sheetName) return;
  going = sheetName;
  for (const listener of listeners) listener();
}

export function useDayGoing(): string | undefined {
  const [seen, setSeen] = useState(going);
  useEffect(() => {
    const look = () => setSeen(going);
    listeners.add(look);
    look();
    return () => void listeners.delete(look);
  }, []);
  return seen;
}
