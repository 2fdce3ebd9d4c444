import { position } from "./addresses";
import type { CellPlan } from "./sheet-plan";

/** The cells that a planned cell covers: "B7", or "B7:D7" where it is merged across its row. */
export function cellRange({ address, mergeTo }: Pick<CellPlan, "address" | "mergeTo">): string {
  return mergeTo ? `${address}:${mergeTo}${position(address).row}` : address;
}
