import { batchSheet } from "./batch-sheet";
import { bundleSizes } from "./bundle-sizes";
import { callCosts } from "./call-costs";
import { engineSpeed } from "./engine-speed";
import { firstGrid } from "./first-grid";
import { paneAnswers } from "./pane-answers";
import type { BenchRow } from "./row";
import { seasonScale } from "./season-scale";
import { typedNumber } from "./typed-number";
import { wholeWorkbook } from "./whole-workbook";

/** Every target that is measured, in the order in which it is printed. Add a row here. */
export const rows: readonly BenchRow[] = [
  ...bundleSizes,
  ...engineSpeed,
  ...callCosts,
  ...batchSheet,
  ...seasonScale,
  ...typedNumber,
  ...wholeWorkbook,
  firstGrid,
  paneAnswers,
];
