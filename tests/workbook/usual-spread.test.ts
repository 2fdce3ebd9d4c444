import { describe, expect, it } from "vitest";
import { functionNamed } from "../../src/functions/registry";
import { spreadOfCall } from "../../src/workbook/care/explain/usual-spread";

describe("the ± that the pane shows", () => {
  it("holds what the equation itself is off by, and names who says so", () => {
    const found = spreadOfCall(functionNamed("BEER.REFRACTOMETER"), [12, 6, 1], "metric");
    // A refractometer to half a degree Brix, both readings, and Terrill's curve: 0.00085683 × 0.5, 0.0034941 × 0.5, 0.002.
    expect(found).toEqual({
      spread: {
        value: expect.closeTo(Math.hypot(0.00085683 * 0.5, 0.0034941 * 0.5, 0.002), 6) as number,
        assumed: ["original_brix ± 0.5", "brix ± 0.5", "the equation itself ± 0.002 SG (S. Terrill, 2011)"],
      },
    });
  });

  it("says nothing of an equation whose source states no ±", () => {
    const found = spreadOfCall(functionNamed("BEER.ABV"), [1.05, 1.01], "metric");
    expect(found).toEqual({
      spread: { value: expect.closeTo(0.38, 1) as number, assumed: ["original_gravity ± 0.002 SG", "final_gravity ± 0.002 SG"] },
    });
  });
});
