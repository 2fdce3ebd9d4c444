import type { BatchContents } from "../contents";
import { restNames } from "../fields/blocks/mash";
import { fieldRows, section, workings, type BatchBuilder, type BatchLines, type Field } from "./fields";
import type { UnitWords } from "../unit-words";

/** 2. Water and kit: what to collect for what must end up in the fermenter, on this kit, at this altitude. Returns the first cell of the budget. */
export function water(b: BatchBuilder, contents: BatchContents, lines: BatchLines, words: UnitWords): string {
  const { method } = contents;
  const { kit } = lines;
  section(b, 2, "Water and kit", "How much to collect, so that enough is left");
  const first = b.row;
  const budgetRow = (index: number) => `=IF(R${first + index}="","",R${first + index})`;
  // Grain to steep hangs in a bag in the kettle, so that only a mash leaves something behind in a tun.
  const deadSpace = method === "extract" ? "" : ",IF(grain_mass>0,N(tun_dead_space),0)";
  const budget = b.put(
    "Q",
    `=GYLE.WATER.BUDGET(kettle_part,boil_minutes,boil_off,kettle_loss,grain_mass,absorption,,units,malt,grain_efficiency${deadSpace})`,
    { style: "workings", spillsTo: `R${first + 4}` },
  );
  fieldRows(
    b,
    [kit.boilMinutes, kit.boilOff, kit.kettleLoss, kit.kettleSize, lines.topUp, kit.altitude, kit.sanitiserVolume, lines.salts],
    [
      [
        "Collect",
        {
          content: budgetRow(0),
          format: "two",
          unit: words.volume,
          name: "water_collect",
          style: "keyResult",
          note: "Water, cold. Malt extract and sugar bring volume of their own (about 0.7 and 0.6 L for each kg, 0.08 and 0.07 US gal for each lb), so that much less water is wanted. What boils away, stays in the grain, in the mash tun and in the kettle is added.",
        },
      ],
      [
        "Before the boil",
        {
          content: budgetRow(1),
          format: "two",
          unit: words.volume,
          name: "water_before_boil",
          note: "Wort in the kettle with everything dissolved in it, as if it were cold: a dip stick in boiling wort shows 4 % more.",
        },
      ],
      ["After the boil, hot", { content: budgetRow(2), format: "two", unit: words.volume, name: "water_after_boil" }],
      ["After chilling", { content: budgetRow(3), format: "two", unit: words.volume, name: "water_chilled" }],
      [
        "From the kettle to the fermenter",
        { content: '=IF(N(volume)>N(top_up),volume-N(top_up),"")', format: "two", unit: words.volume, name: "kettle_part" },
      ],
      ["Water boils at", { content: "=GYLE.WATER.BOILS(altitude,units)", format: "one", unit: words.temperature, name: "boils_at" }],
      [
        "Sanitiser concentrate",
        {
          content:
            '=IF(AND(ISNUMBER(sanitiser_volume),ISNUMBER(sanitiser_per_volume)),GYLE.CLEAN.DOSE(sanitiser_volume,sanitiser_per_volume,units),"")',
          format: words.units === "us" ? "two" : "whole",
          unit: `=IF(sanitiser_dose="","${words.doseVolume}; type its label's dose (column L)","${words.doseVolume}, by its label")`,
          name: "sanitiser_dose",
          note: "From flame-out on, whatever touches the wort must be clean and then sanitised. The maker's label says how much and how long.",
        },
      ],
    ],
  );
  heatWorkings(b, contents, kit, words, first);
  return budget;
}

/** What is heated to the boil is as warm as the last rest: they only rise. */
const fromTheMash = (hasRests: boolean): string =>
  hasRests
    ? `IF(N(soak_temperature)=0,soak_temperature,MAX(soak_temperature,${restNames.map((name) => `${name}_rest`).join(",")}))`
    : "soak_temperature";

/** How long heating and chilling take, and the volume that shares the extract. */
function heatWorkings(
  b: BatchBuilder,
  { method, mashRunOff }: BatchContents,
  kit: BatchLines["kit"],
  words: UnitWords,
  first: number,
): void {
  const hasRests = mashRunOff !== undefined;
  const warm = (volume: string, to: string) =>
    `=IF(${volume}="","",GYLE.HEAT.WARM(${volume},tap_temperature,${to},power,heat_efficiency,units))`;
  const lines: readonly [string, Field][] = [
    kit.powerKw,
    kit.heatEfficiencyPercent,
    kit.tapTemperature,
    kit.tapFlow,
    kit.coilKwPerK,
    [
      method === "extract" ? "Warming the water to steep takes" : "Heating the mash water takes",
      {
        content: method === "extract" ? warm("water_collect", "soak_temperature") : warm("mash_water", "strike_temperature"),
        format: "whole",
        unit: "min",
        name: "warm_minutes",
      },
    ],
    [
      "Bringing it to the boil takes",
      {
        content:
          '=IF(water_before_boil="","",GYLE.HEAT.WARM(water_before_boil,' +
          fromTheMash(hasRests) +
          ",boils_at,power,heat_efficiency,units))",
        format: "whole",
        unit: "min",
        name: "boil_up_minutes",
      },
    ],
    [
      "Chilling takes",
      {
        content: '=IF(water_chilled="","",GYLE.HEAT.CHILL(water_chilled,boils_at,pitch_temperature,tap_temperature,tap_flow,coil,units))',
        format: "whole",
        unit: "min",
        name: "chill_minutes",
      },
    ],
    [
      "Volume that shares the extract",
      {
        content: '=IF(kettle_part="","",volume*(kettle_part+N(kettle_loss))/kettle_part)',
        format: "two",
        unit: words.volume,
        name: "gravity_volume",
        note: "Wort that stays in the kettle keeps its share of sugar and bitterness: both are spread over this volume.",
      },
    ],
  ];
  workings(b, lines, first);
}
