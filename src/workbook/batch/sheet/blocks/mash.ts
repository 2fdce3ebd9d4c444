import { waterKgPerL20C } from "../../../../core/wort/density";
import { quantity, type UnitSystem } from "../../../../functions/quantities";
import { fieldRows, tableInput, type Field } from "../fields";
import { amount, furtherRests, infusion } from "../mash-rests";
import { cautionsBelow, type Block } from "./block";
import { coldVolume } from "./cold";

const cautions = [
  "Boiling water and boiling mash spit and scald: gloves, slow pouring, stir all the time; two to lift, and never above the shoulder.",
  "Keep a tenth of the tun free. Keep some of the water, or of the boiled mash, back: add it by the thermometer.",
] as const;

const runningNames = ["first", "later"] as const;

/** Mass of a volume of water, in the units of the sheet: what a gravity is counted against. */
const waterPerVolume = (units: UnitSystem): string =>
  quantity("mass")
    .fromCore(quantity("volume").toCore(1, units) * waterKgPerL20C, units)
    .toFixed(5);

/**
 * Rests beyond the first, what lifts the mash to each, and what ran off. What was measured tells by mass alone: the sugar in a running is its mass times
 * its share by weight, and what has dissolved is in all the water of the mash until it runs off.
 */
export const mashRunOff: Block = {
  put(b, { units }, { mashRunOff: lines }, words) {
    if (!lines) return;
    const top = b.row;
    b.put("Q", "Running off, planned", { style: "hint" });
    b.put(
      "Q",
      '=IF(OR(N(mash_full)=0,N(mash_extract)=0),"",GYLE.MASH.RUNNINGS(malt,mash_full,IF(N(sparge_water)>0,sparge_water,""),absorption,N(tun_dead_space),mash_conversion,units))',
      { style: "workings", format: "general", spillsTo: `S${top + 4}` },
      top + 1,
    );
    b.name("runnings_planned", `Q${top + 1}:S${top + 4}`);
    headings(b, ["Rests after the first (section 3)", words.temperature, "min", "lifted by", "", "", "", "how much"]);
    for (const rest of furtherRests) {
      const { name } = rest;
      const { temperature, minutes, by } = lines[name];
      b.put("A", `${name.charAt(0).toUpperCase()}${name.slice(1)} rest`, { style: "label" });
      tableInput(b, "B", temperature, b.row);
      tableInput(b, "C", minutes, b.row);
      tableInput(b, "D", by, b.row, "F");
      b.put("H", amount(rest, units), { style: "keyResult", format: "two", name: `${name}_amount` });
      b.put(
        "I",
        `=IF(N(${name}_rest)=0,"",IF(${name}_amount<>"","${words.volume} "&IF(${name}_by="decoction","of mash, boiled and returned","of boiling water"),IF(${name}_by="heating","by heat, stirring all the time",IF(ISNUMBER(${name}_adds),"does not fit: see the checks",""))))`,
        { style: "unit" },
      );
      b.row += 1;
    }
    headings(b, ["Run off, measured", words.volume, words.temperature, "reading", "sample", "cold", "gravity", ""]);
    runningNames.forEach((name, index) => {
      const { volume, temperature, reading, sampleTemperature } = lines[name];
      b.put("A", index === 0 ? "First running" : "All that runs off after it", { style: "label" });
      [volume, temperature, reading, sampleTemperature].forEach((line, column) => tableInput(b, "BCDE"[column] ?? "B", line, b.row));
      b.put("F", `=IF(N(${name}_running)<=0,"",${coldVolume(`${name}_running`, `${name}_running_at`, units)})`, {
        style: "result",
        format: "two",
        name: `${name}_cold`,
      });
      b.put("G", `=GYLE.WORT.HYDROMETER(${name}_reading,${name}_sample,calibrated_at,runnings_scale,units)`, {
        style: "keyResult",
        format: "gravity",
        name: `${name}_gravity`,
      });
      const planned = `INDEX(runnings_planned,${index + 3},`;
      b.put("H", `=IF(COUNT(${planned}2))=0,"","planned "&FIXED(${planned}2),2,TRUE)&" ${words.volume} of "&FIXED(${planned}3),3,TRUE))`, {
        style: "unit",
        mergeTo: "I",
      });
      b.row += 1;
    });
    const results: [string, Field][] = [
      [
        "All that ran off, cold",
        {
          content: '=IF(OR(first_cold="",AND(N(sparge_water)>0,later_cold="")),"",first_cold+N(later_cold))',
          format: "two",
          unit: words.volume,
          name: "runnings_volume",
        },
      ],
      [
        "Its gravity, mixed",
        {
          content:
            '=IF(OR(runnings_volume="",first_gravity="",AND(N(later_cold)>0,later_gravity="")),"",1+((first_gravity-1)*first_cold+IF(N(later_cold)>0,(later_gravity-1)*later_cold,0))/runnings_volume)',
          format: "gravity",
          name: "runnings_gravity",
        },
      ],
      [
        "Mash efficiency to expect",
        {
          content: '=IF(COUNT(INDEX(runnings_planned,2,2))=0,"",INDEX(runnings_planned,2,2))',
          format: "whole",
          unit: '="%, stirred well; section 3 plans with "&grain_efficiency',
          name: "runnings_expected",
        },
      ],
      [
        "Mash efficiency reached",
        {
          content:
            '=IF(OR(runnings_volume="",first_extract="",AND(N(later_cold)>0,later_extract=""),N(mash_extract)=0),"",100*(first_extract+N(later_extract))/mash_extract)',
          format: "whole",
          unit: "% of its yield, in the kettle",
          name: "runnings_efficiency",
          style: "keyResult",
        },
      ],
      [
        "Dissolved in the mash",
        {
          content: `=IF(OR(first_gravity="",N(mash_extract)=0,N(mash_full)=0),"",100*mash_full*${waterPerVolume(units)}*first_plato/(100-first_plato)/mash_extract)`,
          format: "whole",
          unit: "%, by the first running",
          name: "conversion_seen",
        },
      ],
      [
        "Kept by each unit of grain",
        {
          content:
            '=IF(OR(runnings_volume="",grain_mass=0),"",(IF(N(collected)>0,collected,mash_full+N(sparge_water))-runnings_volume-N(tun_dead_space))/grain_mass)',
          format: "two",
          unit: quantity("absorption").unit[units],
          name: "runnings_kept",
        },
      ],
    ];
    fieldRows(b, [lines.scale, lines.conversionPercent], results);
    cautionsBelow(b, cautions);
  },
  beside({ units }, words) {
    const rests = furtherRests.flatMap((rest): [string, Field][] => {
      const { name, from, waterBefore, water } = rest;
      const before = name === "third" ? "second" : "third";
      const earlier = name === "third" ? "soak_temperature" : "third_from";
      return [
        ...(from === "soak_temperature"
          ? []
          : [
              [
                `Before the ${name} rest it stands at`,
                { content: `=IF(N(${before}_rest)>0,${before}_rest,${earlier})`, format: "whole", unit: words.temperature, name: from },
              ] as [string, Field],
            ]),
        [
          `Boiling water that lifts it to the ${name} rest`,
          { content: infusion(rest, units), format: "two", unit: words.volume, name: `${name}_adds` },
        ],
        [
          name === "fourth" ? "Water in the mash at its fullest" : `Water in the mash at the ${name} rest`,
          { content: `=IF(N(mash_water)=0,"",${waterBefore}+N(${name}_adds))`, format: "two", unit: words.volume, name: water },
        ],
      ];
    });
    const plato = (name: "first" | "later"): [string, Field] => [
      `Extract by weight in the ${name} running`,
      { content: `=IF(${name}_gravity="","",GYLE.WORT.PLATO(${name}_gravity))`, format: "one", unit: "°P", name: `${name}_plato` },
    ];
    const sugar = (name: "first" | "later"): [string, Field] => [
      `Extract in the ${name} running`,
      {
        content: `=IF(OR(${name}_cold="",${name}_gravity=""),"",${name}_cold*${waterPerVolume(units)}*${name}_gravity*${name}_plato/100)`,
        format: "two",
        unit: words.mass,
        name: `${name}_extract`,
      },
    ];
    return [
      ...rests,
      plato("first"),
      sugar("first"),
      plato("later"),
      sugar("later"),
      [
        "Extract that the mashed malt could give",
        {
          content: '=SUMPRODUCT(--(malt_handling="mash"),malt_mass,INDEX(malt,0,2))/100',
          format: "two",
          unit: words.mass,
          name: "mash_extract",
        },
      ],
    ];
  },
};

function headings(b: Parameters<Block["put"]>[0], words: readonly string[]): void {
  words.forEach((word, index) => {
    if (word !== "") b.put("ABCDEFGH"[index] ?? "A", word, { style: index === 0 || word === "lifted by" ? "heading" : "headingRight" });
  });
  b.row += 1;
}
