import { residualRange } from "../../core/pack/residual";
import { temperature } from "../vocabulary";

/** The warmest that the beer has been: shared by the functions that calculate with leftover gas. */
export const warmestSinceFermentation = temperature(
  "The warmest the beer has been since it finished fermenting; cooling it later brings no gas back.",
  { atLeast: -2, atMost: 45 },
  20,
  { covered: residualRange, zero: "asked" },
);
