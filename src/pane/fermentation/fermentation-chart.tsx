import { shownDays, type Course } from "../../workbook/brewing/fermentation/fermentation-curve";
import type { FermentationLog } from "../../workbook/brewing/fermentation/fermentation-log";
import { dayShort } from "../../workbook/grid/words/day-words";
import { roundMarks, scale, spanOf } from "./scale";

const width = 320;
const gravityHeight = 190;
const temperatureHeight = 90;
const left = 44;
const right = 8;
const bottom = 20;
/** More than half as wide as "15 Sept" in any font: a day nearer to the edge than this would be cut, and ends there instead. */
const halfOfDay = 26;

/**
 * The same series as the sheet's own chart, drawn small: gravity with its curve and band above, the beer's temperature below.
 * The table beside it says the same to those who cannot see it.
 */
export function FermentationChart({
  log,
  course,
  temperatureUnit,
}: {
  readonly log: FermentationLog;
  readonly course: Course;
  readonly temperatureUnit: string;
}) {
  const days = shownDays(log);
  if (!days || log.gravities.length === 0) return null;
  const across = scale(days, [left, width - right]);
  return (
    <figure class="ferment-chart">
      <Gravity log={log} course={course} across={across} days={days} />
      <figcaption>
        <ul class="chart-key">
          <li>
            <Sample>
              <circle cx="13" cy="6" r="4.5" class="mark" />
            </Sample>
            gravity read
          </li>
          {course.curve.length > 0 && (
            <li>
              <Sample>
                <path d="M1 6h24" class="curve" />
              </Sample>
              fitted curve
            </li>
          )}
          {course.curve.length > 0 && (
            <li>
              <Sample>
                <path d="M1 2h24M1 10h24" class="band-edge" />
              </Sample>
              its band (95 %)
            </li>
          )}
        </ul>
      </figcaption>
      {log.temperatures.length > 0 && <Temperature log={log} across={across} days={days} unit={temperatureUnit} />}
    </figure>
  );
}

type Across = (day: number) => number;

function Gravity({
  log,
  course,
  across,
  days,
}: {
  readonly log: FermentationLog;
  readonly course: Course;
  readonly across: Across;
  readonly days: readonly [number, number];
}) {
  const { curve } = course;
  const span = spanOf([...log.gravities.map(({ value }) => value), ...curve.flatMap(({ low, high }) => [low, high])], 0.002);
  const up = scale(span, [gravityHeight - bottom, 8]);
  const path = (height: (point: Course["curve"][number]) => number) =>
    curve.map((point, index) => `${index === 0 ? "M" : "L"}${across(point.day).toFixed(1)} ${up(height(point)).toFixed(1)}`).join("");
  return (
    <svg viewBox={`0 0 ${width} ${gravityHeight}`} role="img" aria-label="Gravity, day by day; the table below has the figures">
      {roundMarks(span, 5).map((gravity) => (
        <g key={gravity}>
          <path class="grid" d={`M${left} ${up(gravity)}H${width - right}`} />
          <text x={left - 6} y={up(gravity) + 4} text-anchor="end">
            {gravity.toFixed(3)}
          </text>
        </g>
      ))}
      <DayMarks days={days} across={across} y={gravityHeight - 4} />
      {curve.length > 0 && (
        <>
          <path class="band-edge" d={path(({ low }) => low)} />
          <path class="band-edge" d={path(({ high }) => high)} />
          <path class="curve" d={path(({ gravity }) => gravity)} />
        </>
      )}
      {log.gravities.map(({ day, value }) => (
        <circle key={day} class="mark" cx={across(day)} cy={up(value)} r="4.5" />
      ))}
    </svg>
  );
}

function Temperature({
  log,
  across,
  days,
  unit,
}: {
  readonly log: FermentationLog;
  readonly across: Across;
  readonly days: readonly [number, number];
  readonly unit: string;
}) {
  const span = spanOf(
    log.temperatures.map(({ value }) => value),
    // Five degrees on either side: one degree up and down is no cliff.
    5,
  );
  const up = scale(span, [temperatureHeight - bottom, 18]);
  const line = log.temperatures
    .map(({ day, value }, index) => `${index === 0 ? "M" : "L"}${across(day).toFixed(1)} ${up(value).toFixed(1)}`)
    .join("");
  return (
    <svg
      viewBox={`0 0 ${width} ${temperatureHeight}`}
      role="img"
      aria-label={`Temperature of the beer, ${unit}; the table below has the figures`}
    >
      <text x={left} y="11">
        Beer, {unit}
      </text>
      {roundMarks(span, 3)
        .filter(Number.isInteger)
        .map((degrees) => (
          <g key={degrees}>
            <path class="grid" d={`M${left} ${up(degrees)}H${width - right}`} />
            <text x={left - 6} y={up(degrees) + 4} text-anchor="end">
              {degrees}
            </text>
          </g>
        ))}
      <DayMarks days={days} across={across} y={temperatureHeight - 4} />
      <path class="warmth" d={line} />
      {log.temperatures.map(({ day, value }) => (
        <path key={day} class="warmth-mark" d={`M${across(day)} ${up(value) - 5}l5 5-5 5-5-5Z`} />
      ))}
    </svg>
  );
}

function DayMarks({ days, across, y }: { readonly days: readonly [number, number]; readonly across: Across; readonly y: number }) {
  return (
    <>
      {roundMarks(days, 5)
        .filter(Number.isInteger)
        .map((day) => (
          <text
            key={day}
            {...(across(day) > width - halfOfDay ? { x: width - 2, "text-anchor": "end" } : { x: across(day), "text-anchor": "middle" })}
            y={y}
          >
            {dayShort(day)}
          </text>
        ))}
    </>
  );
}

const Sample = ({ children }: { readonly children: preact.ComponentChildren }) => (
  <svg class="sample" viewBox="0 0 26 12" aria-hidden="true">
    {children}
  </svg>
);
