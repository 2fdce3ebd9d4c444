import type { Values } from "../../batch/describe/field";
import { planVersion, type PlanVersion } from "../../batch/describe/plan-version";
import { filledUp } from "../../batch/derived/since";
import { batchFields } from "../../batch/fields";
import { BatchFileRefused } from "./refused";

/** Version of the files that are written now: a file brings what the sheet of its plan holds. */
export const fileVersion = planVersion;

type Entries = Record<string, unknown>;
const isEntries = (value: unknown): value is Entries => typeof value === "object" && value !== null && !Array.isArray(value);

/** From each version to the next, beside the fields that the next one brought: each step knows only its own. */
const steps: Readonly<Record<number, (batch: Entries) => Entries>> = {
  // Version 1 knew no mark of the batch's own.
  1: (batch) => ({ ...batch, id: batch["id"] ?? markFrom(batch) }),
  // Version 2 had a step less.
  2: (batch) => ({ ...batch, happened: withOneMoreStep(batch) }),
};

/** Lines of an old day that come after the new step "Open the yeast": pitching, cleaning up and the end; and all that are not hops. */
const [linesBehind, linesBesideHops] = [3, 17];

/** Times stand line by line, so that a step of ours which an old day did not have needs an empty one. Words of the brewer's own stay as they are. */
function withOneMoreStep({ steps: own, hops, happened }: Entries): unknown {
  if (own !== undefined || !Array.isArray(hops) || !Array.isArray(happened)) return happened;
  const at = linesBesideHops + hops.length - linesBehind;
  return happened.length <= at ? happened : [...(happened as unknown[]).slice(0, at), "", ...(happened as unknown[]).slice(at)];
}

/** A batch of any version that was ever written, as one of this version; what it holds is still to be checked. */
export function migrated(batch: unknown, version: unknown): unknown {
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    throw new BatchFileRefused("The version of this batch file is missing or damaged.");
  if (version > fileVersion)
    throw new BatchFileRefused(
      `This batch file has version ${version}; this Gylebook reads up to version ${fileVersion}. Update it, or ask for the file in an older version.`,
    );
  let current = batch;
  for (let from = version; from < fileVersion; from += 1) {
    if (isEntries(current)) current = withNewFields(steps[from]?.(current) ?? current, (from + 1) as PlanVersion);
  }
  return current;
}

const withNewFields = (batch: Entries, version: PlanVersion): Entries =>
  filledUp(batchFields, batch as Values, version, { units: batch["units"] === "us" ? "us" : "metric", method: "extract" });

/** The same file gives the same mark each time, so that it is known again (FNV-1a, 32 bits, over what it says of itself). */
function markFrom(batch: Entries): string {
  let hash = 0x811c9dc5;
  for (const character of JSON.stringify([batch["batchName"], batch["brewedOn"], batch["number"], batch["volume"]]))
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return `v1-${hash.toString(36)}`;
}
