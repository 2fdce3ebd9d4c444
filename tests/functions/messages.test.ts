import { describe, expect, it } from "vitest";
import { callScalar } from "../../src/functions/call";
import { limitText, messages } from "../../src/functions/messages";
import { functionNamed } from "../../src/functions/registry";
import { percentHint, percentOfShare } from "../../src/functions/share-of-one";
import { gravity } from "../../src/functions/vocabulary";

describe("limits in words", () => {
  it("say which ends belong to the range", () => {
    expect(limitText("percent", { atLeast: 0, atMost: 30 }, "metric")).toBe("from 0 to 30 %");
    expect(limitText("percent", { above: 0, atMost: 30 }, "metric")).toBe("above 0 and at most 30 %");
    expect(limitText("percent", { above: 0, below: 30 }, "metric")).toBe("above 0 and below 30 %");
    expect(limitText("percent", { atLeast: 0, below: 30 }, "metric")).toBe("at least 0 and below 30 %");
    expect(limitText("percent", { atLeast: 5 }, "metric")).toBe("at least 5 %");
    expect(limitText("percent", { above: 5 }, "metric")).toBe("above 5 %");
    expect(limitText("percent", { atMost: 5 }, "metric")).toBe("at most 5 %");
    expect(limitText("percent", { below: 5 }, "metric")).toBe("below 5 %");
  });

  it("are in the brewer's unit", () => {
    expect(limitText("temperature", { atLeast: 0, atMost: 100 }, "us")).toBe("from 32 to 212 °F");
  });
});

describe("what was typed, in a message", () => {
  it("is quoted by its kind, and cut short when it is long", () => {
    const notANumber = (typed: unknown) => messages.notANumber("volume", typed, { quantity: "volume", limits: { above: 0 } }, "metric");
    expect(notANumber("lots")).toBe('volume must be a number, not the text "lots"; it must be above 0 L');
    expect(notANumber("x".repeat(40))).toContain(`"${"x".repeat(40)}"`);
    expect(notANumber("x".repeat(41))).toContain(`"${"x".repeat(40)}…"`);
    expect(notANumber(true)).toBe("volume must be a number, not TRUE; it must be above 0 L");
    expect(notANumber(false)).toBe("volume must be a number, not FALSE; it must be above 0 L");
  });

  it("is a width in columns, one or more", () => {
    expect(messages.wrongWidth("hops", 1, ["mass"])).toBe("hops is 1 column wide; it must hold mass");
    expect(messages.wrongWidth("hops", 2, ["mass", "name | mass"])).toBe("hops is 2 columns wide; it must hold mass, or name | mass");
  });
});

describe("the hint beside a gravity out of range", () => {
  const said = (typed: number) => callScalar(functionNamed("BEER.ABV"), [typed, 1.01]);
  const message = (typed: number): string => {
    const answer = said(typed);
    return typeof answer === "object" ? answer.message : `answered ${answer}`;
  };

  it("takes 1.3 to 40 for °P, 41 to 200 for points, 900 to 1200 for a point left out, and says nothing to other numbers", () => {
    expect(message(12.4)).toBe(
      "original_gravity is 12.4; it must be from 0.980 to 1.200 (12.4 looks like °P: wrap it in GYLE.WORT.SG(12.4))",
    );
    expect(message(1.21)).toContain("(1.21 looks like °P");
    expect(message(40)).toContain("(40 looks like °P");
    for (const [points, gravity] of [
      [41, "1.041"],
      [200, "1.200"],
    ] as const)
      expect(message(points)).toContain(`(${points} looks like points: write ${gravity})`);
    expect(message(201)).toMatch(/to 1\.200$/);
    expect(message(1048)).toBe(
      "original_gravity is 1048; it must be from 0.980 to 1.200 (write it as 1.048, with the decimal sign of your spreadsheet)",
    );
    expect(message(901)).toContain("(write it as 0.901,");
    expect(message(1199)).toContain("(write it as 1.199,");
    for (const neither of [0.5, -3, 899, 1201, 5000]) expect(message(neither), String(neither)).toMatch(/to 1\.200$/);
  });

  it("is given only to what is refused: 0.98 and 1.2 are gravities still", () => {
    expect(gravity("any").limits).toEqual({ atLeast: 0.98, atMost: 1.2 });
    expect(typeof callScalar(functionNamed("BEER.ABV"), [1.2, 1.01])).toBe("number");
    expect(typeof callScalar(functionNamed("BEER.ABV"), [1, 0.98])).toBe("number");
  });
});

describe("the hint beside a share typed for a percentage", () => {
  it("is given above 0 up to 1, which a cell formatted in per cent hands over for 100 %", () => {
    expect(percentHint(0.75)).toBe("write 75 for 75 %");
    expect(percentHint(1)).toBe("write 100 for 100 %");
    expect(percentHint(0.055)).toBe("write 5.5 for 5.5 %");
    for (const other of [0, -0.5, 1.005, 75]) expect(percentHint(other)).toBeUndefined();
  });

  it("keeps two digits", () => {
    expect(percentOfShare(0.055)).toBe(5.5);
    expect(percentOfShare(0.123456)).toBe(12.35);
  });
});
