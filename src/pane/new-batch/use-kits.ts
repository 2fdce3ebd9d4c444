import { useEffect, useState } from "preact/hooks";
import type { KitChoice } from "./write-batch";

/** The kits on the workbook's kit sheet, the first of them chosen; none where there is no such sheet, or it cannot be read now. */
export function useKits() {
  const [kits, setKits] = useState<readonly KitChoice[]>([]);
  const [chosen, setChosen] = useState<string>();
  useEffect(() => {
    void readKitChoices().then(setKits);
  }, []);
  const kit = chosen === undefined ? kits[0] : kits.find(({ name }) => name === chosen);
  return { kits, kit, chooseKit: setChosen };
}

async function readKitChoices(): Promise<readonly KitChoice[]> {
  try {
    const { kitChoices } = await import(/* webpackChunkName: "pane-kit" */ "../kit/kit-choices");
    return await kitChoices();
  } catch {
    // The form works without: the batch then starts from usual values, and its sheet shows them.
    return [];
  }
}
