export interface UnplugChoices {
  /** Whether what things cost goes along. */
  readonly prices: boolean;
  /** For a workbook of its own: formulas that speak of sheets left behind become values. */
  readonly standalone: boolean;
  /** The day of it, which is said beside what stands still; today without it. */
  readonly on?: number;
  /** What a copy is to be called; without it, after its original. */
  readonly copyName?: string;
  /** "for a moment": the copies keep the mark of a sheet that is nobody's, until whoever asked for them deletes them. */
  readonly stays?: "for a moment";
}

/** One sheet that was copied and unplugged. */
export interface UnpluggedSheet {
  readonly sheetName: string;
  readonly copyName: string;
  /** Formulas that calculate on without the add-in, and those that are values now, with the reason. */
  readonly plain: number;
  readonly values: readonly { readonly cell: string; readonly reason: string }[];
  readonly privateNotes: number;
  /** False in an Excel that knows no notes: then nothing says how to plug the copy in again. */
  readonly canPlugIn: boolean;
}
