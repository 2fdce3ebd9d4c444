import { PNG } from "pngjs";

/**
 * Our icon, drawn from numbers: a sheet with a header row and a first column, and across its cells the curve that
 * every batch makes: gravity lying still, falling, lying still again. Placed in a square of side 1, y downwards.
 */
export const iconSizes = [16, 20, 24, 32, 40, 48, 64, 80] as const;

type Colour = readonly [red: number, green: number, blue: number, opacity: number];
const nothing: Colour = [0, 0, 0, 0];
const paper: Colour = [255, 253, 247, 1];
const ink: Colour = [43, 54, 58, 1];
const header: Colour = [205, 214, 211, 1];
const curveColour: Colour = [15, 98, 106, 1];

/** Height of the curve: a falling S between two levels, inside the cells. */
const curve = (x: number): number => 0.42 + 0.34 / (1 + Math.exp(-(x - 0.6) * 15));

/** The icon as a PNG file. Each pixel is the mean of many samples, so that slants come out smooth. */
export function drawIcon(size: number): Buffer {
  const sheet = layout(size);
  const png = new PNG({ width: size, height: size });
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++)
      png.data.set(pixel(column / size, row / size, 1 / size, sheet), 4 * (row * size + column));
  }
  return PNG.sync.write(png);
}

type Sheet = ReturnType<typeof layout>;

/** Straight edges fall on whole pixels, or they would blur at the small sizes. */
function layout(size: number) {
  const snap = (share: number): number => Math.round(share * size) / size;
  return {
    left: snap(0.06),
    top: snap(0.1),
    right: snap(0.94),
    bottom: snap(0.9),
    header: snap(0.3),
    columns: [snap(0.28), snap(0.61)],
    rows: [snap(0.6)],
    // One pixel at the small sizes, more where there is room.
    line: Math.max(1, Math.round(size / 24)) / size,
    // Lines between the cells only where they do not crowd the curve.
    hairline: size < 32 ? 0 : 1 / size,
  };
}

const samplesAcross = 8;

function pixel(left: number, top: number, side: number, sheet: Sheet): number[] {
  const sum: [number, number, number, number] = [0, 0, 0, 0];
  for (let i = 0; i < samplesAcross; i++) {
    for (let j = 0; j < samplesAcross; j++) {
      const [red, green, blue, opacity] = colourAt(
        left + ((i + 0.5) / samplesAcross) * side,
        top + ((j + 0.5) / samplesAcross) * side,
        sheet,
      );
      sum[0] += red * opacity;
      sum[1] += green * opacity;
      sum[2] += blue * opacity;
      sum[3] += opacity;
    }
  }
  const weight = sum[3];
  if (weight === 0) return [0, 0, 0, 0];
  return [
    Math.round(sum[0] / weight),
    Math.round(sum[1] / weight),
    Math.round(sum[2] / weight),
    Math.round((255 * weight) / samplesAcross ** 2),
  ];
}

function colourAt(x: number, y: number, sheet: Sheet): Colour {
  if (x < sheet.left || x > sheet.right || y < sheet.top || y > sheet.bottom) return nothing;
  if (Math.min(x - sheet.left, sheet.right - x, y - sheet.top, sheet.bottom - y) < sheet.line) return ink;
  const firstColumn = sheet.columns[0] ?? 0;
  if (y < sheet.header || x < firstColumn) return header;
  if (onCurve(x, y, sheet, firstColumn)) return curveColour;
  const between = [...sheet.columns.map((place) => x - place), ...sheet.rows.map((place) => y - place)];
  return between.some((distance) => distance >= 0 && distance < sheet.hairline) ? header : paper;
}

/** Distance to the curve, measured across it: the vertical distance lessened by the slope. */
function onCurve(x: number, y: number, { right, line }: Sheet, firstColumn: number): boolean {
  const slope = (curve(x + 1e-4) - curve(x - 1e-4)) / 2e-4;
  const inside = x > firstColumn + line && x < right - 2 * line;
  return inside && Math.abs(y - curve(x)) / Math.hypot(1, slope) < 1.1 * line;
}
