import { quantity, type QuantityName, type UnitSystem } from "../../functions/quantities";

/** The units that a batch sheet shows, for one unit system. */
export interface UnitWords {
  readonly units: UnitSystem;
  readonly volume: string;
  readonly mass: string;
  readonly smallMass: string;
  readonly temperature: string;
  readonly pressure: string;
  readonly bottleVolume: string;
  readonly doseVolume: string;
  readonly dosePerVolume: string;
  readonly volumePerHour: string;
  readonly altitude: string;
  readonly flow: string;
  readonly energy: string;
  readonly colour: string;
  readonly maltColour: string;
}

export function unitWords(units: UnitSystem): UnitWords {
  const word = (name: QuantityName) => quantity(name).unit[units];
  return {
    units,
    volume: word("volume"),
    mass: word("mass"),
    smallMass: word("smallMass"),
    temperature: word("temperature"),
    pressure: word("pressure"),
    bottleVolume: word("bottleVolume"),
    doseVolume: word("doseVolume"),
    dosePerVolume: word("dosePerVolume"),
    volumePerHour: word("volumePerHour"),
    altitude: word("altitude"),
    flow: word("flow"),
    energy: word("energy"),
    colour: units === "us" ? "SRM" : "EBC",
    maltColour: units === "us" ? "°L" : "EBC",
  };
}
