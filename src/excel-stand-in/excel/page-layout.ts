import { cellsText, sheetPrefix } from "./address";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { Range } from "./range";
import { HeaderFooterGroup } from "./headers-footers";
import type { PageLayout } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Excel's margins when nobody set any, in points (0.7 inch at the sides, 0.75 above and below, 0.3 for headers). */
const defaults = {
  orientation: "Portrait",
  paperSize: "Letter",
  zoom: { scale: 100 },
  leftMargin: 50.4,
  rightMargin: 50.4,
  topMargin: 54,
  bottomMargin: 54,
  headerMargin: 21.6,
  footerMargin: 21.6,
  centerHorizontally: false,
} as const;

/** Stands in for Excel.PageLayout; kept with the sheet's extras and written to files. Margins are in points. */
export class PageLayoutObject extends ClientObject<string, Context> implements StandsFor<Excel.PageLayout, keyof PageLayoutObject> {
  get headersFooters(): HeaderFooterGroup {
    return this.part("headersFooters", () => new HeaderFooterGroup(this));
  }
  declare orientation: Excel.PageLayout["orientation"];
  declare paperSize: Excel.PageLayout["paperSize"];
  declare zoom: Excel.PageLayoutZoomOptions;
  declare leftMargin: number;
  declare rightMargin: number;
  declare topMargin: number;
  declare bottomMargin: number;
  declare headerMargin: number;
  declare footerMargin: number;
  declare centerHorizontally: boolean;

  setPrintArea(area: Range | Excel.Range | Excel.RangeAreas | string): void {
    this.write((id) =>
      this.context.host.extras.update(this.context.host.unitId, id, (extras) => {
        extras.printArea = cells(area as Range | string);
      }),
    );
  }

  getPrintAreaOrNullObject(): PrintArea {
    const { host } = this.context;
    const find = () => {
      const area = host.extras.ofSheet(host.unitId, this.target).printArea;
      return area && sheetPrefix(host.sheet(this.target).getSheetName()) + area;
    };
    return new PrintArea(this.context, { name: "range", missing: "null", find });
  }

  /** While the queue is worked off. */
  changeNow(change: (layout: PageLayout) => PageLayout): void {
    this.context.host.extras.update(this.context.host.unitId, this.target, (extras) => {
      extras.pageLayout = change(extras.pageLayout ?? {});
    });
  }

  protected override children() {
    return { headersFooters: () => this.headersFooters };
  }

  protected override changes() {
    return Object.fromEntries(
      Object.keys(defaults).map((name) => [name, (value: unknown) => this.change(name as keyof PageLayout, value)]),
    );
  }

  protected readers() {
    const layout = (id: string): PageLayout => this.context.host.extras.ofSheet(this.context.host.unitId, id).pageLayout ?? {};
    return Object.fromEntries(
      Object.entries(defaults).map(([name, fallback]) => [name, (id: string) => layout(id)[name as keyof typeof defaults] ?? fallback]),
    );
  }

  private change(property: keyof PageLayout, value: unknown): void {
    this.set(property, value, () => this.changeNow((layout) => ({ ...layout, [property]: value })));
  }
}

const cells = (area: Range | string): string =>
  area instanceof Range ? cellsText(area.target) : area.slice(area.lastIndexOf("!") + 1).replaceAll("$", "");

/** Stands in for the Excel.RangeAreas that a print area is: one block here, known by its address. */
export class PrintArea extends ClientObject<string, Context> implements StandsFor<Excel.RangeAreas, keyof PrintArea> {
  declare readonly address: string;

  protected readers() {
    return { address: (address: string) => address };
  }
}
