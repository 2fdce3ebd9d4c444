import { expect, it } from "vitest";
import { waterBoils } from "../../src/functions/water/boils";
import { heightsThatBoil } from "../../src/workbook/batch/rules/no-gylebook";

it("the heights at which an error means that our functions are not known are those at which ours answers", () => {
  expect(waterBoils.parameters.altitude.limits).toMatchObject({ atLeast: heightsThatBoil[0], atMost: heightsThatBoil[1] });
});
