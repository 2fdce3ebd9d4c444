import type { UnitSystem } from "../../functions/quantities";
import type { JudgedPart } from "../../workbook/brewing/companion/packaging/packaging-judged";
import { shown } from "../../workbook/brewing/companion/words";

/** Each part of a batch with its verdict, and after it the figure that the verdict lets through. */
export function PartsAnswer({ parts, units }: { readonly parts: readonly JudgedPart[]; readonly units: UnitSystem }) {
  return (
    <dl class="answer">
      {parts.map(({ name, volume, into, verdict, sugar, pressure, isGiven }) => (
        <>
          <dt key={name}>
            {name}: {shown(volume, "volume", units)} into {into === "keg" ? "a keg" : into}
          </dt>
          <dd class={isGiven ? "" : "bad"}>{verdict || "It cannot be judged yet: fill in what its check on the sheet names."}</dd>
          <dd>
            {!isGiven && "No figure is given."}
            {isGiven && sugar.value !== undefined && (
              <>
                Sugar: <strong>{shown(sugar.value, "smallMass", units, units === "us" ? 2 : 0)}</strong>, in this part alone
              </>
            )}
            {isGiven && into === "keg" && pressure.value !== undefined && (
              <>
                Set the keg to <strong>{shown(pressure.value, "pressure", units, units === "us" ? 1 : 2)}</strong>
              </>
            )}
          </dd>
        </>
      ))}
      <dd>Glass under pressure cuts. Air the room: carbon dioxide suffocates. The keg's own plate comes first.</dd>
    </dl>
  );
}
