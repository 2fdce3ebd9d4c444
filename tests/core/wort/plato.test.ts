import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gravityFromPlato, platoFromGravity } from "../../../src/core/wort/plato";

describe("gravity and °P", () => {
  it("are each other's inverse to 1e-9 from -5.5 to 45 °P", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5.5, max: 45, noNaN: true }),
        (plato) => Math.abs(platoFromGravity(gravityFromPlato(plato)) - plato) < 1e-9,
      ),
    );
    fc.assert(
      fc.property(
        fc.double({ min: 0.98, max: 1.2, noNaN: true }),
        (gravity) => Math.abs(gravityFromPlato(platoFromGravity(gravity)) - gravity) < 1e-11,
      ),
    );
  });
  it("meet at water: 1.000 is exactly 0 °P", () => {
    expect(platoFromGravity(1)).toBe(0);
    expect(gravityFromPlato(0)).toBe(1);
  });
  it("rise together", () => {
    for (let gravity = 0.98; gravity < 1.2; gravity += 0.001)
      expect(platoFromGravity(gravity + 0.001)).toBeGreaterThan(platoFromGravity(gravity));
  });
});
