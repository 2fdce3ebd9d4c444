import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { CultureInfo } from "./culture-info";
import type { StandsFor } from "./standing";

/** Stands in for Excel.Application. Calculation is always automatic here, and never runs within a round trip's writes. */
export class Application
  extends ClientObject<true, Context>
  implements
    StandsFor<
      Excel.Application,
      "suspendApiCalculationUntilNextSync" | "decimalSeparator" | "thousandsSeparator" | "useSystemSeparators" | "cultureInfo"
    >
{
  declare readonly decimalSeparator: string;
  declare readonly thousandsSeparator: string;
  declare readonly useSystemSeparators: boolean;

  get cultureInfo(): CultureInfo {
    return this.part("cultureInfo", () => new CultureInfo(this.context));
  }

  suspendApiCalculationUntilNextSync(): void {
    /* the grid collects edits anyway */
  }

  protected override children() {
    return { cultureInfo: () => this.cultureInfo };
  }
  protected readers() {
    const locale = () => this.context.host.locale;
    return {
      decimalSeparator: () => locale().decimal,
      thousandsSeparator: () => locale().group,
      useSystemSeparators: () => true,
    };
  }
}
