import type { UnitSystem } from "../../../../functions/quantities";
import { columnLetters, columnNumber } from "../../../grid/plan/addresses";
import { linesPoints } from "../../../grid/plan/sheet-builder";
import type { NumberFormat } from "../../../grid/plan/sheet-plan";
import type { BatchContents } from "../../contents";
import type { UnitWords } from "../../unit-words";
import { partKeys, partNames, partRow, type PartField } from "../../fields/blocks/parts";
import { fieldRows, tableInput } from "../fields";
import { onlyPlanned, syrupAndOneMore, tooLittleAir } from "../packaging";
import { allowedBy, tooMuchInParts, withinItsPlate } from "../parts";
import type { BatchCell } from "../../fields/cells";
import { cautionsBelow, type Block } from "./block";

/** A column for each part; what it comes to, with the cells of section 8 in place of empty ones, stands as far to the right. */
const letters = ["B", "C", "D", "E"] as const;
const workingsFrom = columnNumber("Q");

const cautions = [
  "Divide the beer before the sugar goes in: each part has its own syrup, stirred in gently. Never the sugar of the whole.",
  "Keg: never above the pressure on its plate; let it off before you open anything. CO2 suffocates: air the room.",
] as const;

/** What stands beside the cells that a brewer types of each part. */
const beside: Readonly<Record<PartField, (words: UnitWords) => string>> = {
  name: () => "such as “keg”, “strong yeast”",
  volume: ({ volume }) => `${volume}, as it is racked`,
  into: () => "bottles or keg; empty here and below: as in section 8",
  co2Volumes: () => "volumes of CO2",
  warmestSinceFermentation: ({ temperature }) => temperature,
  warmestPlace: ({ temperature }) => temperature,
  bottleKind: () => "",
  bottleVolume: ({ bottleVolume }) => bottleVolume,
  sugar: () => "",
  gravity: () => "SG; empty: as read in section 7",
  endsAt: () => "SG; with a gravity of its own it must be typed",
  bottlesFilled: () => "",
  kegFilled: ({ volume }) => volume,
};

/** What a part goes by, by the row it comes from: the cell itself, or that of section 8. */
const goesBy: readonly (readonly [
  name: BatchCell,
  key: PartField,
  effective: (cell: (key: PartField) => string, into: string) => string,
])[] = [
  ["parts_into", "into", (cell) => `IF(${cell("into")}="",into,${cell("into")})`],
  ["parts_carbonation", "co2Volumes", (cell) => orElse(cell("co2Volumes"), "carbonation")],
  ["parts_warmest_beer", "warmestSinceFermentation", (cell) => orElse(cell("warmestSinceFermentation"), "warmest_beer")],
  [
    "parts_place",
    "warmestPlace",
    (cell, into) =>
      `IF(${cell("warmestPlace")}<>"",${cell("warmestPlace")},IF(${into}="keg",${orBlank("keg_temperature")},${orBlank("warmest_storage")}))`,
  ],
  [
    "parts_vessel",
    "bottleKind",
    (cell, into) => `IF(${into}="keg","keg",IF(${cell("bottleKind")}="",bottle_kind&"",${cell("bottleKind")}))`,
  ],
  ["parts_bottle", "bottleVolume", (cell) => orElse(cell("bottleVolume"), "bottle_volume")],
  ["parts_sugar_kind", "sugar", (cell) => `IF(${cell("sugar")}="",priming_sugar&"",${cell("sugar")})`],
  ["parts_gravity", "gravity", (cell) => `IF(N(${cell("gravity")})>0,${cell("gravity")},${orBlank("fg")})`],
  // Whoever has a yeast of its own ends where that ends: the readings of section 7 are another one's.
  ["parts_end", "endsAt", (cell) => `IF(N(${cell("endsAt")})>0,${cell("endsAt")},IF(N(${cell("gravity")})>0,"",${orBlank("ends_at")}))`],
];
const orBlank = (name: string): string => `IF(${name}="","",${name})`;
const orElse = (cell: string, name: string): string => `IF(${cell}<>"",${cell},${orBlank(name)})`;

/** What part number `index` goes by, and what was typed of it. */
const of = (row: BatchCell, index: number): string => `INDEX(${row},1,${index + 1})`;
const own = (key: PartField, index: number): string => `INDEX(wort_parts,${partRow(key)},${index + 1})`;
const all = (key: PartField): string => `INDEX(wort_parts,${partRow(key)},0)`;
const isBottled = (index: number): string => `${of("parts_into", index)}="bottles"`;
const isKegged = (index: number): string => `${of("parts_into", index)}="keg"`;

/** As section 8 judges the whole; a gravity of its own without its end cannot be judged. */
function verdict(index: number, contents: BatchContents): string {
  const unknown = [
    `N(${own("volume", index)})<=0`,
    `AND(NOT(${isBottled(index)}),NOT(${isKegged(index)}))`,
    `AND(${isBottled(index)},${tooLittleAir})`,
    `AND(N(${own("gravity", index)})>0,N(${own("endsAt", index)})<=0)`,
  ];
  const judged = withinItsPlate(contents, {
    isKeg: isKegged(index),
    carbonation: of("parts_carbonation", index),
    temperature: of("parts_place", index),
    verdict: `GYLE.PACK.CHECK(${judgedBy(index)})`,
  });
  return `=IF(OR(${unknown.join(",")}),"",${judged})`;
}
const judgedBy = (index: number): string =>
  `${(["parts_carbonation", "parts_place", "parts_vessel", "parts_gravity", "parts_end"] as const).map((row) => of(row, index)).join(",")},units,altitude,headspace`;

/** Figures that stand behind the verdict. */
const figures = (
  units: UnitSystem,
  words: UnitWords,
): readonly {
  readonly label: string;
  readonly figure: "sugar" | "pressure" | "inside";
  readonly format: NumberFormat;
  readonly unit: string;
  readonly formula: (index: number) => string;
}[] => {
  const pressure = units === "us" ? "one" : "two";
  return [
    {
      label: "Sugar for it",
      figure: "sugar",
      format: units === "us" ? "two" : "one",
      unit: onlyPlanned(
        'IF(COUNT(part_one_sugar,part_two_sugar,part_three_sugar,part_four_sugar)=0,"",1)',
        words.smallMass,
        '"; boil each in a little water"',
      ),
      formula: (index) =>
        `IF(OR(NOT(${isBottled(index)}),${of("parts_warmest_beer", index)}="",${tooMuchInParts}),"",GYLE.PACK.PRIMING(${own("volume", index)},${of("parts_carbonation", index)},${of("parts_warmest_beer", index)},${of("parts_sugar_kind", index)},units,${of("parts_vessel", index)},altitude))`,
    },
    {
      label: "Pressure to set on the keg",
      figure: "pressure",
      format: pressure,
      unit: words.pressure,
      formula: (index) =>
        `IF(${isKegged(index)},GYLE.PACK.PRESSURE(${of("parts_carbonation", index)},${of("parts_place", index)},units,altitude),"")`,
    },
    {
      label: "Pressure in its bottles, warmest",
      figure: "inside",
      format: pressure,
      unit: words.pressure,
      formula: (index) => `IF(${isBottled(index)},GYLE.PACK.INSIDE(${judgedBy(index)}),"")`,
    },
  ];
};

/** Several packagings of one wort: each part with its own verdict, before its sugar or its pressure. */
export const partsOfWort: Block = {
  put(b, contents, { partsOfWort: lines }, words) {
    if (!lines) return;
    const { units } = contents;
    const [top, columns] = [b.row, [lines.one, lines.two, lines.three, lines.four] as const];
    for (const key of partKeys) {
      b.put("A", lines.one[key][0], { style: "label" });
      columns.forEach((part, index) => tableInput(b, letters[index] ?? "B", part[key], b.row));
      b.put("F", beside[key](words), { style: "unit", mergeTo: "I" });
      b.row += 1;
    }
    b.name("wort_parts", `B${top}:E${b.row - 1}`);
    b.put("Q", "Each part, with the cells of section 8 where its own are empty", { style: "hint" }, top);
    for (const [name, key, effective] of goesBy) {
      const row = top + partRow(key) - 1;
      letters.forEach((letter, index) => {
        const working = columnLetters(workingsFrom + index);
        const cell = (wanted: PartField) => `${letter}${top + partRow(wanted) - 1}`;
        const content = effective(cell, `${working}${top + partRow("into") - 1}`);
        b.put(working, `=IF(N(${cell("volume")})<=0,"",${content})`, { style: "workings" }, row);
      });
      b.name(name, `Q${row}:T${row}`);
    }
    partNames.forEach((name, index) => {
      b.put(
        "A",
        `=IF(N(${own("volume", index)})<=0,"",IF(${own("name", index)}="","Part ${index + 1}",${own("name", index)}&"")&": will it hold?")`,
        { style: "label", format: "text" },
      );
      b.put("B", verdict(index, contents), { style: "message", format: "text", name: `part_${name}_verdict`, mergeTo: "I" });
      b.height(linesPoints(3));
      b.row += 1;
    });
    for (const { label, figure, format, unit, formula } of figures(units, words)) {
      b.put("A", label, { style: "label" });
      partNames.forEach((name, index) =>
        b.put(letters[index] ?? "B", `=${allowedBy(`part_${name}_verdict`, formula(index))}`, {
          style: "keyResult",
          format,
          name: `part_${name}_${figure}`,
        }),
      );
      b.put("F", unit, { style: "unit", mergeTo: "I" });
      b.row += 1;
    }
    b.put("A", "Bottles and caps to prepare", { style: "label" });
    letters.forEach((letter, index) => {
      const bottle = of("parts_bottle", index);
      b.put(
        letter,
        `=IF(${isBottled(index)},INDEX(GYLE.PACK.BOTTLES(${own("volume", index)},${bottle},0,units,${syrupAndOneMore(units, bottle)}),1,1),"")`,
        { style: "result", format: "whole" },
      );
    });
    b.name("parts_ready", `B${b.row}:E${b.row}`);
    b.row += 1;
    const litres = { format: "two", unit: words.volume } as const;
    fieldRows(
      b,
      [
        ["Beer to share out", { content: '=IF(N(beer_volume)=0,"",beer_volume-N(bottling_loss))', ...litres, name: "parts_beer" }],
        ["In the parts", { content: `=SUM(${all("volume")})`, ...litres, name: "parts_total" }],
        ["Left over", { content: '=IF(OR(parts_beer="",parts_total=0),"",parts_beer-parts_total)', ...litres, name: "parts_left" }],
        ["of them for kegs", { content: `=SUMIF(parts_into,"keg",${all("volume")})`, ...litres, name: "parts_for_kegs" }],
      ],
      [
        ["Bottles and caps in all", { content: "=SUM(parts_ready)", format: "whole", name: "parts_caps" }],
        ["Bottles filled in all", { content: `=SUM(${all("bottlesFilled")})`, format: "whole", name: "parts_bottles" }],
        [
          "Beer in bottles",
          {
            content: `=SUMPRODUCT(${all("bottlesFilled")},parts_bottle)/${units === "us" ? 128 : 1000}`,
            ...litres,
            name: "parts_bottled",
          },
        ],
        [
          "Beer in kegs",
          {
            content: `=IF(SUM(${all("kegFilled")})>0,SUM(${all("kegFilled")}),IF(N(packaged_on)>0,parts_for_kegs,0))`,
            ...litres,
            name: "parts_kegged",
          },
        ],
      ],
    );
    cautionsBelow(b, cautions);
  },
};
