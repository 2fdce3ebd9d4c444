import { specificGravity, sucroseKgPerL, sucroseSolutionKg, sucroseSolutionL } from "./sucrose-table";

/**
 * A brewer who does what the sheet says, without a slip, on a kit whose true figures are the ones on the sheet. Nothing
 * here is taken from the code: kilograms of water and of sugar go from vessel to vessel, and volumes follow from a printed
 * table of sucrose solutions. Litres at 20 °C, kilograms, minutes.
 */
export interface WhatTheSheetSays {
  readonly method: "extract" | "all-grain";
  /** Water to collect; in a mash the part to mash with and the part to rinse with stand beside it. */
  readonly collectL: number;
  readonly mashWaterL: number;
  readonly spargeWaterL: number;
  readonly topUpL: number;
  readonly boilMinutes: number;
  readonly bill: readonly {
    readonly massKg: number;
    readonly yieldPercent: number;
    readonly handling: "mash" | "steep" | "extract" | "sugar";
  }[];
}

/** What the kit does, whatever anybody has calculated. */
export interface TrueKit {
  readonly boilOffLPerHour: number;
  readonly kettleLossL: number;
  /** Water in less wort out, for each kilogram of grain. */
  readonly absorptionLPerKg: number;
  readonly deadSpaceL: number;
  /** Of the grain's extract, what reaches the kettle. */
  readonly grainEfficiencyPercent: number;
}

export interface WhatHappened {
  readonly beforeBoilL: number;
  readonly gravityBeforeBoil: number;
  /** As a dip stick shows it in the boiling wort at sea level. */
  readonly afterBoilHotL: number;
  readonly afterChillingL: number;
  /** What is in the kettle from flame-out on: neither a stand nor the chilling takes any of it away. */
  readonly afterBoil: Wort;
  readonly fermenterL: number;
  readonly gravity: number;
  /** The most that ever stood in each vessel, hot and with the grain in it. */
  readonly fullestKettleL: number;
  readonly fullestTunL: number;
}

/** Water, kg/L, at 20 °C, at 72 °C, at 85 °C and boiling at sea level (any steam table, for example IAPWS: 998.2, 976.6, 968.6, 958.4). */
const [cold, mashing, striking, boiling] = [0.99823, 0.9766, 0.9686, 0.9584] as const;
/** Solid of dry grain, kg/L: the lightest of the three grains in C. S. Chang, Cereal Chem. 65, 1988, p. 13, measured with a gas pycnometer. */
const grainKgPerL = 1.45;

export interface Wort {
  readonly waterKg: number;
  readonly sugarKg: number;
}

const litres = ({ waterKg, sugarKg }: Wort): number => sucroseSolutionL(waterKg, sugarKg);
/** So many litres of a wort with all the sugar that there is in it. */
const wortOf = (volumeL: number, sugarKg: number): Wort => ({ waterKg: sucroseSolutionKg(volumeL, sugarKg) - sugarKg, sugarKg });
const plusWater = ({ waterKg, sugarKg }: Wort, waterL: number): Wort => ({ waterKg: waterKg + waterL * cold, sugarKg });

export function follow(sheet: WhatTheSheetSays, kit: TrueKit): WhatHappened {
  const grain = sheet.bill.filter(({ handling }) => handling === "mash" || handling === "steep");
  const grainKg = grain.reduce((sum, { massKg }) => sum + massKg, 0);
  const wonKg =
    (grain.reduce((sum, { massKg, yieldPercent }) => sum + massKg * yieldPercent, 0) / 100) * (kit.grainEfficiencyPercent / 100);
  const isMash = sheet.method === "all-grain" && grainKg > 0;

  // Water in, wort out: what the grain keeps and what stays below the tap is missing.
  const waterL = isMash ? sheet.mashWaterL + sheet.spargeWaterL : sheet.collectL;
  const offTheGrain = wortOf(waterL - grainKg * kit.absorptionLPerKg - (isMash ? kit.deadSpaceL : 0), wonKg);
  const soakL = (waterIn: number): number => (waterIn * cold) / mashing + grainKg / grainKgPerL;

  // Extract and sugar are stirred in; extract brings the water that it is not extract of.
  const beforeBoil = sheet.bill
    .filter(({ handling }) => handling === "extract" || handling === "sugar")
    .reduce(
      (wort: Wort, { massKg, yieldPercent }) => ({
        waterKg: wort.waterKg + massKg * (1 - yieldPercent / 100),
        sugarKg: wort.sugarKg + (massKg * yieldPercent) / 100,
      }),
      offTheGrain,
    );

  // Only water boils away.
  const afterBoil = plusWater(beforeBoil, (-kit.boilOffLPerHour * sheet.boilMinutes) / 60);
  const afterChillingL = litres(afterBoil);

  // Wort that stays in the kettle is as strong as the rest; then the top-up water.
  const runOff = 1 - kit.kettleLossL / afterChillingL;
  const fermenter = plusWater({ waterKg: afterBoil.waterKg * runOff, sugarKg: afterBoil.sugarKg * runOff }, sheet.topUpL);

  return {
    beforeBoilL: litres(beforeBoil),
    gravityBeforeBoil: specificGravity(beforeBoil.sugarKg / (beforeBoil.waterKg + beforeBoil.sugarKg)),
    afterBoilHotL: (afterChillingL * cold) / boiling,
    afterChillingL,
    afterBoil,
    fermenterL: litres(fermenter),
    gravity: specificGravity(fermenter.sugarKg / (fermenter.waterKg + fermenter.sugarKg)),
    fullestKettleL: Math.max(
      (litres(beforeBoil) * cold) / boiling,
      isMash ? (sheet.mashWaterL * cold) / striking : grainKg > 0 ? soakL(sheet.collectL) : 0,
    ),
    // Rinsed in portions: never fuller than the mash was.
    fullestTunL: isMash ? soakL(sheet.mashWaterL) : 0,
  };
}

/** Litres of water that so much liquid or dry extract or sugar stands for when it is stirred into a wort of this gravity's strength. */
export const broughtL = (massKg: number, yieldPercent: number, massFraction: number): number => {
  const sugarKg = (massKg * yieldPercent) / 100;
  const wholeKg = sugarKg / massFraction;
  return wholeKg / sucroseKgPerL(massFraction) - (wholeKg - massKg) / cold;
};
