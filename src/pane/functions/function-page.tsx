import { useEffect, useRef } from "preact/hooks";
import { argumentName, type AnyDescriptor, type Example, type Parameter, type Source } from "../../functions/describe";
import { exampleAnswer, exampleOrigin, exampleUnit } from "../../functions/example-answer";
import { formulaText } from "../../functions/formula-text";
import { parameterText } from "../../functions/parameter-text";
import { functionNamed } from "../../functions/registry";
import { resultText } from "../../functions/result-text";
import { asWritten } from "../../workbook/grid/formulas/writing";
import { useDecimalSign } from "../parts/decimal-sign";
import { Equation } from "../parts/equation";
import { LinkedText } from "../parts/linked-text";
import { PutForm } from "./put-form";

export interface FunctionPageProps {
  readonly descriptor: AnyDescriptor;
  readonly onBack: () => void;
  /** Another function that the words name. */
  readonly onOpen: (descriptor: AnyDescriptor) => void;
}

/** One function: what it is for, what it takes, where its equation comes from, and worked examples. */
export function FunctionPage({ descriptor, onBack, onOpen }: FunctionPageProps) {
  const decimal = useDecimalSign();
  const heading = useRef<HTMLHeadingElement>(null);
  // The page stands where the list was: whoever reads on, by eye or ear, begins at its top.
  useEffect(() => heading.current?.focus(), []);
  const { id, summary, cautions, equation, result } = descriptor;
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const examples: readonly Example[] = descriptor.examples;
  const sources: readonly Source[] = descriptor.sources;
  const text = (words: string) => <LinkedText words={words} own={id} onOpen={(other) => onOpen(functionNamed(other))} />;
  return (
    <article class="screen" aria-labelledby="function-title">
      <button type="button" class="quiet" onClick={onBack}>
        All functions
      </button>
      <h1 id="function-title" ref={heading} tabIndex={-1}>
        GYLE.{id}
      </h1>
      <p>{text(summary)}</p>
      {cautions && (
        <ul class="cautions" aria-label="Take care">
          {cautions.map((caution: string) => (
            <li key={caution}>{text(caution)}</li>
          ))}
        </ul>
      )}
      <h2>What you give it</h2>
      <dl>
        {parameters.map(([key, parameter]) => (
          <div key={key}>
            <dt>
              <code>{parameter.optional ? `[${argumentName(key)}]` : argumentName(key)}</code>
            </dt>
            <dd>{text(parameterText(parameter))}</dd>
          </div>
        ))}
      </dl>
      <h2>What you get</h2>
      <p>{text(resultText(result))}</p>
      <Equation equation={equation} text={text} />
      <h2>Examples</h2>
      <ul>
        {examples.map((example) => (
          <li key={formulaText(descriptor, example)}>
            <code>{asWritten(formulaText(descriptor, example), decimal)}</code>
            <br />
            {exampleAnswer(descriptor, example)
              .map((row) => row.join(" · "))
              .join("; ")}{" "}
            {exampleUnit(descriptor, example)}
            <span class="hint"> {exampleOrigin(descriptor, example)}</span>
          </li>
        ))}
      </ul>
      <PutForm descriptor={descriptor} />
      <h2>Where it comes from</h2>
      <ul>
        {sources.map(({ cite, where }) => (
          <li key={cite + where}>
            {cite}: {where}
          </li>
        ))}
      </ul>
    </article>
  );
}
