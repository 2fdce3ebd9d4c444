import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { PageLayoutObject } from "./page-layout";
import type { HeaderFooterPlace } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Base of what hangs below a page layout: it stands for the same sheet. */
abstract class LayoutPart extends ClientObject<string, Context> {
  constructor(protected readonly layout: PageLayoutObject) {
    super(layout.context, { name: "pageLayout", missing: "null", find: () => (layout.isNullObject ? undefined : layout.target) });
  }
}

/** Stands in for Excel.HeaderFooterGroup; the bench has one set of texts for all pages. */
export class HeaderFooterGroup extends LayoutPart implements StandsFor<Excel.HeaderFooterGroup, keyof HeaderFooterGroup> {
  readonly defaultForAllPages = new HeaderFooter(this.layout);

  protected override children() {
    return { defaultForAllPages: () => this.defaultForAllPages };
  }
}

/** Stands in for Excel.HeaderFooter. */
export class HeaderFooter extends LayoutPart implements StandsFor<Excel.HeaderFooter, keyof HeaderFooter> {
  declare centerFooter: string;
  declare rightFooter: string;

  protected override changes() {
    return {
      centerFooter: (text: string) => this.put("centerFooter", text),
      rightFooter: (text: string) => this.put("rightFooter", text),
    };
  }

  protected override readers() {
    const read = (place: HeaderFooterPlace) => (sheetId: string) =>
      this.context.host.extras.ofSheet(this.context.host.unitId, sheetId).pageLayout?.headerFooter?.[place] ?? "";
    return {
      centerFooter: read("centerFooter"),
      rightFooter: read("rightFooter"),
    };
  }

  private put(place: HeaderFooterPlace, text: string): void {
    this.set(place, text, () =>
      this.layout.changeNow((layout) => ({ ...layout, headerFooter: { ...layout.headerFooter, [place]: text } })),
    );
  }
}
