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
      | "calculate"
      | "suspendApiCalculationUntilNextSync"
      | "suspendScreenUpdatingUntilNextSync"
      | "calculationMode"
      | "decimalSeparator"
      | "thousandsSeparator"
      | "useSystemSeparators"
      | "cultureInfo"
    >
{
  get calculationMode(): Excel.Application["calculationMode"] {
    return this.get("calculationMode");
  }

  get decimalSeparator(): string {
    return this.get("decimalSeparator");
  }
  get thousandsSeparator(): string {
    return this.get("thousandsSeparator");
  }
  get useSystemSeparators(): boolean {
    return this.get("useSystemSeparators");
  }
  get cultureInfo(): CultureInfo {
    return this.part("cultureInfo", () => new CultureInfo(this.context));
  }

  calculate(_type: Excel.CalculationType | string): void {
    this.write(() => this.context.host.engine.univerAPI.getFormula().executeCalculation());
  }

  suspendApiCalculationUntilNextSync(): void {
    /* the grid collects edits anyway */
  }
  suspendScreenUpdatingUntilNextSync(): void {
    /* the grid draws once per frame anyway */
  }

  protected override children() {
    return { cultureInfo: () => this.cultureInfo };
  }
  protected readers() {
    const locale = () => this.context.host.locale;
    return {
      calculationMode: () => "Automatic",
      decimalSeparator: () => locale().decimal,
      thousandsSeparator: () => locale().group,
      useSystemSeparators: () => true,
    };
  }
}
