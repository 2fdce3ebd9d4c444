import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { StandsFor } from "./standing";

/** Stands in for Excel.Runtime: whether this add-in hears of events. */
export class Runtime extends ClientObject<true, Context> implements StandsFor<Excel.Runtime, "enableEvents"> {
  declare enableEvents: boolean;

  protected override changes() {
    return {
      enableEvents: (enabled: boolean) =>
        this.set("enableEvents", enabled, () => {
          this.context.host.eventsEnabled = enabled;
        }),
    };
  }

  protected readers() {
    return { enableEvents: () => this.context.host.eventsEnabled };
  }
}
