import { argumentName, type AnyDescriptor, type Example, type Parameter, type Source } from "../../functions/describe";
import { formulaText } from "../../functions/formula-text";
import { parameterText } from "../../functions/parameter-text";
import { PutForm } from "./put-form";

export interface FunctionPageProps {
  readonly descriptor: AnyDescriptor;
  readonly onBack: () => void;
}

/** One function: what it is for, what it takes, where its equation comes from, and worked examples. */
export function FunctionPage({ descriptor, onBack }: FunctionPageProps) {
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const examples: readonly Example[] = descriptor.examples;
  const sources: readonly Source[] = descriptor.sources;
  return (
    <article class="screen" aria-labelledby="function-title">
      <button type="button" class="quiet" onClick={onBack}>
        All functions
      </button>
      <h1 id="function-title">GYLE.{descriptor.id}</h1>
      <p>{descriptor.summary}</p>
      {descriptor.cautions && (
        <ul class="cautions" aria-label="Take care">
          {descriptor.cautions.map((caution: string) => (
            <li key={caution}>{caution}</li>
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
            <dd>{parameterText(parameter)}</dd>
          </div>
        ))}
      </dl>
      <h2>What you get</h2>
      <p>{descriptor.result.doc}</p>
      <p class="equation">{descriptor.equation}</p>
      <h2>Examples</h2>
      <ul>
        {examples.map((example) => (
          <li key={formulaText(descriptor, example)}>
            <code>{formulaText(descriptor, example)}</code>
            <br />
            {Array.isArray(example.value) ? example.value.map((row) => row.join(" · ")).join("; ") : String(example.value)}
            <span class="hint"> {example.from}</span>
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
