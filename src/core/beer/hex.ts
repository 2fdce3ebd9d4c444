import { srmPerAbsorbance } from "../wort/colour-scales";
import { daylightAndEye } from "./cie-tables";

/**
 * Share of the absorbance at 430 nm that an average beer has at another wavelength: two exponentials fitted to the mean
 * of many beers' spectra (A. J. deLange, "Color", in Bamforth, ed., Brewing Materials and Processes, 2016; the four
 * coefficients from memory). Fruit, green or black-malt oddities lie outside it.
 */
export function relativeAbsorbance(wavelengthNm: number): number {
  const beyond = wavelengthNm - 430;
  return 0.02465 * Math.exp(-beyond / 17.591) + 0.97535 * Math.exp(-beyond / 82.122);
}

/** CIE tristimulus values X, Y, Z of daylight seen through so much beer; Y is 1 without any. */
export function tristimulus(srm: number, pathCm: number): readonly [number, number, number] {
  const absorbance430 = (srm / srmPerAbsorbance) * pathCm;
  let [sumX, sumY, sumZ, white] = [0, 0, 0, 0];
  for (const [wavelengthNm, light, x, y, z] of daylightAndEye) {
    const seen = light * 10 ** (-absorbance430 * relativeAbsorbance(wavelengthNm));
    sumX += seen * x;
    sumY += seen * y;
    sumZ += seen * z;
    white += light * y;
  }
  return [sumX / white, sumY / white, sumZ / white];
}

/**
 * The colour of beer in a glass held against daylight, as a screen shows it: "#RRGGBB" in sRGB (IEC 61966-2-1), colours
 * that a screen cannot show clipped to the nearest that it can.
 *
 * @param srm above 0
 * @param glassCm way of the light through the beer, cm
 */
export function hexOfSrm(srm: number, glassCm: number): string {
  const seen = tristimulus(srm, glassCm);
  return `#${[0, 1, 2].map((channel) => screenByte(channelOfLight(seen, channel))).join("")}`;
}

/** Red, green and blue of the screen from X, Y, Z (IEC 61966-2-1). */
const toScreen = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252],
] as const;

/** Linear light of one channel: 0 is red, 1 green, 2 blue. */
export function channelOfLight([x, y, z]: readonly [number, number, number], channel: number): number {
  const [ofX, ofY, ofZ] = toScreen[channel] ?? toScreen[0];
  return ofX * x + ofY * y + ofZ * z;
}

/** How sRGB spreads light over the numbers of a channel. */
export const screenCurve = { below: 0.0031308, steep: 12.92, factor: 1.055, power: 2.4, less: 0.055 } as const;

/** One channel of sRGB: linear light 0..1 to two hexadecimal digits. */
function screenByte(linear: number): string {
  const light = Math.min(1, Math.max(0, linear));
  const { below, steep, factor, power, less } = screenCurve;
  const encoded = light <= below ? steep * light : factor * light ** (1 / power) - less;
  return Math.round(255 * encoded)
    .toString(16)
    .toUpperCase()
    .padStart(2, "0");
}
