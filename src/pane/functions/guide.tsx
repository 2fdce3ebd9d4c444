import { useState } from "preact/hooks";
import type { AnyDescriptor } from "../../functions/describe";
import { registry } from "../../functions/registry";
import { FunctionPage } from "./function-page";

const found = (words: string): AnyDescriptor[] => {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return registry.filter(({ id, summary }) => wanted.every((word) => `gyle.${id} ${summary}`.toLowerCase().includes(word)));
};

/** The places that functions are named after, in the order of the job. */
export const brewery: readonly { readonly place: string; readonly words: string }[] = [
  { place: "WORT", words: "Wort: sugar, gravity and colour" },
  { place: "HOPS", words: "Hops: bitterness" },
  { place: "WATER", words: "Water: how much, how hot, what is in it" },
  { place: "HEAT", words: "Heat: warming and chilling" },
  { place: "CLEAN", words: "Cleaning and sanitising" },
  { place: "YEAST", words: "Yeast: cells and what they eat" },
  { place: "LOG", words: "Log: reading a fermentation" },
  { place: "BEER", words: "Beer: strength, body, colour, style" },
  { place: "PACK", words: "Packaging: sugar, gas, glass" },
  { place: "DAY", words: "Brew day: the clock" },
  { place: "GAUGE", words: "Gauge: how sure a result is" },
];

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
      {brewery.map(({ place, words: placeWords }) => {
        const own = functions.filter(({ id }) => id.startsWith(`${place}.`));
        return own.length === 0 ? null : (
          <section key={place} aria-label={placeWords}>
            <h2>{placeWords}</h2>
            <ul class="functions">
              {own.map((descriptor) => (
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
      })}
    </section>
  );
}
