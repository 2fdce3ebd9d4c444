import { batchFields } from "../../batch/fields";
import { isAcid } from "../../batch/sheet/acids";
import { partNames, partRow } from "../../batch/fields/blocks/parts";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { NumberFormat, SheetPlan } from "../../grid/plan/sheet-plan";
import type { BatchInWorkbook } from "../batches-in-workbook";
import { beyond, onOnePage, outgrown, packed, pageCells } from "./page-cells";

/** A: a box to tick; B: what; C, D: how much; E: what is there; F: what is wanted; G: room for a word. */
const columnWidths = [4, 34, 11, 11, 13, 11, 30];

/** What one batch needs, what of it is there, and what is left to buy. Plain references: the list follows the batch sheet. */
export function planShopping(batch: BatchInWorkbook, pageName: string): SheetPlan {
  const page = pageCells(batch);
  const { named, words } = page;
  const { units } = batch.contents;
  const b = new SheetBuilder();

  b.height(28);
  b.put("A", `="Shopping list: "&${named("batch_name")}`, { style: "title", mergeTo: "F" });
  b.row += 1;
  b.put("A", "Type what you have: what is left to buy stands beside it.", { style: "hint", mergeTo: "G" });
  b.row += 1;
  b.gap();
  for (const [letter, text, style] of [
    ["A", "", "heading"],
    ["B", "What", "heading"],
    ["C", "Needed", "headingRight"],
    ["D", "Unit", "heading"],
    ["E", "Have", "headingRight"],
    ["F", "To buy", "headingRight"],
    ["G", "Remark", "heading"],
  ] as const)
    b.put(letter, text, { style });
  b.row += 1;

  const line = (what: string, needed: string, unit: string, format: NumberFormat, have = "", inHand = format) => {
    const { row } = b;
    b.height(18);
    b.put("A", `=IF(C${row}="","","☐")`, { style: "label" });
    b.put("B", what, { style: "resultText" });
    b.put("C", needed, { style: "result", format });
    b.put("D", `=IF(C${row}="","",${unit})`, { style: "unit" });
    b.put("E", have, { style: "input", format: inHand });
    b.put("F", `=IF(OR(C${row}="",NOT(ISNUMBER(C${row}))),"",MAX(0,C${row}-N(E${row})))`, { style: "keyResult", format });
    b.put("G", "", { style: "inputText" });
    b.row += 1;
  };
  const quoted = (unit: string): string => `"${unit}"`;
  /** A number of the batch sheet, or nothing. */
  const number = (name: string): string => `=IF(ISNUMBER(${named(name)}),${named(name)},"")`;

  const malt = packed(b, page, "malt", -1, beyond(columnWidths.length, 0), b.row, "name");
  for (let index = 1; index <= malt.rows; index += 1) {
    const total = `SUMIF(${page.column("malt", -1)},B${b.row},${page.column("malt", 0)})`;
    line(malt.cell(index, -1), `=IF(B${b.row}="","",${total})`, quoted(words.mass), "two");
  }
  const hops = packed(b, page, "hop_plan", 0, beyond(columnWidths.length, 1), b.row, "name");
  for (let index = 1; index <= hops.rows; index += 1) {
    const total = `SUMIF(${page.column("hop_plan", 0)},B${b.row},${page.column("hop_plan", 1)})`;
    line(hops.cell(index, 0), `=IF(B${b.row}="","",${total})`, quoted(words.smallMass), "two");
  }
  if (batch.contents.waterTreatment) {
    const filled = Array.from({ length: page.rowsOf("salt_bill") }, (_, index) => index).filter(
      (index) => Number(batch.cells.at(batch.cells.area("salt_bill").from.row + index, batch.cells.area("salt_bill").from.column + 1)) > 0,
    );
    const grams = (index: number): string => `N(${named("salt_bill", index, 1)})`;
    for (const index of filled) line(`=${named("salt_bill", index, 0)}`, `=IF(${grams(index)}>0,${grams(index)},"")`, quoted("g"), "one");
    // Salts that came to the batch after the list.
    const others = `SUM(${page.column("salt_bill", 1)})${filled.map((index) => `-${grams(index)}`).join("")}`;
    line("Other water salts", `=IF(${others}>0.0001,${others},"")`, quoted("g"), "one");
    if (batch.contents.method !== "extract") {
      const [what, amount] = [named("mash_corrector"), named("mash_acid_amount")];
      line(
        `=IF(N(${amount})>0,"For the mash: "&${what}&IF(${isAcid(what)}," acid: it burns",""),"Acid or base")`,
        `=IF(N(${amount})>0,${amount},"")`,
        `IF(${isAcid(what)},"mL","g")`,
        "one",
      );
    }
  }
  const yeast = named("yeast_name");
  line(
    `=IF(${yeast}="","Yeast",${yeast})`,
    number("packs_to_pitch"),
    '"packs"',
    "whole",
    `=IF(N(${named("packs_in_hand")})=0,"",${named("packs_in_hand")})`,
    batchFields.yeast.fields.packsInHand.format,
  );
  const sugarFormat: NumberFormat = units === "us" ? "two" : "one";
  line(`="Priming sugar: "&${named("priming_sugar")}`, number("sugar_mass"), quoted(words.smallMass), sugarFormat);
  if (batch.contents.partsOfWort)
    partNames.forEach((part, index) => {
      const name = named("wort_parts", partRow("name") - 1, index);
      line(
        `="Priming sugar for "&IF(${name}="","part ${index + 1}",${name}&"")&": "&${named("parts_sugar_kind", 0, index)}`,
        number(`part_${part}_sugar`),
        quoted(words.smallMass),
        sugarFormat,
      );
    });
  line("Bottles and caps", number("bottles_ready"), '"of each"', "whole");
  line("Sanitiser concentrate", number("sanitiser_dose"), quoted(words.doseVolume), units === "us" ? "two" : "whole");
  outgrown(b, [malt, hops], "A", "G");
  b.put("A", "Cleaners, acids and cylinders: read the maker's label before you buy. Local codes come first.", {
    style: "hint",
    mergeTo: "G",
  });

  return onOnePage(b, page, pageName, columnWidths, `A1:G${b.row}`);
}
