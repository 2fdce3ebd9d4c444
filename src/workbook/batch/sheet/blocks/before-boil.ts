import { waterKgPerL20C } from "../../../../core/wort/density";
import { quantity, type UnitSystem } from "../../../../functions/quantities";
import { fieldRows, type Field } from "../fields";
import type { Block } from "./block";
import { coldVolume } from "./cold";

/** Litres that a kilogram of sugar takes up in wort of 10 to 15 °P, by the density of sucrose solutions there: 0.617. */
const dissolvedLPerKg = 0.617;
const waterLPerKg = 1 / waterKgPerL20C;

/** What extract and sugar, with the water in them, add to the wort that ran off the grain. */
function addedVolume(units: UnitSystem): string {
  const perMass = (litres: number): string => quantity("absorption").fromCore(litres, units).toFixed(5);
  return (
    '=SUMPRODUCT((malt_handling="extract")+(malt_handling="sugar"),malt_mass,' +
    `${perMass(waterLPerKg)}-${perMass(waterLPerKg - dissolvedLPerKg)}*INDEX(malt,0,2)/100)`
  );
}

/** What the kettle holds after the boil, cold: read, or what reached the fermenter with what was left behind. Top-up water hides it. */
const left = 'IF(after_cold<>"",after_cold,IF(AND(N(top_up)=0,N(volume_reached)>0),volume_reached+N(kettle_loss),""))';

/** As it will be after the boil that was planned, and what of it reaches the fermenter. */
const afterTheBoil = "before_cold-N(boil_off)*N(boil_minutes)/60";
const toFermenter = `${afterTheBoil}-N(kettle_loss)`;

/**
 * What was measured around the boil, and what it tells of grain, tun and kettle. Volumes of water and wort are added up as they are: what is
 * dissolved takes the same room at every strength of a home brewery, to within half a per cent of the wort.
 */
export const beforeBoil: Block = {
  put(b, { method, units }, { beforeBoil: lines }, words) {
    if (!lines) return;
    const mashes = method === "all-grain";
    const planned = (name: string): string => `=IF(N(${name})=0,"${words.volume}","${words.volume}, planned "&FIXED(${name},2,TRUE))`;
    const results: readonly (readonly [string, Field])[] = [
      [
        "Before the boil, cold",
        {
          content: `=IF(N(before_volume)<=0,"",${coldVolume("before_volume", "before_temperature", units)})`,
          format: "two",
          unit: planned("water_before_boil"),
          name: "before_cold",
          style: "keyResult",
        },
      ],
      [
        "Gravity before the boil",
        {
          content: "=GYLE.WORT.HYDROMETER(before_reading,before_sample,calibrated_at,before_scale,units)",
          format: "gravity",
          unit: '=IF(N(before_planned)=0,"","planned "&FIXED(before_planned,3,TRUE))',
          name: "before_gravity",
          style: "keyResult",
        },
      ],
      [
        "Original gravity to expect",
        {
          content:
            `=IF(OR(before_gravity="",before_cold=""),"",IF(${toFermenter}<=0,"",` +
            `1+(before_gravity-1)*before_cold/(${afterTheBoil})*(${toFermenter})/(${toFermenter}+N(top_up))))`,
          format: "gravity",
          unit: "if it boils as planned",
          name: "og_forecast",
        },
      ],
      ...(mashes
        ? [
            [
              "Mash efficiency",
              {
                content:
                  '=IF(OR(before_gravity="",before_cold="",grain_mass=0),"",GYLE.WORT.EFFICIENCY(malt,before_cold,before_gravity,units))',
                format: "whole",
                unit: "% of its yield, in the kettle",
                name: "before_efficiency",
              },
            ] as const,
          ]
        : []),
      [
        mashes ? "Kept by grain and tun" : "Kept by the grain",
        {
          content:
            '=IF(OR(before_cold="",grain_mass=0,NOT(ISNUMBER(IF(N(collected)>0,collected,water_collect)))),"",' +
            "IF(N(collected)>0,collected,water_collect)+added_volume-before_cold)",
          format: "two",
          unit: `="${words.volume}"&IF(N(collected)>0,"",", if the water was as planned")`,
          name: "mash_kept",
        },
      ],
      [
        "Kept by each unit of grain",
        {
          content: `=IF(mash_kept="","",(mash_kept-${mashes ? "IF(ISNUMBER(tun_left),tun_left,N(tun_dead_space))" : "0"})/grain_mass)`,
          format: "two",
          unit: quantity("absorption").unit[units],
          name: "absorption_seen",
        },
      ],
      [
        "Boil-off rate",
        {
          content: `=IF(OR(before_cold="",N(boil_minutes)<=0),"",IF(${left}="","",(before_cold-${left})/boil_minutes*60))`,
          format: "two",
          unit: words.volumePerHour,
          name: "boil_off_seen",
        },
      ],
      [
        "Kettle loss (trub)",
        {
          content: '=IF(OR(after_cold="",N(volume_reached)<=0,N(top_up)>0),"",after_cold-volume_reached)',
          format: "two",
          unit: words.volume,
          name: "kettle_left",
        },
      ],
    ];
    fieldRows(
      b,
      [
        lines.volume,
        lines.temperature,
        lines.reading,
        lines.scale,
        lines.sampleTemperature,
        lines.afterVolume,
        lines.afterTemperature,
        ...(mashes ? [lines.tunLeft] : []),
      ],
      results.map(([label, field]) => [label, field] as [string, Field]),
    );
  },
  beside({ units }, words) {
    return [
      [
        "Gravity planned before the boil",
        {
          content: '=IF(N(water_before_boil)=0,"",GYLE.WORT.GRAVITY(malt,water_before_boil,grain_efficiency,units))',
          format: "gravity",
          name: "before_planned",
        },
      ],
      ["Extract and sugar add", { content: addedVolume(units), format: "two", unit: words.volume, name: "added_volume" }],
      [
        "After the boil, cold",
        {
          content: `=IF(N(after_volume)<=0,"",${coldVolume("after_volume", "after_temperature", units)})`,
          format: "two",
          unit: words.volume,
          name: "after_cold",
        },
      ],
    ];
  },
};
