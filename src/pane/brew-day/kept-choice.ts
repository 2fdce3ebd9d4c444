import { useState } from "preact/hooks";

/** A choice of the brewer's that is kept on this computer only. */
export function useKeptChoice(memory: string, atFirst: boolean): readonly [boolean, (on: boolean) => void] {
  const [on, setOn] = useState(() => recall(memory) ?? atFirst);
  const choose = (wanted: boolean) => {
    setOn(wanted);
    try {
      localStorage.setItem(memory, wanted ? "on" : "off");
    } catch {
      // Storage may be closed to a pane inside another site: then the choice lasts as long as the screen.
    }
  };
  return [on, choose];
}

function recall(memory: string): boolean | undefined {
  try {
    const kept = localStorage.getItem(memory);
    return kept === null ? undefined : kept === "on";
  } catch {
    return undefined;
  }
}
