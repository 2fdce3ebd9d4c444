import fc from "fast-check";

/**
 * The made-up inputs are the same in every run, so that a red run is red because of a change. To look further, name
 * another seed: `GYLEBOOK_SEED=random npx vitest run --project unit`, or a number that a failure has printed.
 */
const seed = process.env["GYLEBOOK_SEED"] ?? "20261125";
if (seed !== "random") fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(seed) });
