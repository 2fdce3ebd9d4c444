import { ebcFromSrm } from "../../../core/wort/colour-scales";
import { unitBeside } from "../../batch/derived/sheet-lines";
import { forSheet, type Single } from "../../batch/describe/field";
import { kitFields } from "../../batch/fields/kit";
import { packagingFields } from "../../batch/fields/packaging";
import { waterFields } from "../../batch/fields/water";
import { yeastFields } from "../../batch/fields/yeast";
import { cardFigures, type CardFigure } from "../../batch/figures/card-figures";
import { colourBands } from "../../grid/plan/colour-bands";
import { dayAndMonth } from "../../batch/sheet/steps";
import { isAcid, usualAcidPercent } from "../../batch/sheet/acids";
import { partNames, partRow, type PartField } from "../../batch/fields/blocks/parts";
import { linesPoints, SheetBuilder } from "../../grid/plan/sheet-builder";
import type { UnitWords } from "../../batch/unit-words";
import type { NumberFormat, SheetPlan, StyleName } from "../../grid/plan/sheet-plan";
import type { BatchInWorkbook } from "../batches-in-workbook";
import { beyond, dateText, onOnePage, outgrown, packed, pageCells, sectionHead, shown } from "./page-cells";

/** A, B: time and what; C, D: amount and unit; E to H: the right half. */
const columnWidths = [8, 27, 10, 15, 25, 10, 10, 22];

/** What brings the mash to its pH, with its own measure. */
function acidIn(named: (name: string) => string): string {
  const [what, amount, strength] = [named("mash_corrector"), named("mash_acid_amount"), named("mash_acid_strength")];
  return `IF(N(${amount})>0,${what}&" "&FIXED(${amount},1,TRUE)&IF(${isAcid(what)}," mL of "&IF(N(${strength})>0,${strength},${usualAcidPercent(what)})&" %"," g")&", into the mash","")`;
}

/** The starter in a line: how much wort of which gravity, from what, with how many packs, and when; and that it is not closed. */
function starterIn(named: (name: string) => string, words: UnitWords): string {
  const [volume, extract] = [named("starter_volume"), named("starter_extract")];
  const [packs, day] = [named("starter_packs"), named("starter_by")];
  const made =
    `FIXED(${volume},2,TRUE)&" ${words.volume} of "&FIXED(${named("starter_gravity")},3,TRUE)&", "&${named("starter_culture")}&", with "&` +
    `FIXED(${extract},2,TRUE)&" ${words.mass} of "&${named("starter_extract_name")}&" and "&FIXED(${packs},IF(${packs}=INT(${packs}),0,1),TRUE)&IF(${packs}=1," pack"," packs")&" of yeast"&` +
    `IF(N(${day})=0,"","; made by "&${dayAndMonth(day)})&". Foil over it, never a tight lid."`;
  return `=IF(ISNUMBER(${volume}),IF(${volume}>0,${made},"none needed"),"")`;
}

/** What stands in place of a figure of section 8 while the beer goes into parts. */
const saidOfParts: Readonly<Record<string, string>> = {
  into: "parts, each with its own below",
  carbonation: "",
  priming_sugar: "",
  sugar_mass: "",
  bottle_kind: "",
  keg_pressure: "",
  pressure_verdict: "Each part has its own verdict above: without one it is not filled.",
};

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

  // Of beer in parts section 8 only fills what a part leaves empty: none of it is said of the whole.
  const hasParts = batch.contents.partsOfWort !== undefined;
  const inParts = `N(${hasParts ? named("parts_total") : "0"})>0`;
  const ofTheWhole = (name: string): string => {
    const instead = hasParts ? saidOfParts[name] : undefined;
    const cell = named(name);
    return instead === undefined ? shown(cell) : `=IF(${inParts},"${instead}",IF(${cell}="","",${cell}))`;
  };
  const half = (side: "left" | "right", [label, name, format, unit = ""]: Line, style: StyleName = "result") => {
    const [labelAt, labelTo, valueAt, unitAt] = side === "left" ? (["A", "B", "C", "D"] as const) : (["E", undefined, "F", "G"] as const);
    const wide = format === "text";
    b.put(labelAt, label, { style: "label", ...(labelTo && { mergeTo: labelTo }) });
    b.put(valueAt, ofTheWhole(name), {
      style: wide ? "resultText" : style,
      format,
      ...(wide && { mergeTo: side === "left" ? "D" : "H" }),
    });
    if (!wide && unit) b.put(unitAt, unit, { style: "unit", ...(side === "right" && { mergeTo: "H" }) });
  };
  const planned = ({ label, plan, format, unit }: CardFigure, name = label): Line => [name, plan, format, unit];
  const typed = (field: Single & { readonly cell: string }, label = forSheet(field.label, { units, method })): Line =>
    field.kind === "number"
      ? [label, field.cell, forSheet(field.format, { units, method }), unitBeside(field, { units, method })]
      : [label, field.cell, "text"];
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
    [planned(cardFigures.originalGravity), planned(cardFigures.finalGravity), planned(cardFigures.alcohol)],
    [
      planned(cardFigures.bitterness),
      planned(cardFigures.colour),
      planned(cardFigures.bottles, `${cardFigures.bottles.label} of ${kit.bottleVolume} ${words.bottleVolume}`),
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
      ? [typed(kitFields.soakTemperature), typed(kitFields.soakMinutes)]
      : [
          ["Mash water", "mash_water", "two", words.volume],
          ["Heat it to", "strike_temperature", "one", words.temperature],
          typed(kitFields.soakTemperature),
          typed(kitFields.soakMinutes),
          ["Water to sparge with", "sparge_water", "two", words.volume],
        ];
  pairs(
    [
      ["Collect", "water_collect", "two", words.volume],
      ...soak,
      typed(kitFields.boilMinutes),
      typed(waterFields.topUp),
      typed(waterFields.salts, "Salts, other"),
    ],
    [
      typed(yeastFields.name),
      ["Packs to pitch", "packs_to_pitch", "whole"],
      typed(yeastFields.pitchTemperature),
      typed(yeastFields.fermentFrom),
      typed(yeastFields.fermentTo),
      typed(yeastFields.attenuationPercent),
    ],
  );

  if (batch.contents.starter) {
    b.height(linesPoints(2));
    b.put("A", "Starter", { style: "label", mergeTo: "B" });
    b.put("C", starterIn(named, words), { style: "message", mergeTo: "H" });
    b.row += 1;
    b.gap();
  }
  if (batch.contents.waterTreatment) {
    const salts = Array.from({ length: page.rowsOf("salt_bill") }, (_, index) => index).map((index) => {
      const [salt, grams] = [named("salt_bill", index, 0), named("salt_bill", index, 1)];
      return `IF(N(${grams})>0,${salt}&" "&FIXED(${grams},1,TRUE)&" g; ","")`;
    });
    const acid = method === "extract" ? [] : [acidIn(named)];
    b.height(linesPoints(2));
    b.put("A", "Into the water", { style: "label", mergeTo: "B" });
    b.put("C", `=${[...salts, ...acid].join("&")}`, { style: "message", mergeTo: "H" });
    b.row += 1;
    if (method !== "extract") {
      b.put(
        "A",
        `=IF(N(${named("mash_acid_amount")})>0,"Acid and lye burn: goggles, gloves; always into water, never the reverse. Half first, stir, measure.","")`,
        {
          style: "caution",
          mergeTo: "H",
        },
      );
      b.row += 1;
    }
    b.gap();
  }

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
    [typed(packagingFields.into), typed(packagingFields.co2Volumes, "Carbonation"), typed(packagingFields.sugar)],
    [
      ["Sugar, as planned", "sugar_mass", units === "us" ? "two" : "one", words.smallMass],
      typed(packagingFields.bottleKind),
      ["Keg pressure", "keg_pressure", units === "us" ? "one" : "two", words.pressure],
    ],
  );
  if (hasParts) {
    const own = (key: PartField, index: number) => named("wort_parts", partRow(key) - 1, index);
    partNames.forEach((part, index) => {
      const figure = (name: string, digits: number, words: string) => `FIXED(${named(`part_${part}_${name}`)},${digits},TRUE)&" ${words}"`;
      const given =
        `IF(ISNUMBER(${named(`part_${part}_sugar`)}),${figure("sugar", units === "us" ? 2 : 1, `${words.smallMass} of sugar`)},` +
        `IF(ISNUMBER(${named(`part_${part}_pressure`)}),${figure("pressure", units === "us" ? 1 : 2, words.pressure)},"no figure"))`;
      const isThere = (formula: string) => `=IF(N(${own("volume", index)})<=0,"",${formula})`;
      b.put("A", isThere(`IF(${own("name", index)}="","Part ${index + 1}",${own("name", index)}&"")`), { style: "label", mergeTo: "B" });
      // The verdict first: what is given beside it stands behind it.
      b.put("E", isThere(`${named(`part_${part}_verdict`)}&""`), { style: "message", mergeTo: "H" });
      b.put("C", isThere(`FIXED(${own("volume", index)},2,TRUE)&" ${words.volume} "&${named("parts_into", 0, index)}&": "&${given}`), {
        style: "message",
        mergeTo: "D",
      });
      b.height(linesPoints(3));
      b.row += 1;
    });
  }
  b.put("A", "Will it hold?", { style: "label", mergeTo: "B" });
  b.height(40);
  b.put("C", ofTheWhole("pressure_verdict"), { style: "message", mergeTo: "H" });
  b.row += 1;
  b.put(
    "A",
    "Boiling wort, steam and wet floors scald; a full kettle is not lifted alone. CO2 suffocates in low, closed rooms. Local codes and the makers' labels come first.",
    { style: "hint", mergeTo: "H" },
  );

  return onOnePage(b, page, pageName, columnWidths, `A1:H${b.row}`);
}
