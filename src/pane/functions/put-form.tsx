import { useEffect, useRef, useState } from "preact/hooks";
import { argumentName, type AnyDescriptor, type Parameter } from "../../functions/describe";
import { parameterText } from "../../functions/parameter-text";
import {
  formulaOf,
  previewFormula,
  putIntoCell,
  readTarget,
  selectionFor,
  type Preview,
  type PutOutcome,
  type Target,
} from "../../workbook/care/explain/put-into-cell";
import type { CellValue } from "../../workbook/grid/read/named-cells";
import { asWritten } from "../../workbook/grid/formulas/writing";
import { useDecimalSign } from "../parts/decimal-sign";
import { failureWords, hostWords } from "../../workbook/grid/words/host-words";

const run = <T,>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run({ delayForCellEdit: true }, work);

/** Asks for a function's arguments, shows what it would answer, and writes it into the chosen cell. */
export function PutForm({ descriptor }: { readonly descriptor: AnyDescriptor }) {
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const decimal = useDecimalSign();
  const [target, setTarget] = useState<Target>();
  const [typed, setTyped] = useState<readonly string[]>(parameters.map(() => ""));
  const [preview, setPreview] = useState<Preview>();
  const [outcome, setOutcome] = useState<PutOutcome>();
  const [problem, setProblem] = useState<string>();
  const newest = useRef(0);
  const fail = (failure: unknown): void => setProblem(failureWords("Nothing was written.", failure));

  const take = async (): Promise<void> => {
    const found = await run(readTarget);
    setTarget(found);
    setOutcome(undefined);
    if (found.hasUnits)
      setTyped((before) => before.map((text, index) => (parameters[index]?.[0] === "units" && text === "" ? "units" : text)));
  };
  useEffect(() => void take().catch(fail), []);

  useEffect(() => {
    if (!target) return undefined;
    const turn = ++newest.current;
    const rest = setTimeout(() => {
      run((context) => previewFormula(context, descriptor, typed, decimal, target)).then(
        (found) => {
          if (turn === newest.current) setPreview(found);
        },
        (failure: unknown) => {
          if (turn === newest.current) setPreview({ kind: "wrong", words: hostWords(failure) });
        },
      );
    }, 200);
    return () => clearTimeout(rest);
  }, [target, typed, decimal]);

  const change = (index: number, text: string): void => {
    setOutcome(undefined);
    setTyped((before) => before.map((old, place) => (place === index ? text : old)));
  };
  const pick = async (index: number): Promise<void> => {
    if (target) change(index, await run((context) => selectionFor(context, target)));
  };
  const put = async (agreed?: CellValue): Promise<void> => {
    if (!target) return;
    setProblem(undefined);
    const spill = preview?.kind === "answer" ? preview : { rows: 1, columns: 1 };
    setOutcome(await run((context) => putIntoCell(context, target, formulaOf(descriptor, typed, decimal), spill, agreed)));
  };

  return (
    <form
      class="put"
      aria-labelledby="put-title"
      onSubmit={(event) => {
        event.preventDefault();
        void put().catch(fail);
      }}
    >
      <h2 id="put-title">Put into a cell</h2>
      <div class="row-of-buttons">
        <p>
          Into <strong>{target ? `${target.address} on “${target.sheet}”` : "…"}</strong>
        </p>
        <button type="button" onClick={() => void take().catch(fail)}>
          Use the selected cell
        </button>
      </div>
      {parameters.map(([key, parameter], index) => (
        <div key={key} class="field">
          <label for={`put-${key}`}>
            {argumentName(key)}
            {parameter.optional ? " (may stay empty)" : ""}
          </label>
          <div class="with-button">
            <input
              id={`put-${key}`}
              type="text"
              autocomplete="off"
              spellcheck={false}
              value={typed[index] ?? ""}
              aria-describedby={`put-${key}-help`}
              onInput={(event) => change(index, event.currentTarget.value)}
            />
            <button type="button" aria-label={`Use the selection for ${argumentName(key)}`} onClick={() => void pick(index).catch(fail)}>
              Selection
            </button>
          </div>
          <p id={`put-${key}-help`} class="hint">
            {parameterText(parameter)}
          </p>
        </div>
      ))}
      <p class="formula">
        <code>{asWritten(formulaOf(descriptor, typed, decimal), decimal)}</code>
      </p>
      <div role="status">
        {preview?.kind === "answer" && (
          <p class="answer">
            <span>would answer</span> {preview.shown}
          </p>
        )}
        {preview !== undefined && preview.kind !== "answer" && <p class={preview.kind === "wrong" ? "problem" : "hint"}>{preview.words}</p>}
      </div>
      <button type="submit" class="main-action" disabled={!target}>
        Put into {target?.address ?? "the cell"}
      </button>
      <div aria-live="polite" class="outcome">
        {problem !== undefined && <p class="bad">{problem}</p>}
        {outcome?.kind === "written" && <p class="good">Written. The cell shows {outcome.shown === "" ? "nothing yet" : outcome.shown}.</p>}
        {outcome?.kind === "occupied" && (
          <>
            <p class="bad">{outcome.words}</p>
            {outcome.holds !== undefined && (
              <button type="button" onClick={() => void put(outcome.holds).catch(fail)}>
                Replace what is there
              </button>
            )}
          </>
        )}
      </div>
    </form>
  );
}
