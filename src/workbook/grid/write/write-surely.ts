import { hostWords } from "../words/host-words";
import { ToldInFull, Unsure } from "../words/told-in-full";

/** How the workbook stands after a write of which nobody knows how it ended. */
export type Standing = "nothing" | "half" | "everything";

export interface Writing {
  /** What is written, as it is looked for: "“Batch 7”", "the readings on “Batch 7”". */
  readonly place: string;
  /** Queues everything and sends it. */
  readonly write: () => Promise<void>;
  /** Asks the workbook how far it came. */
  readonly look: (problem: unknown) => Promise<Standing>;
  /** From half to nothing. It may be asked twice. */
  readonly takeBack: () => Promise<void>;
}

/**
 * The one way of writing. Excel carries out what stands before a failing step, and an answer can get lost on its way after
 * everything was carried out. So whoever wrote and got no answer looks: what is there in full counts as done, what is there
 * by half is taken back, and where Excel does not answer any more, that is said, with the place to look at.
 *
 * @throws what the write threw, when nothing is left of it; Unsure, when that is not known or could not be brought about
 */
export async function writeSurely({ place, write, look, takeBack }: Writing): Promise<void> {
  try {
    await write();
  } catch (problem) {
    if (problem instanceof ToldInFull && problem.isSettled) throw problem;
    const standing = problem instanceof TakeBack ? "half" : await twice(() => look(problem)).catch(() => undefined);
    if (standing === "everything") return;
    if (standing === undefined)
      throw new Unsure(`Writing broke off, and it is not known how much of it was done: look at ${place}. ${hostWords(problem)}`);
    if (standing === "half")
      await twice(takeBack).catch(() => {
        throw new Unsure(`Writing broke off half-way and could not be taken back: look at ${place}. ${hostWords(problem)}`);
      });
    throw problem;
  }
}

/** Thrown by a write that was done in full and must not stay. */
export class TakeBack extends ToldInFull {
  override name = "TakeBack";
}

/** What only asks, or tidies up, is asked once more when it fails. */
export async function twice<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch {
    return work();
  }
}
