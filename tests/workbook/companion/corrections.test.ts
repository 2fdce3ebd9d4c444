import { describe, expect, it } from "vitest";
import { bitternessWords } from "../../../src/workbook/brewing/companion/correction/bitterness";
import { corrections } from "../../../src/workbook/brewing/companion/correction/corrections";
import type { Missed, Place, Wort } from "../../../src/workbook/brewing/companion/correction/plan-and-measured";
import { sucroseSolutionL } from "../../sheets/follow-the-sheet/sucrose-table";
import { handSheet } from "../../support/hand-sheet";

/** Gravity at 20 °C of 10, 12 and 15 °Brix: NBS Circular C440, Table 114. */
const [ten, twelve, fifteen] = [1.04003, 1.04837, 1.06111];
/** Kilograms in a litre of water at 20 °C. */
const water = 0.9982;

const missed = (place: Place, measured: Wort, planned: Wort, more: Partial<Missed> = {}): Missed => ({
  place,
  units: "metric",
  planned,
  measured,
  plannedIbu: undefined,
  ibuAt: () => undefined,
  boilOff: 4,
  ...more,
});
const titled = (ways: ReturnType<typeof corrections>, title: string) => ways.find((way) => way.title === title);
const titles = (of: Missed): string[] => corrections(of).map(({ title }) => title);

describe("which ways out are offered", () => {
  const plan = { volume: 20, gravity: 1.05 };

  it("none within what one can measure: two points of gravity, three hundredths of the volume", () => {
    for (const measured of [
      { volume: 20, gravity: 1.0519 },
      { volume: 20, gravity: 1.0481 },
      { volume: 19.41, gravity: 1.05 },
      { volume: 20.59, gravity: 1.05 },
    ])
      expect(corrections(missed("kettle", measured, plan))).toEqual([]);
  });

  it.each<[string, Place, Wort, string[]]>([
    ["too strong", "kettle", { volume: 20, gravity: 1.0521 }, ["Add water", "Leave it"]],
    ["too strong and too little", "kettle", { volume: 18, gravity: 1.065 }, ["Add water", "Water up to the planned volume", "Leave it"]],
    ["too strong by what evaporated", "fermenter", { volume: 18, gravity: 1.0556 }, ["Add water", "Leave it"]],
    ["too weak in the kettle", "kettle", { volume: 20, gravity: 1.0479 }, ["Boil on", "Add dry malt extract", "Leave it"]],
    ["too weak in the fermenter", "fermenter", { volume: 20, gravity: 1.0479 }, ["Add dry malt extract", "Add sugar", "Leave it"]],
    ["too little", "fermenter", { volume: 19.39, gravity: 1.05 }, ["Water and extract", "Leave it"]],
    ["too much", "fermenter", { volume: 20.61, gravity: 1.05 }, ["Leave it"]],
  ])("%s, in the %s", (_what, place, measured, expected) => {
    expect(titles(missed(place, measured, plan))).toEqual(expected);
  });

  it("never boils on where the kettle's boil-off is not known", () => {
    expect(titles(missed("kettle", { volume: 20, gravity: 1.04 }, plan, { boilOff: 0 }))).toEqual(["Add dry malt extract", "Leave it"]);
  });
});

describe("how much of it", () => {
  it("water, by the sugar that stays: 15 to 10 °Brix is half the mass again", () => {
    const added = 20 * fifteen * (15 / 10 - 1); // 10.61 L
    const way = titled(corrections(missed("fermenter", { volume: 20, gravity: fifteen }, { volume: 20, gravity: ten })), "Add water");
    expect(way?.what).toBe(`Stir in ${added.toFixed(2)} L of water. Is there room for it, and for the foam?`);
    expect(way?.result.volume).toBeCloseTo(20 + added, 1); // the gravity function is good to 0.02 L here
    expect(way?.result.gravity).toBe(ten);
    expect(way?.caution).toContain("Boiled and cooled water only");
  });

  it("the same in US gallons, and without the question where there is room", () => {
    const added = 5 * fifteen * 0.5; // 2.65 US gal
    const way = titled(
      corrections(missed("kettle", { volume: 5, gravity: fifteen }, { volume: 8, gravity: ten }, { units: "us" })),
      "Add water",
    );
    expect(way?.what).toBe(`Stir in ${added.toFixed(2)} US gal of water.`);
    expect(way?.caution).toContain("hot wort spits");
  });

  it("water up to the planned volume: 16 L of 15 °Brix and 4 L of water", () => {
    const brix = (15 * 16 * fifteen) / (16 * fifteen + 4); // 12.14
    const gravity = twelve + ((brix - 12) / 3) * (fifteen - twelve);
    const way = titled(
      corrections(missed("kettle", { volume: 16, gravity: fifteen }, { volume: 20, gravity: ten })),
      "Water up to the planned volume",
    );
    expect(way?.what).toBe("Stir in 4.00 L of water.");
    expect(way?.result.gravity).toBeCloseTo(gravity, 4);
  });

  it("boiling on: 10 to 15 °Brix, at 4 L an hour", () => {
    const away = 20 * (1 - (ten * 10) / (fifteen * 15)); // 6.93 L
    const way = titled(corrections(missed("kettle", { volume: 20, gravity: ten }, { volume: 20, gravity: fifteen })), "Boil on");
    expect(way?.what).toBe(`Boil for ${String(Math.round((away / 4) * 60))} min more, until ${away.toFixed(2)} L is gone.`);
    expect(way?.result.volume).toBeCloseTo(20 - away, 2);
  });

  it.each<[Place, string, number]>([
    ["kettle", "dry malt extract", 90],
    ["fermenter", "dry malt extract", 90],
    ["fermenter", "sugar", 100],
  ])("extract and sugar, in the %s: %s, from 10 to 12 °Brix", (place, name, yieldPercent) => {
    // Into the fermenter it goes with its own mass of water: half as strong, twice as much.
    const syrup = place === "kettle" ? 1 : 2;
    const mass = (20 * ten * water * 2) / (yieldPercent / syrup - 12) / syrup;
    const way = titled(corrections(missed(place, { volume: 20, gravity: ten }, { volume: 20, gravity: twelve })), `Add ${name}`);
    expect(way?.what).toContain(`${mass.toFixed(2)} kg of ${name}`);
    // What was in the fermenter and what came to it, by the printed table: water and sugar of 20 L at 10 °Brix, and of the addition.
    const sugar = 0.1 * 20 * 1.03813;
    expect(way?.result.volume).toBeCloseTo(
      sucroseSolutionL(9 * sugar + mass * (1 - yieldPercent / 100) + (syrup - 1) * mass, sugar + (mass * yieldPercent) / 100),
      2,
    );
  });

  it.each([
    [16, twelve, 12],
    [17, 1.047, 12 - (2 * (twelve - 1.047)) / (twelve - ten)],
  ])(
    "water and extract for what was lost, %d L of %d back to 20 L of 12 °Brix: nothing is over, nothing missing",
    (volume, gravity, brix) => {
      const way = titled(corrections(missed("fermenter", { volume, gravity }, { volume: 20, gravity: twelve })), "Water and extract");
      const [mass = NaN, added = NaN] =
        /^Take ([\d.]+) kg of dry malt extract and ([\d.]+) L of hot water\. Off the flame, stir until it is all dissolved; then boil it gently for ten minutes, cool it covered, and stir it in\.$/
          .exec(way?.what ?? "")
          ?.slice(1)
          .map(Number) ?? [];
      const wort = volume * gravity * water;
      const [sugarKg, waterKg] = [(wort * brix) / 100 + 0.9 * mass, wort * (1 - brix / 100) + 0.1 * mass + added * water];
      expect(sucroseSolutionL(waterKg, sugarKg)).toBeCloseTo(20, 1);
      expect((100 * sugarKg) / (sugarKg + waterKg)).toBeCloseTo(12, 1);
      expect(way?.result).toEqual({ volume: 20, gravity: twelve });
    },
  );

  it("water alone where the wort is as strong as its loss made it", () => {
    const ways = corrections(missed("fermenter", { volume: 19.39, gravity: 1.0519 }, { volume: 20, gravity: 1.05 }));
    expect(ways.map(({ title }) => title)).toEqual(["Water up to the planned volume", "Leave it"]);
    // 19.39 L of 12.83 °Brix (between 12 and 13 in Table 114) hold 1.0519 × 0.9982 × 19.39 × 0.1283 = 2.612 kg of sugar in 20.36 kg; with 0.61 kg of water 12.46 %, 1.0503.
    expect(ways[0]?.result.gravity).toBeCloseTo(1.0503, 3);
  });

  it("leaving it is told in words", () => {
    const left = (measured: Wort) => titled(corrections(missed("fermenter", measured, { volume: 20, gravity: 1.05 })), "Leave it")?.what;
    expect(left({ volume: 18, gravity: 1.06 })).toBe("It becomes a stronger beer, and less of it.");
    expect(left({ volume: 22, gravity: 1.045 })).toBe("It becomes a lighter beer, and more of it.");
    expect(left({ volume: 22, gravity: 1.05 })).toBe("It becomes the strength as planned, and more of it.");
  });
});

describe("what it does to the bitterness", () => {
  const [gravity, volume, alpha] = [1.05, 20, 5];
  const sheet = handSheet({
    units: "metric",
    gravity_volume: volume,
    kettle_gravity: gravity,
    boils_at: 100,
    hop_plan: [
      ["Weak", 30, 3],
      ["Strong", 20, alpha],
      ["", "", ""],
    ],
  });
  const words = (ibu: number | undefined, place: Place = "kettle", plannedIbu: number | undefined = 30) =>
    bitternessWords(sheet, missed(place, { volume, gravity }, { volume, gravity }, { plannedIbu }), {
      title: "",
      what: "",
      caution: "",
      result: { volume, gravity },
      ibu,
    });

  it("up to a tenth more or less is nothing that one tastes", () => {
    expect(words(32.9)).toBe("Bitterness about as planned (33 IBU instead of 30).");
    expect(words(27.1)).toBe("Bitterness about as planned (27 IBU instead of 30).");
    expect(words(33.1)).toBe("More bitter: 33 IBU instead of 30.");
    expect(words(26.9, "fermenter")).toBe("Less bitter: 27 IBU instead of 30.");
  });

  it("in the kettle says how much of the strongest hop makes up for it", () => {
    // Tinseth, 1997: 1.65 × 0.000125^(gravity − 1) × (1 − e^(−0.04 min)) / 4.15; mg of alpha acid in a litre.
    const utilisation = (1.65 * 0.000125 ** (gravity - 1) * (1 - Math.exp(-0.04 * 15))) / 4.15; // 0.1145
    const ofOneGram = ((1000 * alpha) / 100 / volume) * utilisation; // 0.286 IBU
    expect(words(20)).toBe(
      `Less bitter: 20 IBU instead of 30. To make up for it, boil ${(10 / ofOneGram).toFixed(0)} g more of Strong for 15 min.`,
    );
  });

  it("says nothing where no bitterness was planned or none can be told", () => {
    expect(words(undefined)).toBe("");
    expect(words(20, "kettle", 0)).toBe("");
  });
});
