import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { StandsFor } from "./standing";

/** Stands in for Excel.Application. Calculation is always automatic here, and never runs within a round trip's writes. */
export class Application extends ClientObject<true, Context> implements StandsFor<Excel.Application, keyof Application> {
  declare readonly decimalSeparator: string;

  suspendApiCalculationUntilNextSync(): void {
    /* the grid collects edits anyway */
  }

  protected readers() {
    return { decimalSeparator: () => this.context.host.locale.decimal };
  }
}
