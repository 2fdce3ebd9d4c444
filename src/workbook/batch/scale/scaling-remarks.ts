import { unitWords } from "../unit-words";
import type { BatchContents } from "../contents";
import { boilingRoom, heatingRoom, mashRoom, steepRoom } from "../sheet/room";
import { plannedFigures, type PlannedFigures } from "../figures/planned-figures";
import { convertUnits } from "./convert-units";
import { stepsToReword } from "./translated-steps";

/** A figure of the plan before and after scaling, in the units of the scaled batch, ready to be shown. */
export interface HeldFigure {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  /** Told apart by more than what rounding explains. */
  readonly moved: boolean;
}

export interface ScalingRemarks {
  readonly figures: readonly HeldFigure[];
  /** What the brewer has to look at, in words. */
  readonly remarks: readonly string[];
}

/** What scaling could hold and what it could not: the difference that rounding leaves, and what no program can convert. */
export function scalingRemarks(original: BatchContents, scaled: BatchContents): ScalingRemarks {
  const inNewUnits = convertUnits(original, scaled.units);
  const before = plannedFigures(inNewUnits);
  const after = plannedFigures(scaled);
  const words = unitWords(scaled.units);
  const figure = (
    label: string,
    key: keyof Pick<PlannedFigures, "og" | "fg" | "abv" | "ibu" | "colour">,
    digits: number,
    visible: number,
  ): HeldFigure => {
    const show = (value: number | undefined) => (value === undefined ? "–" : value.toFixed(digits));
    const difference = Math.abs((after[key] ?? 0) - (before[key] ?? 0));
    return { label, before: show(before[key]), after: show(after[key]), moved: difference > visible };
  };
  const colour = figure(`Colour, ${words.colour}`, "colour", 1, 0.03 * (before.colour ?? 0));
  const figures = [
    figure("Original gravity", "og", 4, 0.001),
    figure("Final gravity", "fg", 4, 0.001),
    figure("Alcohol, %", "abv", 2, 0.1),
    figure("Bitterness, IBU", "ibu", 1, 0.5),
    colour,
  ];
  const remarks: string[] = [];
  if (figures.some(({ moved }) => moved))
    remarks.push(
      `Not held closely: ${figures
        .filter(({ moved }) => moved)
        .map(({ label }) => label.replace(/,.*/, "").toLowerCase())
        .join(
          ", ",
        )}. Small masses round coarsely, and not every malt bill can hold gravity and colour together. Change the ingredients by hand until it pleases you.`,
    );
  remarks.push(...roomRemarks(scaled, after));
  if (Math.abs(scaled.volume / inNewUnits.volume - 1) > 0.001 && /\d/.test(original.salts))
    remarks.push(`Salts and other treatment are words (“${original.salts}”): scale them by hand.`);
  const reword = stepsToReword(scaled.steps, scaled.units);
  if (reword.length > 0)
    remarks.push(`Step ${reword.join(", ")} of the brew day speaks of other units in words of its own: change it on the sheet.`);
  return { figures, remarks };
}

/** What the sheet's check of the room would say, before there is a sheet. */
function roomRemarks({ kit, units, method }: BatchContents, { beforeBoil = 0, collect = 0, mashWater, grain }: PlannedFigures): string[] {
  const words = unitWords(units);
  const standing = { beforeBoil, collect, mashWater, grain };
  const boiling = boilingRoom(standing);
  const full = (room: number, holds: number): boolean => holds > 0 && room > holds;
  const remarks: string[] = [];
  if (full(boiling, kit.kettleSize))
    remarks.push(
      `The kettle holds ${kit.kettleSize} ${words.volume}, and ${boiling.toFixed(1)} ${words.volume} would be in it before the boil: boil less and top up, or brew it in two.`,
    );
  const soaking = method === "extract" ? (grain > 0 ? steepRoom(standing, units) : 0) : mashRoom(standing, units);
  const [vessel, holds] = method === "all-grain" && kit.tunSize > 0 ? ["mash tun", kit.tunSize] : ["kettle", kit.kettleSize];
  if (full(soaking, holds))
    remarks.push(
      `The ${vessel} holds ${holds} ${words.volume}, and ${soaking.toFixed(1)} ${words.volume} of water and grain would be in it: mash thicker, steep in part of the water, or brew it in two.`,
    );
  if (vessel === "mash tun" && full(heatingRoom(standing), kit.kettleSize))
    remarks.push(
      `The kettle holds ${kit.kettleSize} ${words.volume}, and ${heatingRoom(standing).toFixed(1)} ${words.volume} are to be heated for the mash: heat the water in two.`,
    );
  return remarks;
}
