import type * as FastCheck from "fast-check";
import fc from "fast-check";
import { vi } from "vitest";
import { share } from "./drawn";

/**
 * The made-up inputs are the same in every run, so that a red run is red because of a change. To look further, name
 * another seed: `GYLEBOOK_SEED=random npx vitest run --project unit`, or a number that a failure has printed.
 */
const seed = process.env["GYLEBOOK_SEED"] ?? "20261125";
if (seed !== "random") fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(seed) });

// Each test names its own number of inputs, which no setting of fast-check's overrules: it is changed on its way there.
if (share !== 1) {
  vi.doMock("fast-check", async (original) => {
    const real = await original<typeof FastCheck>();
    const assert = (
      property: Parameters<typeof FastCheck.assert>[0],
      settings: Parameters<typeof FastCheck.assert>[1] = {},
    ): ReturnType<typeof FastCheck.assert> =>
      real.assert(property, { ...settings, numRuns: Math.ceil((settings.numRuns ?? real.readConfigureGlobal().numRuns ?? 100) * share) });
    return { ...real, assert, default: { ...real.default, assert } };
  });
}
