import { LifecycleService, LifecycleStages, type Injector } from "@univerjs/core";

/**
 * The grid starts some of its parts (filling down, copying formats, what the formula bar suggests) three seconds after it is first
 * drawn, in the middle of somebody's typing, whose Enter was then seen to be swallowed. They take a few milliseconds, so they start
 * as soon as the grid is drawn; its own timer finds them started.
 */
export async function startLateParts(injector: Injector): Promise<void> {
  const lifecycle = injector.get(LifecycleService);
  await lifecycle.onStage(LifecycleStages.Rendered);
  lifecycle.stage = LifecycleStages.Steady;
}
