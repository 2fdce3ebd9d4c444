/**
 * The vocabulary of quantities: for each, the unit in the two unit systems and the way to and from the unit
 * that the core computes in. Conversion factors are exact by definition (NIST SP 811, appendix B), except that
 * 1 US gal = 3.785411784 L and 1 lb = 0.45359237 kg imply the smaller ones.
 */
export type UnitSystem = "metric" | "us";

export interface Quantity {
  /** Unit as shown to a brewer, in each system; empty for a pure number. */
  readonly unit: Readonly<Record<UnitSystem, string>>;
  /** Unit of the core, as it ends the names of core parameters. */
  readonly coreUnit: string;
  readonly toCore: (value: number, units: UnitSystem) => number;
  readonly fromCore: (value: number, units: UnitSystem) => number;
  /** Digits after the point that make sense when a limit is quoted in a message. */
  readonly digits: number;
}

const identity = (value: number): number => value;

function same(unit: string, digits: number, coreUnit = unit): Quantity {
  return { unit: { metric: unit, us: unit }, coreUnit, toCore: identity, fromCore: identity, digits };
}

function scaled(metric: string, us: string, coreUnit: string, metricInCore: number, usInCore: number, digits: number): Quantity {
  const factor = { metric: metricInCore, us: usInCore };
  return {
    unit: { metric, us },
    coreUnit,
    toCore: (value, units) => value * factor[units],
    fromCore: (value, units) => value / factor[units],
    digits,
  };
}

const litresPerGallon = 3.785411784;
const kilogramsPerPound = 0.45359237;
const barPerPsi = 0.0689475729316836;

export const quantities = {
  gravity: same("SG", 3),
  plato: same("°P", 1),
  percent: same("%", 1),
  fraction: same("", 3),
  count: same("", 0),
  number: same("", 2),
  volume: scaled("L", "US gal", "L", 1, litresPerGallon, 2),
  /** Bottles and servings. */
  bottleVolume: scaled("mL", "US fl oz", "mL", 1, (litresPerGallon * 1000) / 128, 0),
  /** Sanitiser concentrate, acids. */
  doseVolume: scaled("mL", "US fl oz", "mL", 1, (litresPerGallon * 1000) / 128, 2),
  /** Concentrate per volume of ready solution. */
  dosePerVolume: scaled("mL/L", "US fl oz/US gal", "mL/L", 1, 1000 / 128, 3),
  /** Malt, extract, grain. */
  mass: scaled("kg", "lb", "kg", 1, kilogramsPerPound, 3),
  /** Hops, priming sugar. */
  smallMass: scaled("g", "oz", "g", 1, (kilogramsPerPound * 1000) / 16, 2),
  /** Dry hops in beer. */
  hopRate: scaled("g/L", "oz/US gal", "g/L", 1, (kilogramsPerPound * 1000) / 16 / litresPerGallon, 2),
  temperature: {
    unit: { metric: "°C", us: "°F" },
    coreUnit: "°C",
    toCore: (value, units) => (units === "us" ? (value - 32) / 1.8 : value),
    fromCore: (value, units) => (units === "us" ? value * 1.8 + 32 : value),
    digits: 1,
  },
  /** Gauge pressure. */
  pressure: scaled("bar", "psi", "bar", 1, barPerPsi, 2),
  altitude: scaled("m", "ft", "m", 1, 0.3048, 0),
  flow: scaled("L/min", "US gal/min", "L/min", 1, litresPerGallon, 2),
  /** Boil-off: volume per hour. */
  volumePerHour: scaled("L/h", "US gal/h", "L/h", 1, litresPerGallon, 2),
  /** Liquid that the grain keeps. */
  absorption: scaled("L/kg", "US gal/lb", "L/kg", 1, litresPerGallon / kilogramsPerPound, 2),
  /** Extract yield in points: litre-degrees per kilogram, or points per pound per US gallon. */
  points: scaled("L°/kg", "points·gal/lb", "L°/kg", 1, litresPerGallon / kilogramsPerPound, 1),
  power: same("kW", 2),
  coil: same("kW/K", 2),
  minutes: same("min", 0),
  days: same("days", 1),
  /** Excel's day number, with the time of day as its fraction. */
  date: same("date", 0),
  bitterness: same("IBU", 1),
  colourSrm: same("SRM", 1),
  colourEbc: same("EBC", 1),
  lovibond: same("°L", 1),
  co2: same("volumes CO2", 2),
  /** Thousand million yeast cells. */
  cells: same("billion cells", 0),
  /** Million cells per millilitre and degree Plato. */
  pitchRate: same("million cells/mL/°P", 2),
  energy: scaled("kJ", "kcal", "kJ", 1, 4.184, 0),
  lengthCm: same("cm", 1),
  /** What is dissolved in water. */
  concentration: same("mg/L", 1),
  /** Doses too small for a kitchen scale's ounces, or a jug's fluid ounces. */
  milligrams: same("mg", 0),
  grams: same("g", 2),
  millilitres: same("mL", 2),
  /** Hose. */
  length: scaled("m", "ft", "m", 1, 0.3048, 2),
  innerDiameter: scaled("mm", "in", "mm", 1, 25.4, 3),
} satisfies Record<string, Quantity>;

export type QuantityName = keyof typeof quantities;

export function quantity(name: QuantityName): Quantity {
  return quantities[name];
}

/** The calendar day of Excel's day number, as "2026-11-28". */
export const isoDay = (dayNumber: number): string =>
  new Date(Date.UTC(1899, 11, 30) + Math.floor(dayNumber) * 86_400_000).toISOString().slice(0, 10);

/** "3.5 US gal", "20 °C", "1.050": a core value in a brewer's unit, for messages and help. */
export function showQuantity(name: QuantityName, coreValue: number, units: UnitSystem): string {
  if (name === "date") return isoDay(coreValue);
  const { unit, fromCore, digits } = quantity(name);
  const value = fromCore(coreValue, units);
  // A limit of thousands loses its fraction towards nought, so that what is quoted is still allowed.
  const rounded = Math.abs(value) >= 1000 ? Math.trunc(value) : Number(value.toFixed(digits + 1));
  const text = name === "gravity" ? rounded.toFixed(3) : String(rounded);
  const label = name === "gravity" ? "" : unit[units];
  return label === "" ? text : `${text} ${label}`;
}

/** "L or US gal", "°P", "": both units at once, for the text of an argument. */
export function bothUnits(name: QuantityName): string {
  const { metric, us } = quantity(name).unit;
  return metric === us ? metric : `${metric} or ${us}`;
}
