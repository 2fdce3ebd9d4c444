import { maltHeatAgainstWater } from "../../../core/water/mash";
import { waterKgPerL20C } from "../../../core/wort/density";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { restNames } from "../fields/blocks/mash";
import { mashRoomFormula } from "./room";

/*
 * The heat balances of GYLE.WATER.STEP and GYLE.MASH.BOILED as native formulas over the sheet's names: the clock speaks of what they give, and
 * behind calls its chain would grow too long. A test holds them to the functions.
 */

/** What holds the mash: a tun of its own, else the kettle. */
export const mashVessel = "IF(N(tun_size)>0,tun_size,kettle_size)";

/** Water in the mash once it has reached the rest; the last one is the fullest. */
const waterAt = { second: "second_water", third: "third_water", fourth: "mash_full" } as const;

/** A rest beyond the first: its names, and those of what was before it. */
export const furtherRests = restNames.map((name, index) => {
  const before = restNames[index - 1];
  return {
    name,
    from: name === "second" ? ("soak_temperature" as const) : (`${name}_from` as const),
    waterBefore: before === undefined ? ("mash_water" as const) : waterAt[before],
    water: waterAt[name],
  };
});
export type FurtherRest = (typeof furtherRests)[number];

const isWarmer = ({ name, from }: FurtherRest): string => `AND(N(${name}_rest)>N(${from}),N(${name}_rest)<boils_at)`;
const noMash = ({ name }: FurtherRest): string => `OR(N(${name}_rest)=0,N(mash_water)=0)`;

/** Boiling water that lifts the mash, cold volume; blank where something else lifts it. */
export function infusion(rest: FurtherRest, units: UnitSystem): string {
  const { name, from, waterBefore } = rest;
  const heat = Number(
    quantity("absorption")
      .fromCore(maltHeatAgainstWater / waterKgPerL20C, units)
      .toFixed(6),
  );
  return (
    `=IF(${noMash(rest)},"",IF(AND(${name}_by="boiling water",${isWarmer(rest)}),` +
    `(${heat}*grain_mass+${waterBefore})*(${name}_rest-${from})/(boils_at-${name}_rest),""))`
  );
}

/** What is poured in, or drawn and boiled: boiling water only where the vessel takes it. */
export function amount(rest: FurtherRest, units: UnitSystem): string {
  const { name, from, waterBefore, water } = rest;
  return (
    `=IF(ISNUMBER(${name}_adds),IF(AND(N(${mashVessel})>0,${mashRoomFormula(units, water)}>${mashVessel}),"",${name}_adds),` +
    `IF(${noMash(rest)},"",IF(AND(${name}_by="decoction",${isWarmer(rest)}),` +
    `(${mashRoomFormula(units, waterBefore)})*(${name}_rest-${from})/(boils_at-${from}),"")))`
  );
}
