import type { UnitSystem } from "../../functions/quantities";
import { bottlingSteps, kegSteps } from "../../workbook/batch/packaging-steps";

/** What the hands do, below what is calculated: whoever has done it before leaves it closed. */
export const StepByStep = ({ into, units }: { readonly into: "bottles" | "keg"; readonly units: UnitSystem }) => (
  <details>
    <summary>{into === "keg" ? "How to fill a keg, step by step" : "How to bottle, step by step"}</summary>
    <ol>
      {(into === "keg" ? kegSteps(units) : bottlingSteps(units)).map((step) => (
        <li key={step}>{step}</li>
      ))}
    </ol>
  </details>
);
