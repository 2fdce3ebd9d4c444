import { ebcFromSrm } from "../../../core/wort/colour-scales";
import { colourBands } from "../../grid/plan/colour-bands";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { NumberFormat, SheetPlan, StyleName } from "../../grid/plan/sheet-plan";
import type { BatchInWorkbook } from "../batches-in-workbook";
import { beyond, dateText, onOnePage, outgrown, packed, pageCells, sectionHead, shown } from "./page-cells";

/** A, B: time and what; C, D: amount and unit; E to H: the right half. */
const columnWidths = [8, 27, 10, 15, 25, 10, 10, 22];

/** One line of a half: label, name on the batch sheet, format, unit. */
type Line = readonly [label: string, name: string, format: NumberFormat, unit?: string];

/**
 * One printable page of a batch: what, how much and when, with the cautions beside the steps. Every cell is a plain
 * reference to the batch sheet, so the page follows it, whether the batch calculates or is an unplugged copy.
 */
export function planRecipe(batch: BatchInWorkbook, pageName: string): SheetPlan {
  const { units, method, kit } = batch.contents;
  const page = pageCells(batch);
  const { named, words } = page;
  const b = new SheetBuilder();
  const side = (index: number): string => beyond(columnWidths.length, index);

  b.height(28);
  b.put("A", shown(named("batch_name")), { style: "title", mergeTo: "F" });
  b.put("G", "Recipe page", { style: "hint", mergeTo: "H" });
  b.row += 1;
  b.put(
    "A",
    `=IF(${named("style")}="","",${named("style")}&", ")&FIXED(${named("volume")},2,TRUE)&" ${words.volume}"&IF(N(${named("brewed_on")})=0,"",", to be brewed on "&${dateText(named("brewed_on"))})`,
    { style: "hint", mergeTo: "H" },
  );
  b.row += 1;

  const half = (side: "left" | "right", [label, name, format, unit = ""]: Line, style: StyleName = "result") => {
    const [labelAt, labelTo, valueAt, unitAt] = side === "left" ? (["A", "B", "C", "D"] as const) : (["E", undefined, "F", "G"] as const);
    const wide = format === "text";
    b.put(labelAt, label, { style: "label", ...(labelTo && { mergeTo: labelTo }) });
    b.put(valueAt, shown(named(name)), {
      style: wide ? "resultText" : style,
      format,
      ...(wide && { mergeTo: side === "left" ? "D" : "H" }),
    });
    if (!wide && unit) b.put(unitAt, unit, { style: "unit", ...(side === "right" && { mergeTo: "H" }) });
  };
  const section = (title: string, hint: string) => sectionHead(b, title, "D", hint, ["E", "H"]);
  const pairs = (left: readonly Line[], right: readonly Line[]) => {
    for (let index = 0; index < Math.max(left.length, right.length); index += 1) {
      const [onLeft, onRight] = [left[index], right[index]];
      if (onLeft) half("left", onLeft);
      if (onRight) half("right", onRight);
      b.row += 1;
    }
    b.gap();
  };

  section("What it will be", "Planned, from the batch sheet");
  const colourRow = b.row + 1;
  b.put("G", shown(named("swatch")), { style: "swatch", mergeTo: "H" }, colourRow);
  pairs(
    [
      ["Original gravity", "og_plan", "gravity"],
      ["Final gravity", "fg_plan", "gravity"],
      ["Alcohol", "abv_plan", "one", "% by volume"],
    ],
    [
      ["Bitterness", "ibu_plan", "whole", "IBU"],
      ["Colour", "colour_plan", "one"],
      [`Bottles of ${kit.bottleVolume} ${words.bottleVolume}`, "bottles_plan", "whole"],
    ],
  );
  colourBands(b, `G${colourRow}`, `$F$${colourRow}`, units === "us" ? 1 : ebcFromSrm(1));

  section("What goes in", "Malt and sugar left, hops right");
  const heading = b.row;
  for (const [letter, text, style, mergeTo] of [
    ["A", "Malt and sugar", "heading", "B"],
    ["C", words.mass, "headingRight"],
    ["D", "Handling", "heading"],
    ["E", "Hop", "heading"],
    ["F", words.smallMass, "headingRight"],
    ["G", "Alpha %", "headingRight"],
    ["H", "Minutes left in the boil", "headingRight"],
  ] as const) {
    b.put(letter, text, { style, ...(mergeTo && { mergeTo }) }, heading);
  }
  const [malt, hops] = [packed(b, page, "malt", -1, side(0), heading + 1), packed(b, page, "hop_plan", 0, side(1), heading + 1)];
  for (let index = 1; index <= Math.max(malt.rows, hops.rows); index += 1) {
    b.row = heading + index;
    if (index <= malt.rows) {
      b.put("A", malt.cell(index, -1), { style: "resultText", mergeTo: "B" });
      b.put("C", malt.cell(index, 0), { style: "result", format: "two" });
      b.put("D", malt.cell(index, 2), { style: "resultText" });
    }
    if (index <= hops.rows) {
      b.put("E", hops.cell(index, 0), { style: "resultText" });
      b.put("F", hops.cell(index, 1), { style: "result", format: "two" });
      b.put("G", hops.cell(index, 2), { style: "result", format: "one" });
      b.put("H", hops.cell(index, 3), { style: "result", format: "whole" });
    }
  }
  b.row = heading + 1 + Math.max(malt.rows, hops.rows);
  outgrown(b, [malt, hops], "A", "H");
  b.gap();

  section("Water, yeast and fermentation", "Clean water, healthy yeast, a steady place");
  const soak: readonly Line[] =
    method === "extract"
      ? [
          ["Steep at", "soak_temperature", "whole", words.temperature],
          ["Steep for", "soak_minutes", "whole", "min"],
        ]
      : [
          ["Mash water", "mash_water", "two", words.volume],
          ["Heat it to", "strike_temperature", "one", words.temperature],
          ["Mash at", "soak_temperature", "whole", words.temperature],
          ["Mash for", "soak_minutes", "whole", "min"],
          ["Water to sparge with", "sparge_water", "two", words.volume],
        ];
  pairs(
    [
      ["Collect", "water_collect", "two", words.volume],
      ...soak,
      ["Boil", "boil_minutes", "whole", "min"],
      ["Top-up water", "top_up", "two", words.volume],
      ["Salts, other", "salts", "text"],
    ],
    [
      ["Yeast", "yeast_name", "text"],
      ["Packs to pitch", "packs_to_pitch", "whole"],
      ["Pitch at", "pitch_temperature", "whole", words.temperature],
      ["Ferments from", "ferment_from", "whole", words.temperature],
      ["to", "ferment_to", "whole", words.temperature],
      ["Apparent attenuation", "attenuation", "whole", "%"],
    ],
  );

  section("Brew day by the clock", "What to beware of stands beside it");
  const lines = packed(b, page, "happened", -5, side(2), b.row);
  for (let index = 1; index <= lines.rows; index += 1) {
    const amount = lines.cell(index, -1).slice(1);
    b.height(13.5);
    b.put("A", lines.cell(index, -3), { style: "result", format: "time" });
    b.put("B", `${lines.cell(index, -5)}&IF(${amount}="","",", "&${amount})`, { style: "resultText", mergeTo: "D" });
    b.put("E", lines.cell(index, 1), { style: "caution", mergeTo: "H" });
    b.row += 1;
  }
  outgrown(b, [lines], "A", "H");
  b.gap();

  section("Packaging", "Only when two readings a day apart agree: glass under pressure cuts");
  pairs(
    [
      ["Into", "into", "text"],
      ["Carbonation", "carbonation", "one", "volumes of CO2"],
      ["Priming sugar", "priming_sugar", "text"],
    ],
    [
      ["Sugar for the batch", "sugar_mass", units === "us" ? "two" : "one", words.smallMass],
      ["Kind of bottle", "bottle_kind", "text"],
      ["Keg pressure", "keg_pressure", units === "us" ? "one" : "two", words.pressure],
    ],
  );
  b.put("A", "Will it hold?", { style: "label", mergeTo: "B" });
  b.height(40);
  b.put("C", shown(named("pressure_verdict")), { style: "message", mergeTo: "H" });
  b.row += 1;
  b.put(
    "A",
    "Boiling wort, steam and wet floors scald; a full kettle is not lifted alone. CO2 suffocates in low, closed rooms. Local codes and the makers' labels come first.",
    { style: "hint", mergeTo: "H" },
  );

  return onOnePage(b, page, pageName, columnWidths, `A1:H${b.row}`);
}
