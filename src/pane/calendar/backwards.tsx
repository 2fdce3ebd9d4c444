import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import { backwardPlan, usualFermentationDays } from "../../workbook/brewing/calendar/batch-dates";
import { dayShown } from "../../workbook/grid/words/day-words";
import { TextField } from "../fields/text-field";
import { typedDay, typedNumber } from "../fields/typed";

export interface BackwardsProps {
  readonly units: UnitSystem;
  readonly temperature: number | undefined;
  readonly temperatureUnit: string;
}

/** From the day on which it shall be drunk to the latest day on which to brew. */
export function Backwards({ units, temperature, temperatureUnit }: BackwardsProps) {
  const [wished, setWished] = useState("");
  const [days, setDays] = useState(String(usualFermentationDays));
  const [warmth, setWarmth] = useState(String(temperature ?? (units === "us" ? 70 : 21)));
  const [tasteOn, fermentation, degrees] = [typedDay(wished), typedNumber(days), typedNumber(warmth)];
  const wrongDays = fermentation === undefined || fermentation < 1 || fermentation > 200;
  const plan =
    tasteOn === undefined || degrees === undefined || wrongDays ? undefined : backwardPlan(tasteOn, fermentation, degrees, units);
  const wrongWarmth = degrees === undefined || (tasteOn !== undefined && !wrongDays && plan === undefined);
  return (
    <section aria-labelledby="backwards-title">
      <h2 id="backwards-title">When must I brew?</h2>
      <TextField id="wished-day" type="date" label="First bottle to be poured on" value={wished} onInput={setWished} />
      <TextField
        id="fermentation-days"
        inputMode="decimal"
        label="Days of fermentation"
        value={days}
        hint="Ten is common practice for an ale; a cold or strong beer takes longer."
        problem={wrongDays ? "A number of days from 1 to 200." : undefined}
        onInput={setDays}
      />
      <TextField
        id="bottle-warmth"
        inputMode="decimal"
        label={`The bottles stand at, ${temperatureUnit}`}
        value={warmth}
        problem={
          wrongWarmth
            ? `A temperature in ${temperatureUnit} at which bottles carbonate, such as ${units === "us" ? "70" : "21"}.`
            : undefined
        }
        onInput={setWarmth}
      />
      <div aria-live="polite">
        {plan && (
          <p>
            Brew by <strong>{dayShown(plan.brewBy)}</strong>, bottle by <strong>{dayShown(plan.packageBy)}</strong>, and give the bottles{" "}
            {plan.conditioningDays} days. A few more days are wise: beer is ready when its readings agree, not when the calendar says so.
          </p>
        )}
      </div>
    </section>
  );
}
