import type { ComponentChildren } from "preact";
import type { Outcome } from "../../workbook/brewing/companion/outcome";

/** What became of the last change; read out once. */
export function OutcomeLine({ outcome, children }: { readonly outcome: Outcome | undefined; readonly children?: ComponentChildren }) {
  return (
    <div aria-live="polite" class="outcome">
      {outcome && (outcome.kind === "written" ? children : <p class="bad">{outcome.message}</p>)}
    </div>
  );
}
