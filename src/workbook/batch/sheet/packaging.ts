import { headspaceLimits } from "../../../core/pack/closed-bottle";
import type { UnitSystem } from "../../../functions/quantities";
import { linesPoints } from "../../grid/plan/sheet-builder";
import type { BatchContents } from "../contents";
import { packagingInShort, syrupVolume } from "../packaging-steps";
import { allowedBy, inParts, unlessInParts, withinItsPlate } from "./parts";
import { fieldRows, section, workings, type BatchBuilder, type BatchLines, type Field } from "./fields";
import type { UnitWords } from "../unit-words";

/**
 * A sugar or a pressure, only where the verdict lets it through: `pressure_verdict` is the one judgement, and its words say
 * what to do where there is no figure. An error in it is an error here.
 */
const allowed = (formula: string): string => allowedBy("pressure_verdict", formula);

/** What stands beside a sugar: its use once the readings agree, and before that, plainly, that nothing is weighed by it yet. */
export const onlyPlanned = (sugar: string, unit: string, use: string): string =>
  `="${unit}"&IF(${sugar}="","",IF(IF(ISERROR(verdict),FALSE,verdict="steady"),${use},", the plan's: weigh none until readings agree"))`;

/** Room for the syrup, and one bottle more than are full, for the last one: what is left over wants a cap, too. */
export const syrupAndOneMore = (units: UnitSystem, bottle: string): string =>
  `${syrupVolume[units]}+N(${bottle})/${units === "us" ? 128 : 1000}-0.0001`;

/** What closes the sum of GYLE.PACK.CHECK, and of the figure that it speaks of. */
const judgedBy = "carbonation,warmest,vessel,fg,ends_at,units,altitude,headspace";

/**
 * Beer at rest no further above the gravity expected than this has finished: a line of the hydrometer, and half a line for an
 * expectation shown to three places (our judgement). What is at rest makes no more gas.
 */
const settledAbove = "0.001500001";

/** A typed 0 is no blank: the function, which cannot tell them apart, would take it for the usual share. */
export const tooLittleAir = `IF(ISNUMBER(headspace),headspace<${headspaceLimits.atLeast},FALSE)`;

/** 8. Packaging: sugar for the bottle or pressure for the keg, and whether the glass can take it. */
export function packaging(b: BatchBuilder, contents: BatchContents, { packaging: p, kit }: BatchLines, words: UnitWords): void {
  const { units, partsOfWort } = contents;
  section(b, 8, "Packaging", "Only when the readings are steady: glass under pressure cuts");
  const hasParts = partsOfWort !== undefined;
  const whole = (formula: string, ofParts?: string): string => `=${unlessInParts(hasParts, formula, ofParts)}`;
  const bottled = (formula: string, ofParts?: string) => whole(`IF(into="bottles",${formula},"")`, ofParts);
  const first = b.row;
  fieldRows(
    b,
    [
      p.packagedOn,
      p.into,
      p.co2Volumes,
      p.warmestSinceFermentation,
      p.sugar,
      kit.bottleVolume,
      p.bottleKind,
      p.warmestStorage,
      kit.bottlingLoss,
      p.conditioningTemperature,
      p.kegTemperature,
    ],
    [
      [
        "Beer in the fermenter",
        { content: "=IF(N(volume_reached)>0,volume_reached,volume)", format: "two", unit: words.volume, name: "beer_volume" },
      ],
      [
        "CO2 already in the beer",
        {
          content: '=IF(warmest_beer="","",GYLE.PACK.RESIDUAL(warmest_beer,units,altitude))',
          format: "two",
          unit: "volumes",
          name: "residual_gas",
        },
      ],
      [
        "Sugar for the whole batch",
        {
          content: bottled(
            `IF(OR(warmest_beer="",N(bottling_loss)<0),"",${allowed("GYLE.PACK.PRIMING(beer_volume-N(bottling_loss),carbonation,warmest_beer,priming_sugar,units,bottle_kind,altitude)")})`,
          ),
          format: units === "us" ? "two" : "one",
          unit: onlyPlanned(
            "sugar_mass",
            words.smallMass,
            `" for "&FIXED(beer_volume-N(bottling_loss),2,TRUE)&" ${words.volume.replace("US ", "")}; boil in ${units === "us" ? "two cups" : "half a litre"} of water"`,
          ),
          name: "sugar_mass",
          style: "keyResult",
        },
      ],
      [
        "Pressure at the warmest place",
        {
          content: bottled(allowed(`GYLE.PACK.INSIDE(${judgedBy})`)),
          format: units === "us" ? "one" : "two",
          unit: words.pressure,
          name: "bottle_pressure",
        },
      ],
      [
        "Bottles and caps to prepare",
        {
          content: bottled(
            `INDEX(GYLE.PACK.BOTTLES(beer_volume,bottle_volume,bottling_loss,units,${syrupAndOneMore(units, "bottle_volume")}),1,1)`,
            'IF(COUNT(parts_ready)=0,"",parts_caps)',
          ),
          format: "whole",
          name: "bottles_ready",
        },
      ],
      p.bottlesFilled,
      [
        "First taste",
        {
          content: hasParts
            ? `=IF(IF(${inParts},COUNTIF(parts_into,"bottles")>0,into="bottles"),GYLE.PACK.READY(packaged_on,conditioning_temperature,units),"")`
            : bottled("GYLE.PACK.READY(packaged_on,conditioning_temperature,units)"),
          format: "date",
          unit: "keep the first one apart, in a box",
          name: "first_taste",
        },
      ],
      [
        "Keg pressure",
        {
          content: whole(`IF(into="keg",${allowed("GYLE.PACK.PRESSURE(carbonation,keg_temperature,units,altitude)")},"")`),
          format: units === "us" ? "one" : "two",
          unit: `${words.pressure}; air the room: CO2 suffocates`,
          name: "keg_pressure",
        },
      ],
    ],
    (row) => {
      b.put("A", "Will it hold?", { style: "label" }, row);
      b.put(
        "B",
        whole(
          `IF(OR(AND(into="bottles",NOT(${tooLittleAir})),into="keg"),${withinItsPlate(contents, {
            isKeg: 'into="keg"',
            carbonation: "carbonation",
            temperature: "keg_temperature",
            verdict: `GYLE.PACK.CHECK(${judgedBy})`,
          })},"")`,
        ),
        { style: "message", format: "text", name: "pressure_verdict", mergeTo: "I" },
        row,
      );
      b.height(linesPoints(4), row);
    },
  );
  workings(b, [...besideIt(kit, words, hasParts), p.otherCost], first);
  packagingInShort(units).forEach((line, index) =>
    b.put("E", line, { style: "caution", format: "text", mergeTo: "I" }, first + besideTheKit + index),
  );
}

/** What the judgement goes by beside the printed fields, and what the priming adds to the beer in the bottle. */
const besideIt = (kit: BatchLines["kit"], words: UnitWords, hasParts: boolean): readonly [string, Field][] => [
  kit.headspacePercent,
  ["Judged as", { content: '=IF(into="keg","keg",bottle_kind&"")', format: "text", name: "vessel", style: "resultText" }],
  [
    "at its warmest",
    {
      content: '=IF(into="keg",IF(keg_temperature="","",keg_temperature),IF(warmest_storage="","",warmest_storage))',
      format: "whole",
      unit: words.temperature,
      name: "warmest",
    },
  ],
  [
    "Gravity at which it ends",
    {
      content: `=IF(ISERROR(verdict),fg_expected,IF(AND(verdict="steady",N(fg)>N(fg_expected),N(fg)-N(fg_expected)<=${settledAbove}),fg,fg_expected))`,
      format: "gravity",
      unit: "as expected, or as it stands once it is steady near that",
      name: "ends_at",
    },
  ],
  [
    "Gas that the priming makes",
    {
      content: `=${unlessInParts(hasParts, 'IF(AND(into="bottles",ISNUMBER(residual_gas)),MAX(0,N(carbonation)-residual_gas),0)', "0")}`,
      format: "two",
      unit: "volumes; alcohol comes with it",
      name: "primed_gas",
    },
  ],
  [
    "Alcohol in the bottle, with its priming",
    {
      content: '=IF(OR(fg="",primed_gas=0),"",GYLE.BEER.ABV(og,fg,"extract",primed_gas))',
      format: "one",
      unit: "% by volume",
      name: "abv_bottle",
    },
  ],
];

/** Lines on the right that the results leave free. */
const besideTheKit = 8;
