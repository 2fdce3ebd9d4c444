import type { HeaderFooterPlace, PageLayout } from "../../../excel-stand-in/excel/sheet-extras";

/** Smallest letters on paper, in points. What a sheet's own scale would make smaller stays at this, and wraps. */
export const smallestPoints = 8;

/** Upright, in points: ISO 216, JIS P 0138 for the B sizes (as Excel means them), ANSI/ASME Y14.1 and the trade's own for the American ones. */
const papers: Readonly<Record<string, readonly [width: number, height: number]>> = {
  A3: [841.89, 1190.55],
  A4: [595.28, 841.89],
  A5: [419.53, 595.28],
  B4: [728.5, 1031.81],
  B5: [515.91, 728.5],
  Letter: [612, 792],
  Legal: [612, 1008],
  Executive: [522, 756],
  Tabloid: [792, 1224],
};

/** Excel's own margins, where the sheet states none (0.7 inch at the sides, 0.75 above and below, 0.3 for header and footer). */
const usualMargins = { left: 50.4, right: 50.4, top: 54, bottom: 54, header: 21.6, footer: 21.6 };

export interface PageSetUp {
  readonly width: number;
  readonly height: number;
  readonly margins: Readonly<typeof usualMargins>;
  /** Largest scale that the sheet asks for; its width always fits the page, whatever it asks. */
  readonly scale: number;
  /** No more pages than this, as long as the letters stay readable. */
  readonly mostPages: number | undefined;
  readonly centred: boolean;
  readonly gridlines: boolean;
  readonly blackAndWhite: boolean;
  readonly headerFooter: Partial<Record<HeaderFooterPlace, string>>;
}

/** @param language of the browser: where the sheet names no paper, North America prints on Letter, the rest of the world on A4 */
export function pageSetUp(layout: PageLayout = {}, language = "en"): PageSetUp {
  const usual = /-(US|CA|MX)$/i.test(language) ? "Letter" : "A4";
  const [short, long] = papers[layout.paperSize ?? usual] ?? papers[usual]!;
  const landscape = layout.orientation === "Landscape";
  const { scale, horizontalFitToPages, verticalFitToPages } = layout.zoom ?? {};
  const fits = horizontalFitToPages !== undefined || verticalFitToPages !== undefined;
  return {
    width: landscape ? long : short,
    height: landscape ? short : long,
    margins: {
      left: layout.leftMargin ?? usualMargins.left,
      right: layout.rightMargin ?? usualMargins.right,
      top: layout.topMargin ?? usualMargins.top,
      bottom: layout.bottomMargin ?? usualMargins.bottom,
      header: layout.headerMargin ?? usualMargins.header,
      footer: layout.footerMargin ?? usualMargins.footer,
    },
    scale: fits ? 1 : (scale ?? 100) / 100,
    mostPages: verticalFitToPages ? verticalFitToPages : undefined,
    centred: layout.centerHorizontally === true,
    gridlines: layout.printGridlines === true,
    blackAndWhite: layout.blackAndWhite === true,
    headerFooter: layout.headerFooter ?? {},
  };
}

export interface PageFacts {
  readonly page: number;
  readonly pages: number;
  readonly sheet: string;
  readonly workbook: string;
  readonly now: Date;
}

/** A header's or footer's words: Excel's codes for page, pages, sheet, file, date and time are filled in, those for fonts and pictures left out. */
export function filledIn(text: string, { page, pages, sheet, workbook, now }: PageFacts): string {
  const two = (number: number): string => String(number).padStart(2, "0");
  const codes: Readonly<Record<string, string>> = {
    "&": "&",
    P: String(page),
    N: String(pages),
    A: sheet,
    F: workbook,
    D: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
    T: `${two(now.getHours())}:${two(now.getMinutes())}`,
  };
  return text.replace(/&(?:"[^"]*"|K[0-9A-F]{6}|\d+|[\s\S])/giu, (code) => codes[code.slice(1).toUpperCase()] ?? "");
}
