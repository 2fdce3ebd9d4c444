import { gramsPerVolume } from "../pack/solubility";

/** Yeast makes as many molecules of alcohol as of carbon dioxide (Gay-Lussac): 46.068 g with every 44.0095 g. */
const alcoholPerGas = 46.0684 / 44.0095;
/** Density of ethanol at 20 °C, g/L (OIML R 22). */
const ethanolGramsPerL = 789.24;

/**
 * Alcohol that priming adds to a litre of beer, g: it comes with the gas, whatever the sugar. 2.07 g for each volume.
 *
 * @param volumes carbon dioxide from priming sugar, volumes
 */
export const primedAlcoholG = (volumes: number): number => volumes * gramsPerVolume * alcoholPerGas;

/** The same, % by volume: 0.26 for each volume. */
export const primedAlcoholPercent = (volumes: number): number => (100 * primedAlcoholG(volumes)) / ethanolGramsPerL;
