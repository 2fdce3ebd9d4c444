import { filledAlready, waitForIt as verdictWaits } from "../../../../functions/pack/check-words";
import { quantity } from "../../../../functions/quantities";
import { sugarGoesBy, warmthSlack } from "../../../batch/rules/packaging";
import { unitsOf } from "../../../batch/read/batch-sheets";
import type { NamedCells } from "../../../grid/read/named-cells";
import { lets, packagingCheck } from "./packaging-check";
import type { PackagingInput } from "./packaging-form";

/**
 * Whether it may be packaged like this. "clear": nothing speaks against it. "confirm": there is a danger that the brewer
 * must name before anything is written. "refuse": glass could burst, so neither sugar nor writing is offered.
 */
export interface PackagingSafety {
  readonly level: "clear" | "confirm" | "refuse";
  readonly dangers: readonly string[];
  readonly instead: readonly string[];
  /** The verdict of GYLE.PACK.CHECK in full. */
  readonly check: string;
}

type Weighed = Pick<PackagingSafety, "level" | "dangers" | "instead">;
const clear: Weighed = { level: "clear", dangers: [], instead: [] };

export function packagingSafety(sheet: NamedCells, input: PackagingInput): PackagingSafety {
  const check = packagingCheck(sheet, input);
  const weighed = [
    byReadings(sheet, input),
    byPressure(sheet, input, check),
    ...(input.into === "bottles" ? [byLoss(input), byWarmth(sheet, input)] : []),
  ];
  const level = weighed.some((one) => one.level === "refuse")
    ? "refuse"
    : weighed.some((one) => one.level === "confirm")
      ? "confirm"
      : "clear";
  return {
    level,
    check,
    dangers: weighed.flatMap(({ dangers }) => dangers),
    instead: [...new Set(weighed.flatMap(({ instead }) => instead))],
  };
}

const waitForIt = "Wait until two readings a day apart agree, then package.";

/** Beer that still ferments makes gas that no sugar figure knows of. */
function byReadings(sheet: NamedCells, { into }: PackagingInput): Weighed {
  const bottles = into === "bottles";
  const bursting = bottles
    ? "What is left ferments on in the glass and can burst it."
    : "What is left ferments on in the keg and can overfill it with gas.";
  switch (sheet.text("verdict")) {
    case "steady":
      return clear;
    case "":
      return {
        level: bottles ? "refuse" : "confirm",
        dangers: [`No reading says that it has finished. ${bursting}`],
        instead: ["Take a reading today and another tomorrow."],
      };
    case "not begun":
      return {
        level: bottles ? "refuse" : "confirm",
        dangers: [`It has not begun to ferment. ${bursting}`],
        instead: ["Is it warm enough? Give it fresh yeast, and wait."],
      };
    case "rising":
      return {
        level: bottles ? "refuse" : "confirm",
        dangers: ["One of the readings is wrong, so none of them shows that it has finished."],
        instead: ["Read again, mind scale and temperature, and clear the wrong row."],
      };
    case "stalled":
      return {
        level: "confirm",
        dangers: [`It stopped above the gravity to expect. ${bursting}`],
        instead: ["Warm it up, rouse the yeast, wait, read again."],
      };
    default:
      return { level: "confirm", dangers: [`The readings are not steady. ${bursting}`], instead: [waitForIt] };
  }
}

function byLoss({ loss }: PackagingInput): Weighed {
  return Number(loss) < 0
    ? {
        level: "refuse",
        dangers: ["Lost in racking is less than nothing: the sugar would be for more beer than there is."],
        instead: ["Type what stays behind, or 0."],
      }
    : clear;
}

/** Sugar goes by the warmest since it finished: held against what the sheet knows of the beer, as its own check does. */
function byWarmth(sheet: NamedCells, { warmestBeer }: PackagingInput): Weighed {
  const units = unitsOf(sheet);
  const numbers = (name: string): number[] =>
    sheet.has(name)
      ? sheet
          .block(name)
          .flat()
          .filter((value) => typeof value === "number")
      : [];
  const beer = numbers("beer_temperatures");
  const known = [...beer, ...numbers("ferment_to")];
  if (warmestBeer === "" || known.length === 0) return clear;
  const [most, least, slack] = [Math.max(...known), Math.min(...beer), warmthSlack[units]];
  const degrees = quantity("temperature").unit[units];
  const slip = (than: string): Weighed => ({
    level: "confirm",
    dangers: [`${sugarGoesBy}${warmestBeer} ${degrees} as the warmest since it finished, but the beer ${than} by this sheet.`],
    instead: ["Look whether that temperature is a slip."],
  });
  if (warmestBeer > most + slack) return slip(`came to no more than ${most.toFixed(0)}`);
  return beer.length > 0 && warmestBeer < least - slack ? slip(`was never below ${least.toFixed(0)}`) : clear;
}

function byPressure(sheet: NamedCells, input: PackagingInput, check: string): Weighed {
  const what = input.into === "keg" ? "the keg" : "these bottles";
  if (!/^(within|close|over): /.test(check))
    return {
      level: "refuse",
      dangers: [`The pressure cannot be checked${check === "" ? ": something is not filled in" : `: ${check}`}.`],
      instead: [],
    };
  const over = check.startsWith("over");
  const passes = over ? [`The pressure passes what ${what} may bear.`] : [];
  // Beer that has not finished has one remedy, whatever the bottles.
  if (!lets(check) && check.includes(verdictWaits))
    return {
      level: "refuse",
      dangers: ["It is above the gravity expected: what is left makes gas that no sugar figure knows of.", ...passes],
      instead: [waitForIt],
    };
  if (over) {
    const gentler = gentlerCarbonation(sheet, input);
    return {
      level: "refuse",
      dangers: [...passes, ...(input.into === "bottles" ? [filledAlready] : [])],
      instead: [
        ...(gentler === undefined ? [] : [`With ${gentler.toFixed(1)} volumes it would stay within.`]),
        input.into === "keg" ? "Chill the beer." : "Take stronger bottles, or a cooler place.",
      ],
    };
  }
  if (check.startsWith("close"))
    return {
      level: "confirm",
      dangers: [`The pressure comes close to what ${what} may bear.`],
      instead: [
        input.into === "keg" ? "Chill the beer, or ask for less." : "Weigh the sugar exactly; store cooler, or take stronger bottles.",
      ],
    };
  return clear;
}

/** The highest carbonation below the one wished for, in tenths, that the check calls "within". */
function gentlerCarbonation(sheet: NamedCells, input: PackagingInput): number | undefined {
  for (let tenths = Math.ceil(Number(input.carbonation) * 10) - 1; tenths >= 10; tenths -= 1)
    if (packagingCheck(sheet, input, tenths / 10).startsWith("within")) return tenths / 10;
  return undefined;
}
