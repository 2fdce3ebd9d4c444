import type { ComponentChildren } from "preact";
import { equationLines } from "../../functions/equation-lines";

/** An equation, a line for each of its parts, and what its letters stand for. */
export function Equation({
  equation,
  text = (words) => words,
}: {
  readonly equation: string;
  readonly text?: (words: string) => ComponentChildren;
}) {
  const { lines, legend } = equationLines(equation);
  return (
    <>
      <p class="equation">
        {lines.map((line, index) => (
          <span key={line}>
            {index > 0 && <br />}
            {text(line)}
            {index < lines.length - 1 && ";"}
          </span>
        ))}
      </p>
      {legend.length > 0 && <p class="hint">{legend.map(({ symbol, meaning }) => `${symbol}: ${meaning}`).join("; ")}.</p>}
    </>
  );
}
