import { readFileSync } from "node:fs";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { openWorkbook, type Carry } from "../../src/excel-stand-in/xlsx";
import { registry } from "../../src/functions/registry";

/** Opens an .xlsx in the bench, as the page does; gives what saving it again needs. */
export async function openFile(bench: HeadlessBench, file: URL): Promise<Carry> {
  const { snapshot, carry } = await openWorkbook(new Uint8Array(readFileSync(file)), {
    functionNames: registry.map(({ id }) => id),
    id: `file-${crypto.randomUUID()}`,
  });
  await bench.load(snapshot);
  return carry;
}
