import type { BatchContents } from "../contents";
import { askNumber, askTable } from "./ask";

/** What a batch sheet shows as planned, in the units of the batch; undefined where the sheet would be blank or show an error. */
export interface PlannedFigures {
  readonly og: number | undefined;
  readonly fg: number | undefined;
  readonly abv: number | undefined;
  readonly ibu: number | undefined;
  /** SRM, or EBC on a metric batch. */
  readonly colour: number | undefined;
  /** Bitterness of each hop line. */
  readonly ibuOfEach: readonly (number | undefined)[];
  readonly boilsAt: number | undefined;
  readonly collect: number | undefined;
  readonly beforeBoil: number | undefined;
  /** Volume that shares the extract: wort that stays in the kettle keeps its part of sugar and bitterness. */
  readonly gravityVolume: number | undefined;
  readonly kettleGravity: number | undefined;
  readonly grain: number;
  /** 0 where nothing is mashed. */
  readonly mashWater: number;
}

export const maltRows = ({ malt }: Pick<BatchContents, "malt">) =>
  malt.map(({ mass, yieldPercent, handling, colour }) => [mass, yieldPercent, handling, colour]);
export const hopRows = ({ hops }: Pick<BatchContents, "hops">) =>
  hops.map(({ mass, alphaPercent, minutes }) => [mass, alphaPercent, minutes]);
export const colourScale = ({ units }: Pick<BatchContents, "units">): "SRM" | "EBC" => (units === "us" ? "SRM" : "EBC");

/** The formulas of the batch sheet's plan, asked without a sheet; `tests/workbook/figures` holds the two together. */
export function plannedFigures(batch: BatchContents): PlannedFigures {
  const { kit, method, units, volume, topUp, malt, hops } = batch;
  const kettlePart = volume > topUp ? volume - topUp : undefined;
  const gravityVolume = kettlePart === undefined ? undefined : (volume * (kettlePart + kit.kettleLoss)) / kettlePart;
  const grain = malt.filter(({ handling }) => handling === "mash" || handling === "steep").reduce((sum, { mass }) => sum + mass, 0);
  const bill = malt.length > 0 ? maltRows(batch) : [["", "", "", ""]];
  const deadSpace = method === "extract" || grain === 0 ? 0 : kit.deadSpace;
  const budget =
    kettlePart === undefined
      ? []
      : askTable(
          "WATER.BUDGET",
          kettlePart,
          kit.boilMinutes,
          kit.boilOff,
          kit.kettleLoss,
          grain,
          kit.absorption,
          null,
          units,
          bill,
          kit.grainEfficiencyPercent,
          deadSpace,
        );
  const water = (row: number): number | undefined => numberOf(budget[row]?.[1]);
  const [collect, beforeBoil, , chilled] = [0, 1, 2, 3].map(water);
  const additions = hops.length > 0 ? hopRows(batch) : [["", "", ""]];
  const og = gravityVolume && askNumber("WORT.GRAVITY", bill, gravityVolume, kit.grainEfficiencyPercent, units);
  const kettleGravity =
    beforeBoil === undefined || chilled === undefined
      ? undefined
      : askNumber("WORT.GRAVITY", bill, (beforeBoil + chilled) / 2, kit.grainEfficiencyPercent, units);
  const boilsAt = askNumber("WATER.BOILS", kit.altitude, units);
  const chillMinutes = askNumber(
    "HEAT.CHILL",
    chilled,
    boilsAt,
    batch.yeast.pitchTemperature,
    kit.tapTemperature,
    kit.tapFlow,
    kit.coilKwPerK,
    units,
  );
  const bitterness = [
    additions,
    gravityVolume,
    kettleGravity,
    "tinseth",
    boilsAt,
    units,
    kit.boilMinutes,
    batch.hopStand.temperature,
    batch.hopStand.minutes,
    chillMinutes ?? 0,
    batch.yeast.pitchTemperature,
  ];
  const fg = askNumber("YEAST.FINISH", og, batch.yeast.attenuationPercent);
  const share = askTable("HOPS.SHARE", ...bitterness);
  return {
    og,
    fg,
    abv: askNumber("BEER.ABV", og, fg),
    ibu: askNumber("HOPS.IBU", ...bitterness),
    // As on the sheet: a bill without colours has none, which is not 0.
    colour: malt.some(({ colour }) => colour > 0) ? askNumber("WORT.COLOUR", bill, gravityVolume, colourScale(batch), units) : undefined,
    ibuOfEach: hops.map((_, index) => numberOf(share[index]?.[0])),
    boilsAt,
    collect,
    beforeBoil,
    gravityVolume,
    kettleGravity,
    grain,
    mashWater: method === "extract" ? 0 : grain * kit.mashThickness,
  };
}

const numberOf = (value: unknown): number | undefined => (typeof value === "number" ? value : undefined);
