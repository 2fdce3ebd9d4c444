import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contrast } from "../../src/pane/look/contrast";
import { isReadable, paletteFor, palettes } from "../../src/pane/look/palette";

describe("contrast", () => {
  // WCAG 2.2: black on white is 21:1; #767676 on white is the well-known lightest grey that reaches 4.5 (W3C, G18).
  it.each([
    ["#000000", "#FFFFFF", 21, 1],
    ["#FFFFFF", "#FFFFFF", 1, 1],
    ["#767676", "#FFFFFF", 4.54, 2],
  ] as const)("%s on %s is %d", (one, other, ratio, digits) => {
    expect(contrast(one, other)).toBeCloseTo(ratio, digits);
    expect(contrast(other, one)).toBeCloseTo(ratio, digits);
  });
});

describe("the palette", () => {
  it.each(Object.keys(palettes) as (keyof typeof palettes)[])("of our own (%s) is readable", (kind) =>
    expect(isReadable(palettes[kind])).toBe(true),
  );
  it("takes the host's paper and ink where everything stays readable on them", () => {
    expect(paletteFor({ bodyBackgroundColor: "#262626", bodyForegroundColor: "#F0F0F0", isDarkTheme: true }, false)).toMatchObject({
      kind: "dark",
      palette: { paper: "#262626", ink: "#F0F0F0" },
    });
    expect(paletteFor({ bodyBackgroundColor: "#FFFFFF", bodyForegroundColor: "#1F1F1F" }, true).kind).toBe("light");
    expect(paletteFor({ bodyBackgroundColor: "#000000", bodyForegroundColor: "#FFFFFF", isDarkTheme: true }, false).kind).toBe("contrast");
  });
  it("follows the browser where the host says nothing", () => {
    expect(paletteFor(undefined, true)).toEqual({ kind: "dark", palette: palettes.dark });
    expect(paletteFor({}, false)).toEqual({ kind: "light", palette: palettes.light });
  });
  it("is readable whatever the host says", () => {
    const hex = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, "0")}`);
    const color = fc.oneof(hex, fc.constantFrom("", "white", "#12"));
    fc.assert(
      fc.property(color, color, fc.option(fc.boolean(), { nil: undefined }), fc.boolean(), (paper, ink, dark, prefersDark) =>
        isReadable(
          paletteFor(
            { bodyBackgroundColor: paper, bodyForegroundColor: ink, ...(dark !== undefined && { isDarkTheme: dark }) },
            prefersDark,
          ).palette,
        ),
      ),
    );
  });
});
