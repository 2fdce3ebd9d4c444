import { linesPoints, type SheetBuilder } from "../plan/sheet-builder";
import type { BatchContents } from "./contents";
import { fieldRows, section, workings } from "./fields";
import type { UnitWords } from "./unit-words";

export const sugars = ["dextrose", "glucose", "sucrose", "malt extract", "honey"] as const;
/** Kinds of bottle: the core's list also has the keg, which is no bottle. */
export const bottleKinds = ["ordinary", "heavy", "thick", "sparkling", "plastic"] as const;

/** 8. Packaging: sugar for the bottle or pressure for the keg, and whether the glass can take it. */
export function packaging(b: SheetBuilder, { packaging: p, kit, units }: BatchContents, words: UnitWords): void {
  section(b, 8, "Packaging", "Only when the readings are steady: glass under pressure cuts");
  const bottled = (formula: string) => `=IF(into="bottles",${formula},"")`;
  const first = b.row;
  fieldRows(
    b,
    [
      ["Packaged on", { content: p.packagedOn, format: "date", name: "packaged_on" }],
      ["Into", { content: p.into, name: "into", choices: ["bottles", "keg"] }],
      ["Carbonation wished", { content: p.co2Volumes, format: "one", unit: "volumes of CO2", name: "carbonation", between: [0.5, 8] }],
      ["Warmest since it finished", { content: p.warmestSinceFermentation, format: "whole", unit: words.temperature, name: "warmest_beer", note: "The warmest the beer has been since fermentation ended: warm beer lets carbon dioxide go and does not take it back when it cools." }],
      ["Priming sugar", { content: p.sugar, name: "priming_sugar", choices: sugars }],
      ["One bottle holds", { content: kit.bottleVolume, format: "whole", unit: words.bottleVolume, name: "bottle_volume" }],
      ["Kind of bottle", { content: p.bottleKind, name: "bottle_kind", choices: bottleKinds, note: "ordinary: common beer bottle; heavy: thick half-litre returnable; thick: extra-heavy ale bottle; sparkling: sparkling-wine bottle; plastic: soda bottle. Never a bottle made for still drinks, never a chipped one." }],
      ["Warmest place they will stand", { content: p.warmestStorage, format: "whole", unit: words.temperature, name: "warmest_storage" }],
      ["Lost in racking", { content: kit.bottlingLoss, format: "two", unit: words.volume, name: "bottling_loss" }],
      ["Conditioned at", { content: p.conditioningTemperature, format: "whole", unit: words.temperature, name: "conditioning_temperature" }],
      ["Keg stands at", { content: p.kegTemperature, format: "whole", unit: words.temperature, name: "keg_temperature" }],
    ],
    [
      ["Beer to package", { content: '=IF(N(volume_reached)>0,volume_reached,volume)', format: "two", unit: words.volume, name: "beer_volume" }],
      ["Carbon dioxide it already holds", { content: "=GYLE.PACK.RESIDUAL(warmest_beer,units)", format: "two", unit: "volumes", name: "residual_gas" }],
      ["Sugar for the whole batch", { content: bottled("GYLE.PACK.PRIMING(beer_volume-N(bottling_loss),carbonation,warmest_beer,priming_sugar,units)"), format: units === "us" ? "two" : "one", unit: `${words.smallMass}; boil it in ${words.mass === "lb" ? "two cups" : "half a litre"} of water`, name: "sugar_mass", style: "keyResult" }],
      ["Pressure at the warmest place", { content: bottled("GYLE.PACK.PRESSURE(carbonation,warmest_storage,units)"), format: "one", unit: words.pressure, name: "bottle_pressure" }],
      ["Bottles and caps to prepare", { content: bottled("INDEX(GYLE.PACK.BOTTLES(beer_volume,bottle_volume,bottling_loss,units),1,1)"), format: "whole", name: "bottles_ready" }],
      ["Bottles filled", { content: p.bottlesFilled, format: "whole", name: "bottles_filled" }],
      ["First taste", { content: bottled("GYLE.PACK.READY(packaged_on,conditioning_temperature,units)"), format: "date", unit: "keep the first one apart, in a box", name: "first_taste" }],
      ["Keg pressure", { content: '=IF(into="keg",GYLE.PACK.PRESSURE(carbonation,keg_temperature,units),"")', format: "one", unit: `${words.pressure}; air the room: CO2 stifles`, name: "keg_pressure" }],
    ],
    (row) => {
      b.put("A", "Will the glass take it?", { style: "label" }, row);
      b.put("B", bottled("GYLE.PACK.CHECK(carbonation,warmest_storage,bottle_kind,fg,fg_expected,units)"), { style: "message", format: "text", name: "pressure_verdict", mergeTo: "I" }, row);
      b.height(linesPoints(3), row);
    },
  );
  workings(b, [["Air in the neck of a bottle", { content: kit.headspacePercent, format: "whole", unit: "% of what it holds", name: "headspace", note: "Sealed in at filling; it adds to the pressure." }]], first);
  packagingDay(units).forEach((line, index) => b.put("E", line, { style: "caution", format: "text", mergeTo: "I" }, first + besideTheKit + index));
}

/** Lines on the right that the results leave free. */
const besideTheKit = 8;

/** The hour of the packaging itself (common practice). */
const packagingDay = (units: BatchContents["units"]): readonly string[] => [
  "Takes about an hour. Bottles, siphon, caps: clean, then 1 to 2 min in sanitiser, by its label.",
  `Stir the cooled syrup in without splashing; leave ${units === "us" ? "an inch" : "2 to 3 cm"} free under each cap.`,
  "Keg: never above the pressure stamped on it; let the pressure off before you open it.",
];
