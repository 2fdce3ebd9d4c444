import type { Problem } from "../../workbook/care/explain/explanation";
import { callsAsWritten } from "../../workbook/grid/formulas/writing";
import { useDecimalSign } from "../parts/decimal-sign";
import { GoTo } from "../parts/go-to";

export interface ProblemNoteProps {
  readonly problem: Problem;
  /** An error; otherwise something that is only still to come. */
  readonly isError: boolean;
  readonly onLost: (message: string) => void;
}

/** What is wrong, what to do, and a way there. */
export function ProblemNote({ problem: { what, remedy, place }, isError, onLost }: ProblemNoteProps) {
  const decimal = useDecimalSign();
  return (
    <div class={isError ? "note wrong" : "note"}>
      <p>
        <strong>{callsAsWritten(what, decimal)}</strong>
      </p>
      <p>{callsAsWritten(remedy, decimal)}</p>
      {place && <GoTo place={place} label={`Go to ${place.range}`} onProblem={onLost} />}
    </div>
  );
}
