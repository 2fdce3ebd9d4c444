/**
 * The share of made-up inputs that is tried: `npm run test:quick` takes a quarter of them (`GYLEBOOK_DRAWN=0.25`), and
 * `GYLEBOOK_DRAWN=10` looks ten times as far.
 */
export const share = Number(process.env["GYLEBOOK_DRAWN"] ?? 1);
if (!(share > 0))
  throw new Error(`GYLEBOOK_DRAWN is "${process.env["GYLEBOOK_DRAWN"] ?? ""}": a number above 0 is wanted, for example 0.25`);

/** Whether as many are tried as a test asks for. What it counts among them ("more than 50 were answered") is to be asked only then. */
export const allDrawn = share >= 1;
