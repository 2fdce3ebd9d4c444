import { useState } from "preact/hooks";
import type { AnyDescriptor } from "../../functions/describe";
import { findFunctions } from "../../functions/find-functions";
import { placeOf, places } from "../../functions/places";
import { registry } from "../../functions/registry";
import { FunctionPage } from "./function-page";

/** Every worksheet function, to search and to read about. */
export function FunctionsGuide() {
  const [question, setQuestion] = useState("");
  const [chosen, setChosen] = useState<AnyDescriptor>();
  if (chosen) return <FunctionPage key={chosen.id} descriptor={chosen} onOpen={setChosen} onBack={() => setChosen(undefined)} />;
  const isAsked = question.trim() !== "";
  const functions = findFunctions(question);
  return (
    <section class="screen" aria-labelledby="functions-title">
      <h1 id="functions-title">Functions</h1>
      <p class="lead">Type them into any cell: their names begin with the place in the brewery.</p>
      <div class="field">
        <label for="function-search">Look for</label>
        <input
          id="function-search"
          type="search"
          value={question}
          autocomplete="off"
          aria-describedby="function-search-help"
          onInput={(event) => setQuestion(event.currentTarget.value)}
        />
        <p id="function-search-help" class="hint">
          In your own words: bitterness, sugar for bottling, how strong.
        </p>
      </div>
      <p class="hint" role="status">
        {functions.length === 0
          ? "Nothing found. Try a single word, or another word for it."
          : `${functions.length} of ${registry.length}${isAsked ? ", the likeliest first" : ""}`}
      </p>
      {isAsked ? (
        <FunctionList functions={functions} onChoose={setChosen} />
      ) : (
        Object.entries(places).map(([place, title]) => (
          <section key={place} aria-label={title}>
            <h2>{title}</h2>
            <FunctionList functions={functions.filter(({ id }) => placeOf(id) === place)} onChoose={setChosen} />
          </section>
        ))
      )}
    </section>
  );
}

function FunctionList({
  functions,
  onChoose,
}: {
  readonly functions: readonly AnyDescriptor[];
  readonly onChoose: (descriptor: AnyDescriptor) => void;
}) {
  return (
    <ul class="functions">
      {functions.map((descriptor) => (
        <li key={descriptor.id}>
          <button type="button" class="quiet" onClick={() => onChoose(descriptor)}>
            GYLE.{descriptor.id}
          </button>
          <span>{descriptor.summary}</span>
        </li>
      ))}
    </ul>
  );
}
