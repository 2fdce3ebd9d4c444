import type { Asked } from "../../workbook/brewing/companion/ask";
import type { PackagingFigures } from "../../workbook/brewing/companion/packaging/packaging-figures";
import type { PackagingInput } from "../../workbook/brewing/companion/packaging/packaging-form";
import type { PackagingSafety } from "../../workbook/brewing/companion/packaging/packaging-safety";
import { shown } from "../../workbook/brewing/companion/words";
import { dayShown } from "../../workbook/grid/words/day-words";
import { unitsOf, type BatchSheet } from "../../workbook/batch/read/batch-sheets";

interface PackagingAnswerProps {
  readonly figures: PackagingFigures;
  readonly safety: PackagingSafety;
  readonly input: PackagingInput;
  readonly sheet: BatchSheet;
}

/** The figures. Neither sugar nor pressure stands without what speaks against it, nor at all where glass or keg could not hold it. */
export function PackagingAnswer({ figures, safety, input, sheet }: PackagingAnswerProps) {
  const units = unitsOf(sheet);
  const say = ({ value, problem }: Asked, words: (value: number) => string) => (value === undefined ? problem || "–" : words(value));
  const pressure = say(figures.pressure, (value) => shown(value, "pressure", units, units === "us" ? 1 : 2));
  if (input.into === "keg") {
    return (
      <dl class="answer">
        <dt>Set the keg to</dt>
        <dd>{safety.level === "refuse" ? "Not at any pressure: see above." : <strong>{pressure}</strong>}</dd>
        <dd>Air the room: carbon dioxide suffocates. The keg's own plate comes first.</dd>
      </dl>
    );
  }
  return (
    <dl class="answer">
      <dt>Sugar for {shown(figures.dosed, "volume", units)}</dt>
      {safety.level === "refuse" ? (
        <dd>None is given: see above.</dd>
      ) : (
        <dd>
          <strong>{say(figures.sugar, (value) => shown(value, "smallMass", units, units === "us" ? 2 : 0))}</strong> of {input.sugar}
          {safety.level === "confirm" && <b class="bad"> only if you accept the danger above</b>}
        </dd>
      )}
      <dt>Pressure at the warmest place</dt>
      <dd>{safety.level === "refuse" ? "None is given: see above." : pressure}</dd>
      <dt>Bottles and caps to prepare</dt>
      <dd>{say(figures.bottles, (value) => value.toFixed(0))}</dd>
      <dt>First taste</dt>
      <dd>{safety.level === "refuse" ? "–" : say(figures.firstTaste, dayShown)}</dd>
    </dl>
  );
}
