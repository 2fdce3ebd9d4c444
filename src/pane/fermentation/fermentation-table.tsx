import type { FermentationLog } from "../../workbook/brewing/fermentation/fermentation-log";
import { momentShown } from "../../workbook/grid/words/day-words";

/** The figures of the chart, for reading instead of looking. */
export function FermentationTable({ log, temperatureUnit }: { readonly log: FermentationLog; readonly temperatureUnit: string }) {
  const days = [...new Set([...log.gravities, ...log.temperatures].map(({ day }) => day))].sort((one, other) => one - other);
  if (days.length === 0) return null;
  const at = (marks: FermentationLog["gravities"], day: number) => marks.find((mark) => mark.day === day)?.value;
  return (
    <table class="figures">
      <caption>What was read</caption>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">Gravity</th>
          <th scope="col">Beer, {temperatureUnit}</th>
        </tr>
      </thead>
      <tbody>
        {days.map((day) => (
          <tr key={day}>
            <th scope="row">{momentShown(day)}</th>
            <td>{at(log.gravities, day)?.toFixed(3) ?? "–"}</td>
            <td>{at(log.temperatures, day) ?? "–"}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
