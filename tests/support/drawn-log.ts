import { normalOf } from "./fermentation-truths";

/** A log as a brewer or an instrument keeps it: at rest or falling, by lines or not, as days or dates, in any order. */
export function drawnLog(uniform: () => number): unknown[] {
  const among = <T>(...choices: readonly T[]): T => choices[Math.floor(uniform() * choices.length)]!;
  const start = among(0, 46000);
  const perDay = among(1, 1, 2, 4);
  const readings = 2 + Math.floor(uniform() * (perDay === 4 ? 28 : 9));
  const [fallPerDay, deviation, line] = [among(0, 0, 0.0005, 0.001, 0.004, 0.012), among(0, 0.0003, 0.0005, 0.001), among(0, 0.001)];
  const last = among(1.045, 1.01, 1.012, 1.014, 1.016) + 0.001 * uniform();
  const wrong = uniform() < 0.08 ? 0.004 : 0;
  const end = 2 + readings / perDay;
  const rows = Array.from({ length: readings }, (_, index) => {
    const day = 2 + index / perDay + among(0, 0.1) * uniform();
    const gravity = Math.min(last + fallPerDay * (end - day) + deviation * normalOf(uniform) + (index === readings - 1 ? wrong : 0), 1.19);
    return [start + day, line === 0 ? gravity : Math.round(gravity / line) * line] as const;
  });
  if (uniform() < 0.5) rows.unshift([start + 1, 1.05]);
  if (uniform() < 0.3) rows.reverse();
  return [
    rows.map(([day]) => [day]),
    rows.map(([, gravity]) => [gravity]),
    null,
    among(null, 1.011),
    among(null, 1.05),
    among(null, null, start + Math.max(0.5, end - 4 * uniform())),
  ];
}
