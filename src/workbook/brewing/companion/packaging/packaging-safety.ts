import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { filledAlready, waitForIt as verdictWaits } from "../../../../functions/pack/check-words";
import type { Said } from "../../../batch/rules/what-it-says";
import { OnlyTheSheetKnows } from "../../../grid/evaluate/evaluate";
import type { PackagingInput } from "./packaging-form";
import { isAllowed, packagedAs, saidOfPackaging, verdictOf } from "./packaging-judged";

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

export function packagingSafety(sheet: BatchSheet, input: PackagingInput): PackagingSafety {
  const world = packagedAs(sheet, input);
  try {
    const said = saidOfPackaging(world);
    const check = verdictOf(world);
    const holds = isAllowed(world, input);
    const weighed = said.map((one) =>
      one.line === "finished" ? byReadings(sheet, input, one) : byPressure(sheet, input, one, check, holds),
    );
    // Whatever the lines say: no figure, no packaging.
    if (!holds && !weighed.some(({ level: one }) => one === "refuse")) weighed.push(unknown(""));
    const level = (["refuse", "confirm", "clear"] as const).find(
      (grave) => grave === "clear" || weighed.some((one) => one.level === grave),
    );
    return {
      level: level ?? "refuse",
      check,
      dangers: weighed.flatMap(({ dangers }) => dangers),
      instead: [...new Set(weighed.flatMap(({ instead }) => instead))],
    };
  } catch (problem) {
    if (!(problem instanceof OnlyTheSheetKnows)) throw problem;
    return { ...unknown(": only the sheet can work it out. Fill in its section 8 and read what it says"), check: "" };
  }
}

const unknown = (why: string): Weighed => ({ level: "refuse", dangers: [`The pressure cannot be checked${why}.`], instead: [] });

const waitForIt = "Wait until two readings a day apart agree, then package.";

/** Beer that still ferments makes gas that no sugar figure knows of: the sheet's line says that it does, this how grave it is. */
function byReadings(sheet: BatchSheet, { into }: PackagingInput, { rule, words, remedy }: Said): Weighed {
  const bottles = into === "bottles";
  const bursting = bottles
    ? "What is left ferments on in the glass and can burst it."
    : "What is left ferments on in the keg and can overfill it with gas.";
  if (!/^finished\.(stalled|too-early|too-early-after-hops|kegged-too-early)$/.test(rule))
    return {
      level: bottles && rule === "finished.cannot-be-judged" ? "refuse" : "confirm",
      dangers: [words],
      instead: remedy ? [remedy] : [],
    };
  switch (sheet.text("verdict")) {
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

/** @param holds whether the sheet would let the figures stand */
function byPressure(sheet: BatchSheet, input: PackagingInput, { rule, words, state }: Said, check: string, holds: boolean): Weighed {
  const what = input.into === "keg" ? "the keg" : "these bottles";
  const close: Weighed = {
    level: "confirm",
    dangers: [`The pressure comes close to what ${what} may bear.`],
    instead: [
      input.into === "keg" ? "Chill the beer, or ask for less." : "Weigh the sugar exactly; store cooler, or take stronger bottles.",
    ],
  };
  if (rule === "pressure.close") return close;
  if (rule !== "pressure.refused") {
    // The line says one thing at a time; a pressure that is close as well is not left out.
    const besides = holds && check.startsWith("close:") ? close : { dangers: [], instead: [] };
    const level = state === "stop" || !holds ? "refuse" : "confirm";
    return { level, dangers: [words, ...besides.dangers], instead: besides.instead };
  }
  const over = check.startsWith("over");
  const passes = over ? [`The pressure passes what ${what} may bear.`] : [];
  // Beer that has not finished has one remedy, whatever the bottles.
  if (check.includes(verdictWaits))
    return {
      level: "refuse",
      dangers: ["It is above the gravity expected: what is left makes gas that no sugar figure knows of.", ...passes],
      instead: [waitForIt],
    };
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

/** The highest carbonation below the one wished for, in tenths, that the check calls "within". */
function gentlerCarbonation(sheet: BatchSheet, input: PackagingInput): number | undefined {
  for (let tenths = Math.ceil(Number(input.co2Volumes) * 10) - 1; tenths >= 10; tenths -= 1)
    if (verdictOf(packagedAs(sheet, { ...input, co2Volumes: tenths / 10 })).startsWith("within")) return tenths / 10;
  return undefined;
}
