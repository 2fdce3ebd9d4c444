import type { UnitSystem } from "../../functions/quantities";
import { cardFields } from "../../workbook/batch/fields/card";
import { newBatchId } from "../../workbook/batch/batch-id";
import { typedDay, typedNumber } from "../fields/typed";
import { sheetNameProblem } from "../../workbook/grid/words/sheet-name";
import type { Method } from "../../workbook/batch/contents";
import type { NewBatchChoices } from "../../workbook/batch/new-batch";

/** What stands in the form, as typed. */
export interface FormValues {
  readonly name: string;
  readonly brewedOn: string;
  readonly volume: string;
  readonly units: UnitSystem;
  readonly method: Method;
  readonly boil: "whole" | "part";
  readonly topUp: string;
  readonly recipe: "empty" | "example";
}

export type Problems = Partial<Record<"name" | "brewedOn" | "volume" | "topUp", string>>;

export const volumeWord: Readonly<Record<UnitSystem, string>> = { metric: "litres", us: "US gallons" };
export const usualVolume: Readonly<Record<UnitSystem, string>> = { metric: "20", us: "5" };
export const usualTopUp: Readonly<Record<UnitSystem, string>> = { metric: "10", us: "2.5" };

const [leastVolume, mostVolume] = cardFields.volume.limits;
export const isVolume = (volume: number): boolean => volume >= leastVolume && volume <= mostVolume;
export const howMuchBeer = (units: UnitSystem): string => `How much beer? From ${leastVolume} to ${mostVolume} ${volumeWord[units]}.`;

/** What is no number counts as nothing, which no amount may be. */
const numberIn = (text: string): number => typedNumber(text) ?? 0;

/** Reads the form: either what to write, or what is wrong beside each field. */
export function readForm(values: FormValues): { choices?: NewBatchChoices; problems: Problems } {
  const problems: Problems = {};
  const sheetName = values.name.trim();
  const nameProblem = sheetNameProblem(sheetName);
  if (nameProblem) problems.name = nameProblem;
  const brewedOn = typedDay(values.brewedOn);
  if (brewedOn === undefined) problems.brewedOn = "Which day? A date such as 2026-09-05.";
  const volume = numberIn(values.volume);
  if (!isVolume(volume)) problems.volume = howMuchBeer(values.units);
  const topUp = values.boil === "part" ? numberIn(values.topUp) : 0;
  if (values.boil === "part" && !(topUp > 0 && topUp < volume))
    problems.topUp = `Top-up water must be above 0 and less than the ${values.volume || "whole"} ${volumeWord[values.units]} of beer.`;
  if (Object.keys(problems).length > 0 || brewedOn === undefined) return { problems };
  return {
    problems,
    choices: { id: newBatchId(), sheetName, batchName: sheetName, brewedOn, volume, units: values.units, topUp, method: values.method },
  };
}
