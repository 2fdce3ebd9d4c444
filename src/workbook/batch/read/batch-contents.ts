import {
  hopPlaces,
  type BatchContents,
  type Filled,
  type Handling,
  type HopLine,
  type Kit,
  type MaltLine,
  type Packaging,
  type Reading,
  type Scale,
  type StepLine,
  type Tasting,
  type TastingLine,
  type Yeast,
} from "../contents";
import { emptyTasting, usualKit } from "../new-batch";
import { allGrainSteps, extractSteps } from "../sheet/steps";
import { unitWords } from "../unit-words";
import type { UnitSystem } from "../../../functions/quantities";
import { batchIdOf, unitsOf } from "./batch-sheets";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";

/**
 * Everything that a brewer has typed into a batch sheet: the way back from the grid to `BatchContents`. Cells that hold
 * something else than they should (a word for a number) are read as blank; `src/workbook` checks name them.
 *
 * @throws MissingName where a named cell of the sheet was deleted
 */
export function batchContents(sheet: NamedCells): BatchContents {
  const units = unitsOf(sheet);
  return {
    id: batchIdOf(sheet),
    sheetName: sheet.sheetName,
    batchName: sheet.text("batch_name"),
    number: sheet.number("batch_number"),
    brewedOn: Number(sheet.number("brewed_on")),
    startTime: Number(sheet.number("start_time")),
    style: sheet.text("style"),
    method: sheet.has("mash_water") ? "all-grain" : "extract",
    units,
    volume: Number(sheet.number("volume")),
    topUp: Number(sheet.number("top_up")),
    salts: sheet.text("salts"),
    kitName: sheet.has("kit_name") ? sheet.text("kit_name") : "",
    kit: kit(sheet, usualKit[units]),
    malt: malt(sheet),
    hops: hops(sheet),
    hopStand: { temperature: optionalNumber(sheet, "stand_temperature"), minutes: optionalNumber(sheet, "stand_minutes") },
    dryHoppedOn: optionalNumber(sheet, "dry_hopped_on"),
    yeast: yeast(sheet),
    ...editedSteps(sheet, units),
    happened: happened(sheet),
    wort: {
      collected: optionalNumber(sheet, "collected"),
      reading: sheet.number("og_reading"),
      scale: scale(sheet.value("og_scale")),
      sampleTemperature: sheet.number("og_temperature"),
      volume: sheet.number("volume_reached"),
    },
    readings: readings(sheet),
    packaging: packaging(sheet),
    tasting: tasting(sheet),
  };
}

/** A cell that sheets of an older plan lack. */
const optionalNumber = (sheet: NamedCells, name: string): Filled<number> => (sheet.has(name) ? sheet.number(name) : "");

const numberIn = (value: CellValue): Filled<number> => (typeof value === "number" ? value : "");
const textIn = (value: CellValue): string => String(value).trim();
const scale = (value: CellValue): Scale => (value === "P" ? "P" : "SG");

/** A cell that a kit must have but that was emptied counts as the usual value. */
function kit(sheet: NamedCells, usual: Kit): Kit {
  const or = (name: string, field: keyof Kit): number => {
    const value = sheet.has(name) ? sheet.number(name) : "";
    return value === "" ? usual[field] : value;
  };
  return {
    boilMinutes: or("boil_minutes", "boilMinutes"),
    boilOff: or("boil_off", "boilOff"),
    kettleLoss: or("kettle_loss", "kettleLoss"),
    kettleSize: or("kettle_size", "kettleSize"),
    altitude: or("altitude", "altitude"),
    powerKw: or("power", "powerKw"),
    heatEfficiencyPercent: or("heat_efficiency", "heatEfficiencyPercent"),
    tapTemperature: or("tap_temperature", "tapTemperature"),
    tapFlow: or("tap_flow", "tapFlow"),
    coilKwPerK: or("coil", "coilKwPerK"),
    sanitiserVolume: or("sanitiser_volume", "sanitiserVolume"),
    soakTemperature: or("soak_temperature", "soakTemperature"),
    soakMinutes: or("soak_minutes", "soakMinutes"),
    grainEfficiencyPercent: or("grain_efficiency", "grainEfficiencyPercent"),
    mashThickness: or("mash_thickness", "mashThickness"),
    grainTemperature: or("grain_temperature", "grainTemperature"),
    hydrometerCalibratedAt: or("calibrated_at", "hydrometerCalibratedAt"),
    bottleVolume: or("bottle_volume", "bottleVolume"),
    bottlingLoss: or("bottling_loss", "bottlingLoss"),
    absorption: or("absorption", "absorption"),
    deadSpace: or("tun_dead_space", "deadSpace"),
    tunSize: or("tun_size", "tunSize"),
    sanitiserDose: or("sanitiser_per_volume", "sanitiserDose"),
    headspacePercent: or("headspace", "headspacePercent"),
  };
}

/** Rows of a block, from column `from` on, that hold anything in it. */
function lines(sheet: NamedCells, name: string, from: number, to: number): CellValue[][] {
  const { from: first, to: last } = sheet.area(name);
  const rows: CellValue[][] = [];
  for (let row = first.row; row <= last.row; row += 1)
    rows.push(Array.from({ length: to - from + 1 }, (_, index) => sheet.at(row, from + index)));
  return rows;
}

const isFilled = (cells: readonly CellValue[]): boolean => cells.some((cell) => cell !== "");

function malt(sheet: NamedCells): MaltLine[] {
  const handlings: readonly string[] = ["mash", "steep", "extract", "sugar"];
  return lines(sheet, "malt", 1, 8)
    .filter((cells) => isFilled(cells.slice(0, 6)))
    .map(([ingredient = "", mass = "", yieldPercent = "", handling = "", colour = "", cost = "", , remark = ""]) => ({
      ingredient: textIn(ingredient),
      mass: Number(numberIn(mass)),
      yieldPercent: Number(numberIn(yieldPercent)),
      handling: (handlings.includes(String(handling)) ? handling : "extract") as Handling,
      colour: Number(numberIn(colour)),
      cost: numberIn(cost),
      ...(remark !== "" && { remark: textIn(remark) }),
    }));
}

function hops(sheet: NamedCells): HopLine[] {
  return lines(sheet, "hop_plan", 1, 8)
    .filter((cells) => isFilled(cells.slice(0, 6)))
    .map(([hop = "", mass = "", alpha = "", minutes = "", form = "", cost = "", , remark = ""]) => ({
      hop: textIn(hop),
      mass: Number(numberIn(mass)),
      alphaPercent: Number(numberIn(alpha)),
      minutes: hopPlaces.find((place) => place === textIn(minutes).toLowerCase()) ?? Number(numberIn(minutes)),
      form: textIn(form),
      cost: numberIn(cost),
      ...(remark !== "" && { remark: textIn(remark) }),
    }));
}

function yeast(sheet: NamedCells): Yeast {
  return {
    name: sheet.text("yeast_name"),
    packsInHand: sheet.number("packs_in_hand"),
    cellsPerPack: sheet.number("cells_per_pack"),
    viabilityPercent: sheet.number("viability"),
    pitchRate: sheet.number("pitch_rate"),
    attenuationPercent: sheet.number("attenuation"),
    pitchTemperature: sheet.number("pitch_temperature"),
    fermentFrom: sheet.number("ferment_from"),
    fermentTo: sheet.number("ferment_to"),
    cost: sheet.number("yeast_cost"),
  };
}

/** Only where somebody has changed ours: then they stay as they are, in the words and units of the one who wrote them. */
function editedSteps(sheet: NamedCells, units: UnitSystem): Pick<BatchContents, "steps"> {
  const found = steps(sheet);
  const ours = (sheet.has("mash_water") ? allGrainSteps : extractSteps)(units, unitWords(units));
  return JSON.stringify(found) === JSON.stringify(ours) ? {} : { steps: found };
}

/** As they were typed: a step whose words are a formula keeps its formula. */
function steps(sheet: NamedCells): StepLine[] {
  return sheet
    .formulaBlock("steps")
    .filter(isFilled)
    .map(([what = "", part = "", minutes = "", caution = "", why = ""]) => ({
      what: String(what),
      part: part === "boil" || part === "after" ? part : "before",
      minutes: typeof minutes === "boolean" ? "" : minutes,
      caution: textIn(caution),
      why: textIn(why),
    }));
}

/** Up to the last one that is filled in; a line that was left out stays blank. */
function happened(sheet: NamedCells): Filled<number>[] {
  const times = sheet.block("happened").map(([time = ""]) => numberIn(time));
  const last = times.findLastIndex((time) => time !== "");
  return times.slice(0, last + 1);
}

function readings(sheet: NamedCells): Reading[] {
  return lines(sheet, "readings", 1, 5)
    .filter(([when = "", reading = ""]) => typeof when === "number" && typeof reading === "number")
    .map(([when, reading, readScale = "", sample = "", beer = ""]) => ({
      when: Number(when),
      reading: Number(reading),
      scale: scale(readScale),
      sampleTemperature: numberIn(sample),
      beerTemperature: numberIn(beer),
    }));
}

function packaging(sheet: NamedCells): Packaging {
  return {
    packagedOn: sheet.number("packaged_on"),
    into: sheet.text("into") === "keg" ? "keg" : "bottles",
    co2Volumes: Number(sheet.number("carbonation")),
    warmestSinceFermentation: sheet.number("warmest_beer"),
    sugar: sheet.text("priming_sugar"),
    bottleKind: sheet.text("bottle_kind"),
    warmestStorage: Number(sheet.number("warmest_storage")),
    conditioningTemperature: Number(sheet.number("conditioning_temperature")),
    kegTemperature: Number(sheet.number("keg_temperature")),
    bottlesFilled: sheet.number("bottles_filled"),
  };
}

function tasting(sheet: NamedCells): Tasting {
  const { from, to } = sheet.area("scores");
  const line = (index: number): TastingLine => {
    const row = from.row + index;
    return row > to.row
      ? emptyTasting.looks
      : { score: numberIn(sheet.at(row, from.column)), words: textIn(sheet.at(row, from.column + 1)) };
  };
  return {
    tastedOn: sheet.number("tasted_on"),
    looks: line(0),
    smells: line(1),
    tastes: line(2),
    feels: line(3),
    again: line(4),
    notes: sheet.text("notes"),
  };
}
