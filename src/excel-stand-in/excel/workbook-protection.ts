import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { accessDenied, invalidArgument } from "./errors";
import type { StandsFor } from "./standing";

/** Stands in for Excel.WorkbookProtection: the list of sheets is closed, their cells are not. */
export class WorkbookProtection
  extends ClientObject<true, Context>
  implements StandsFor<Excel.WorkbookProtection, keyof WorkbookProtection>
{
  declare readonly protected: boolean;

  protect(password?: string): void {
    this.write(() => {
      if (this.extras.workbookProtection) throw accessDenied("the workbook is protected already");
      this.context.forGood("WorkbookProtection.protect", () => {
        this.extras.workbookProtection = password ? { hasPassword: true } : {};
      });
    });
  }

  /** The bench never keeps a password, so it cannot tell a wrong one from a right one. */
  unprotect(password?: string): void {
    this.write(() => {
      if (this.extras.workbookProtection?.hasPassword && !password) throw invalidArgument("The workbook is protected by a password.");
      this.context.forGood("WorkbookProtection.unprotect", () => {
        delete this.extras.workbookProtection;
      });
    });
  }

  protected override readers() {
    return { protected: () => this.extras.workbookProtection !== undefined };
  }

  private get extras() {
    return this.context.host.extras.of(this.context.host.unitId);
  }
}
