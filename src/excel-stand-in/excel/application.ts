import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { StandsFor } from "./standing";

/** Stands in for Excel.Application. Calculation is always automatic here, and never runs within a round trip's writes. */
export class Application
  extends ClientObject<true, Context>
  implements
    StandsFor<
      Excel.Application,
      "calculate" | "suspendApiCalculationUntilNextSync" | "suspendScreenUpdatingUntilNextSync" | "calculationMode"
    >
{
  get calculationMode(): Excel.Application["calculationMode"] {
    return this.get("calculationMode");
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

  protected readers() {
    return { calculationMode: () => "Automatic" };
  }
}
