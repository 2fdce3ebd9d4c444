import type { Application } from "./application";
import { RequestQueue } from "./request-context";
import { Workbook } from "./workbook";

/** Stands in for Excel.RequestContext. */
export class Context extends RequestQueue {
  private theWorkbook: Workbook | undefined;

  get workbook(): Workbook {
    return (this.theWorkbook ??= new Workbook(this, { name: "workbook", missing: "throws", find: () => this.host.workbook }));
  }

  get application(): Application {
    return this.workbook.application;
  }
}
