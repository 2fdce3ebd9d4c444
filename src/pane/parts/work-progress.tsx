import type { RunningWork } from "./use-long-work";

export interface WorkProgressProps {
  /** What is going on: "Reading the workbook". */
  readonly label: string;
  readonly work: Pick<RunningWork, "progress" | "stop">;
}

/** How far long work has come, with a Stop button; nothing while none runs. */
export function WorkProgress({ label, work: { progress, stop } }: WorkProgressProps) {
  if (progress === undefined) return null;
  const known = progress !== "starting" && progress.total > 0;
  const words = known ? `${label}: ${progress.unit} ${Math.min(progress.done + 1, progress.total)} of ${progress.total}` : `${label}…`;
  return (
    <div class="work-progress">
      <p role="status">{words}</p>
      {known ? <progress aria-label={label} max={progress.total} value={progress.done} /> : <progress aria-label={label} />}
      <button type="button" onClick={stop}>
        Stop
      </button>
    </div>
  );
}
