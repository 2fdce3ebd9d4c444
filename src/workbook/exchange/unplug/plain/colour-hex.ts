import { daylightAndEye } from "../../../../core/beer/cie-tables";
import { channelOfLight, relativeAbsorbance, screenCurve } from "../../../../core/beer/hex";
import { srmPerAbsorbance } from "../../../../core/wort/colour-scales";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm } from "./plain-form";
import type { Workings } from "./workings";

const digits = (value: number): string => String(Number(value.toPrecision(10))).replace("e", "E");
const absorbances = daylightAndEye.map(([wavelengthNm]) => relativeAbsorbance(wavelengthNm));
const white = daylightAndEye.reduce((sum, [, light, , y]) => sum + light * y, 0);

/** How much each wavelength adds to red, green and blue, without any beer. */
const channels = [0, 1, 2].map((channel) =>
  daylightAndEye.map(([, light, x, y, z]) => (channelOfLight([x, y, z], channel) * light) / white),
);

/** Rows of the workings. */
const [depth, light, byte] = [0, 1, 2];

/** How much beer the light goes through; the light of each channel, 0..1; then its byte: the sum over the spectrum of `core/beer/hex.ts`. */
const workings =
  (x: PlainArguments): Workings =>
  (at) => {
    const through = at(depth, 0);
    return [
      [`=${x.core("srm")}/${srmPerAbsorbance}*${x.core("glassCm")}`, "", ""],
      channels.map(
        (weights) =>
          `=MIN(1,MAX(0,SUMPRODUCT({${weights.map(digits).join(",")}}*10^(-${through}*{${absorbances.map(digits).join(",")}}))))`,
      ),
      channels.map((_, channel) => {
        const share = at(light, channel);
        const { below, steep, factor, power, less } = screenCurve;
        return `=ROUND(255*IF(${share}<=${below},${steep}*${share},${factor}*${share}^(1/${power})-${less}),0)`;
      }),
    ];
  };

export const hex: PlainForm = {
  workings,
  sum: (_, __, at) => {
    const digit = (number: string): string => `MID("0123456789ABCDEF",${number}+1,1)`;
    return `"#"&${channels.map((_, channel) => `${digit(`INT(${at(byte, channel)}/16)`)}&${digit(`MOD(${at(byte, channel)},16)`)}`).join("&")}`;
  },
};
