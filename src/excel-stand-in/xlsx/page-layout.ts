import type { Sheet, WriteSheet } from "hucre/xlsx";
import type { HeaderFooterPlace, PageLayout, SheetExtras } from "../excel/sheet-extras";
import { absoluteAddress, parseBlock, sheetPrefix } from "./addresses";
import type { ReservedName } from "./defined-names";
import { headerFooterFromFile, headerFooterToFile } from "./header-footer";

type PageSetup = NonNullable<WriteSheet["pageSetup"]>;
type Margins = NonNullable<PageSetup["margins"]>;

const POINTS_PER_INCH = 72;
const PAPERS = ["Letter", "Legal", "A3", "A4", "A5", "B4", "B5", "Executive", "Tabloid"] as const;
const MARGINS = {
  left: "leftMargin",
  right: "rightMargin",
  top: "topMargin",
  bottom: "bottomMargin",
  header: "headerMargin",
  footer: "footerMargin",
} as const satisfies Record<keyof Margins, keyof PageLayout>;

/** Excel's normal margins in inches. Every file states some; these say no more than that nobody chose any. */
const NORMAL: Required<Margins> = { left: 0.7, right: 0.7, top: 0.75, bottom: 0.75, header: 0.3, footer: 0.3 };

type PageExtras = Pick<SheetExtras, "pageLayout" | "printArea" | "printTitleRows" | "horizontalPageBreaks">;

/** @param blackAndWhite is not in the library's model, so it is read from the sheet itself */
export function pageExtrasFromFile(sheet: Sheet, blackAndWhite: boolean): PageExtras {
  const layout = layoutFromFile(sheet, blackAndWhite);
  const breaks = (sheet.rowBreaks ?? []).map((row) => row + 1);
  return {
    ...(Object.keys(layout).length > 0 ? { pageLayout: layout } : {}),
    ...(sheet.pageSetup?.printArea ? { printArea: sheet.pageSetup.printArea.replaceAll("$", "") } : {}),
    ...(sheet.pageSetup?.printTitlesRow ? { printTitleRows: sheet.pageSetup.printTitlesRow } : {}),
    ...(breaks.length > 0 ? { horizontalPageBreaks: breaks } : {}),
  };
}

function layoutFromFile(sheet: Sheet, blackAndWhite: boolean): PageLayout {
  const setup = sheet.pageSetup ?? {};
  const paper = PAPERS.find((name) => name.toLowerCase() === setup.paperSize);
  const headerFooter: Partial<Record<HeaderFooterPlace, string>> = {
    ...headerFooterFromFile(sheet.headerFooter?.oddHeader, "Header"),
    ...headerFooterFromFile(sheet.headerFooter?.oddFooter, "Footer"),
  };
  const chosen = Object.entries(NORMAL).some(([side, inches]) => (setup.margins?.[side as keyof Margins] ?? inches) !== inches);
  const margins = Object.fromEntries(
    Object.entries(chosen ? (setup.margins ?? {}) : {}).map(([side, inches]) => [
      MARGINS[side as keyof Margins],
      round(inches * POINTS_PER_INCH),
    ]),
  );
  return {
    ...(setup.orientation ? { orientation: setup.orientation === "landscape" ? "Landscape" : "Portrait" } : {}),
    ...(paper ? { paperSize: paper } : {}),
    ...zoomFromFile(setup),
    ...margins,
    ...(setup.horizontalCentered ? { centerHorizontally: true } : {}),
    ...(setup.verticalCentered ? { centerVertically: true } : {}),
    ...(setup.showGridLines ? { printGridlines: true } : {}),
    ...(blackAndWhite ? { blackAndWhite: true } : {}),
    ...(Object.keys(headerFooter).length > 0 ? { headerFooter } : {}),
  };
}

/** In a file an absent number of pages means one, and 0 means as many as it takes. */
function zoomFromFile(setup: PageSetup): Pick<PageLayout, "zoom"> {
  if (setup.fitToPage) return { zoom: { horizontalFitToPages: setup.fitToWidth ?? 1, verticalFitToPages: setup.fitToHeight ?? 1 } };
  return setup.scale && setup.scale !== 100 ? { zoom: { scale: setup.scale } } : {};
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

/** Everything about printing except the print area and titles, which are names: see reservedNames. */
export function pageToFile(extras: SheetExtras | undefined, carried: Sheet | undefined): Partial<WriteSheet> {
  const layout = extras?.pageLayout ?? {};
  const { scale, horizontalFitToPages, verticalFitToPages } = layout.zoom ?? {};
  const fits = horizontalFitToPages !== undefined || verticalFitToPages !== undefined;
  const margins = Object.fromEntries(
    (Object.keys(MARGINS) as (keyof Margins)[])
      .map((side) => [side, layout[MARGINS[side]]] as const)
      .filter(([, points]) => points !== undefined)
      .map(([side, points]) => [side, round(points! / POINTS_PER_INCH)]),
  );
  return {
    pageSetup: {
      ...(PAPERS.includes(layout.paperSize as "A4") ? { paperSize: layout.paperSize!.toLowerCase() as PageSetup["paperSize"] } : {}),
      ...(layout.orientation ? { orientation: layout.orientation === "Landscape" ? "landscape" : "portrait" } : {}),
      ...(fits ? { fitToPage: true, fitToWidth: horizontalFitToPages ?? 0, fitToHeight: verticalFitToPages ?? 0 } : scale ? { scale } : {}),
      ...(Object.keys(margins).length > 0 ? { margins } : {}),
      ...(layout.centerHorizontally ? { horizontalCentered: true } : {}),
      ...(layout.centerVertically ? { verticalCentered: true } : {}),
      ...(layout.printGridlines ? { showGridLines: true } : {}),
      ...(carried?.pageSetup?.showRowColHeaders ? { showRowColHeaders: true } : {}),
    },
    headerFooter: {
      ...carried?.headerFooter,
      oddHeader: headerFooterToFile(layout.headerFooter, "Header"),
      oddFooter: headerFooterToFile(layout.headerFooter, "Footer"),
    },
    rowBreaks: (extras?.horizontalPageBreaks ?? []).filter((row) => row > 0).map((row) => row - 1),
    colBreaks: carried?.colBreaks,
  };
}

/** Print area and print titles are defined names. hucre 1.0.0 writes them without the quotes a sheet's name may need. */
export function reservedNames(
  sheetId: string,
  sheetName: string,
  extras: SheetExtras | undefined,
  carried: Sheet | undefined,
): ReservedName[] {
  const prefix = sheetPrefix(sheetName);
  const areas = (extras?.printArea ?? "")
    .split(",")
    .map(parseBlock)
    .filter((block) => block !== undefined);
  const rows = /^\$?(\d+):\$?(\d+)$/.exec(extras?.printTitleRows ?? "");
  const titles = [
    ...(carried?.pageSetup?.printTitlesColumn ? [prefix + carried.pageSetup.printTitlesColumn] : []),
    ...(rows ? [`${prefix}$${rows[1]}:$${rows[2]}`] : []),
  ];
  return [
    ...(areas.length > 0
      ? [{ name: "_xlnm.Print_Area", sheetId, meaning: areas.map((area) => prefix + absoluteAddress(area)).join(",") }]
      : []),
    ...(titles.length > 0 ? [{ name: "_xlnm.Print_Titles", sheetId, meaning: titles.join(",") }] : []),
  ];
}
