import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { accessDenied, invalidArgument } from "./errors";
import type { StandsFor } from "./standing";

/**
 * Stands in for Excel.WorksheetProtection. The grid does not hold its own user to protection, so the stand-in refuses
 * writes to locked cells, and the page refuses typing into them.
 */
export class WorksheetProtection
  extends ClientObject<string, Context>
  implements StandsFor<Excel.WorksheetProtection, keyof WorksheetProtection>
{
  declare readonly protected: boolean;

  protect(options: Excel.WorksheetProtectionOptions = {}, password?: string): void {
    this.write((sheetId) => {
      const { host } = this.context;
      if (host.extras.ofSheet(host.unitId, sheetId).protection) throw accessDenied();
      this.context.forGood("WorksheetProtection.protect", () =>
        host.extras.update(host.unitId, sheetId, (extras) => {
          extras.protection = { options: options, ...(password ? { hasPassword: true } : {}) };
        }),
      );
    });
  }

  /** The bench never keeps a password, so it cannot open what one closed. */
  unprotect(password?: string): void {
    this.write((sheetId) => {
      const { host } = this.context;
      if (host.extras.ofSheet(host.unitId, sheetId).protection?.hasPassword && !password)
        throw invalidArgument("The sheet is protected by a password.");
      this.context.forGood("WorksheetProtection.unprotect", () =>
        host.extras.update(host.unitId, sheetId, (extras) => {
          delete extras.protection;
        }),
      );
    });
  }

  protected override readers() {
    const protection = (sheetId: string) => this.context.host.extras.ofSheet(this.context.host.unitId, sheetId).protection;
    return {
      protected: (sheetId: string) => protection(sheetId) !== undefined,
    };
  }
}
