import { useState } from "preact/hooks";
import type { AnyDescriptor } from "../../functions/describe";
import { registry } from "../../functions/registry";
import { FunctionPage } from "./function-page";

const found = (words: string): AnyDescriptor[] => {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return registry.filter(({ id, summary }) => wanted.every((word) => `gyle.${id} ${summary}`.toLowerCase().includes(word)));
};

/** Every worksheet function, to search and to read about. */
export function FunctionsGuide() {
  const [words, setWords] = useState("");
  const [chosen, setChosen] = useState<AnyDescriptor>();
  if (chosen) return <FunctionPage descriptor={chosen} onBack={() => setChosen(undefined)} />;
  const functions = found(words);
  return (
    <section class="screen" aria-labelledby="functions-title">
      <h1 id="functions-title">Functions</h1>
      <p class="lead">Type them into any cell: their names begin with the place in the brewery.</p>
      <div class="field">
        <label for="function-search">Look for</label>
        <input id="function-search" type="search" value={words} autocomplete="off" onInput={(event) => setWords(event.currentTarget.value)} />
      </div>
      <p class="hint" role="status">
        {functions.length} of {registry.length}
      </p>
      <ul class="functions">
        {functions.map((descriptor) => (
          <li key={descriptor.id}>
            <button type="button" class="quiet" onClick={() => setChosen(descriptor)}>
              GYLE.{descriptor.id}
            </button>
            <span>{descriptor.summary}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
