import { checkName } from "../../batch/fields/blocks";
import { blocksOnSheet } from "../../batch/read/blocks-on-sheet";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import type { BatchInWorkbook } from "../batches-in-workbook";
import { dateText, onOnePage, pageCells } from "./page-cells";

/** Two labels side by side, with a gap to cut along. */
const columnWidths = [46, 3, 46];
const labelsDown = 8;

/** A page of bottle labels for one batch. They follow the batch sheet; who made the beer is typed once, above the print. */
export function planLabels(batch: BatchInWorkbook, pageName: string): SheetPlan {
  const page = pageCells(batch);
  const { named, words } = page;
  const b = new SheetBuilder();

  b.height(28);
  b.put("A", "Bottle labels", { style: "title", mergeTo: "C" });
  b.row += 1;
  b.put("A", "Brewed by (type a name below; this part is not printed)", { style: "label", mergeTo: "C" });
  b.row += 1;
  const maker = `$A$${b.row}`;
  b.put("A", "", { style: "inputText" });
  b.row += 1;
  b.height(30);
  b.put(
    "A",
    "The alcohol is calculated from readings, not measured: such a label is for friends of legal age. Beer that is sold, and duty, need the label that your law asks for.",
    { style: "hintWords", mergeTo: "C" },
  );
  b.row += 1;

  const reached = (name: string, text: (cell: string) => string): string => `IF(N(${named(name)})=0,"",${text(named(name))})`;
  const strength = `IF(N(${named("abv_bottle")})>0,${named("abv_bottle")},N(${named("abv_reached")}))`;
  // Cereals that law names as allergens (EU 1169/2011, Annex II) are told by the malt's name; every malt's is barley unless it says another.
  const grains = ["wheat", "rye", "oat", "spelt"]
    .map(
      (grain) =>
        `&IF(SUMIF(${page.column("malt", -1)},"*${grain}*",${page.column("malt", 0)})>0,", ${grain === "oat" ? "oats" : grain}","")`,
    )
    .join("");
  // Nobody is told to open a bottle that the sheet says nobody should touch.
  const states = ["check_states" as const, ...blocksOnSheet(batch.cells).map(checkName)].filter((name) => batch.cells.has(name));
  const stops = `${states.map((name) => `COUNTIF(${page.column(name)},"stop")`).join("+")}>0`;
  const lines = [
    `=IF(${named("batch_name")}="","Beer",${named("batch_name")})`,
    `=${reached("batch_number", (cell) => `"Batch "&${cell}&${reached("packaged_on", () => '", "')}`)}&${reached("packaged_on", (cell) => `"bottled "&${dateText(cell)}`)}`,
    `=IF(${strength}=0,"Alcohol: not known yet","Alcohol "&FIXED(${strength},1,TRUE)&" % vol"&${reached("abv_spread", (cell) => `" ± "&FIXED(${cell},1,TRUE)`)}&", calculated")&${reached("bottle_volume", (cell) => `"; "&${cell}&" ${words.bottleVolume}"`)}`,
    `=IF(${stops},"Wait: the checks of the batch sheet say stop",${reached("first_taste", (cell) => `"Drink from "&${dateText(cell)}&", cool, "`)}&"upright: yeast settles")`,
    `=IF(${maker}="","Home-brewed","Brewed by "&${maker})&"; contains gluten (barley"${grains}&")"`,
  ];
  const first = b.row;
  for (let label = 0; label < labelsDown; label += 1) {
    for (const [index, content] of lines.entries()) {
      b.height(index === 0 ? 22 : 16);
      for (const letter of ["A", "C"]) b.put(letter, content, { style: index === 0 ? "section" : "label" });
      b.row += 1;
    }
    b.height(10);
    b.row += 1;
  }
  return onOnePage(b, page, pageName, columnWidths, `A${first}:C${b.row - 1}`);
}
