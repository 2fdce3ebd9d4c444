import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Done } from "./in-workbook";

/** How it went, below the button and read out; a name that is taken comes with one that is free. */
export function Outcome<T>({
  outcome,
  onFreeName,
  children,
}: {
  readonly outcome: Done<T> | undefined;
  readonly onFreeName?: (name: string) => void;
  readonly children: (result: T) => ComponentChildren;
}) {
  const place = useRef<HTMLDivElement>(null);
  // Below a long form it would come up out of sight.
  useEffect(() => {
    if (outcome) place.current?.scrollIntoView({ block: "nearest" });
  }, [outcome]);
  return (
    <div ref={place} aria-live="polite" class="outcome">
      {outcome?.kind === "done" && <div class="good">{children(outcome.result)}</div>}
      {outcome?.kind === "failed" && <p class="bad">{outcome.message}</p>}
      {outcome?.kind === "taken" && (
        <>
          <p class="bad">{outcome.message}</p>
          {onFreeName && (
            <button type="button" onClick={() => onFreeName(outcome.freeName)}>
              Use “{outcome.freeName}”
            </button>
          )}
        </>
      )}
    </div>
  );
}
