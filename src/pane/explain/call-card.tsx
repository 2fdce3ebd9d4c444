import type { AnyDescriptor, Source } from "../../functions/describe";
import { registry } from "../../functions/registry";
import type { ArgumentExplanation, CallExplanation } from "../../workbook/care/explain/explanation";
import { listed } from "../../workbook/grid/words/listed";
import { showNumber } from "../../workbook/care/explain/show-value";
import { asWritten } from "../../workbook/grid/formulas/writing";
import { useDecimalSign } from "../parts/decimal-sign";
import { Equation } from "../parts/equation";
import { GoTo } from "../parts/go-to";
import { ProblemNote } from "./problem-note";

export interface CallCardProps {
  readonly call: CallExplanation;
  /** The only call of its cell needs no numbering. */
  readonly isOnly: boolean;
  readonly onLost: (message: string) => void;
}

/** One function of a formula: what went in, what came out, how sure that is, and where the equation comes from. */
export function CallCard({ call, isOnly, onLost }: CallCardProps) {
  const descriptor = registry.find(({ id }) => id === call.id);
  const isError = call.answer !== "";
  return (
    <article class="call" aria-label={`GYLE.${call.id}`}>
      <h2>
        GYLE.{call.id}
        {!isOnly && call.depth > 1 && <span class="hint"> inside the one above</span>}
      </h2>
      {descriptor && <p class="hint">{descriptor.summary}</p>}
      {call.problem && <ProblemNote problem={call.problem} isError={isError} onLost={onLost} />}
      {call.arguments.length > 0 && (
        <dl class="arguments">
          {call.arguments.filter(isWorthShowing).map((argument) => (
            <Argument key={argument.name} argument={argument} onLost={onLost} />
          ))}
        </dl>
      )}
      {call.exists && call.shown !== "" && (
        <p class="answer">
          <span>answer</span> {call.shown} {call.answer !== "" && typeof call.answer === "number" && call.unit}
        </p>
      )}
      {call.spread && (
        <p class="spread">
          ± {showNumber(Number(call.spread.value.toPrecision(2)))} {call.unit}, if {listed(call.spread.assumed)}: usual instruments, assumed
          here.
        </p>
      )}
      {descriptor && <Origin descriptor={descriptor} />}
    </article>
  );
}

/** Arguments that were left out and have no usual value only lengthen the list. */
const isWorthShowing = ({ typed, shown, isWrong }: ArgumentExplanation): boolean => typed !== "" || isWrong || shown !== "not given";

function Argument({
  argument: { name, doc, unit, typed, shown, place, table, isWrong },
  onLost,
}: {
  readonly argument: ArgumentExplanation;
  readonly onLost: (message: string) => void;
}) {
  const decimal = useDecimalSign();
  const isNumber = /^-?[\d.]+$/.test(shown);
  return (
    <div class={isWrong ? "wrong-argument" : undefined}>
      <dt>
        {name}
        {isWrong && <span> (here)</span>}
      </dt>
      <dd>
        <span class="value">
          {shown} {isNumber && unit}
        </span>
        {typed !== "" && <code>{asWritten(typed, decimal)}</code>}
        {place && place.range !== typed.replaceAll("$", "") && <GoTo place={place} onProblem={onLost} />}
        {place && place.range === typed.replaceAll("$", "") && <GoTo place={place} label="Go there" onProblem={onLost} />}
        <details>
          <summary>What it means</summary>
          <p>{doc}</p>
          {table && (
            <table>
              <tbody>
                {table.map((row, index) => (
                  <tr key={index}>
                    {row.map((cell, column) => (
                      <td key={column}>{cell}</td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </details>
      </dd>
    </div>
  );
}

function Origin({ descriptor }: { readonly descriptor: AnyDescriptor }) {
  const sources: readonly Source[] = descriptor.sources;
  const cautions: readonly string[] = descriptor.cautions ?? [];
  return (
    <>
      {cautions.length > 0 && (
        <ul class="cautions" aria-label="Take care">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <details>
        <summary>Where the equation comes from</summary>
        <Equation equation={descriptor.equation} />
        <ul>
          {sources.map(({ cite, where }) => (
            <li key={cite + where}>
              {cite}: {where}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
