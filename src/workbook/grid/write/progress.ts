import { ToldInFull } from "../words/told-in-full";

/** How far a long piece of work has come: "sheet 12 of 300". */
export interface Progress {
  readonly done: number;
  readonly total: number;
  /** What is counted, in the singular: "sheet", "batch". */
  readonly unit: string;
}

/** What long work is given by the one who started it. Everything may be left out. */
export interface LongWork {
  /** Aborted by the Stop button. Looked at between round trips only, so that nothing is left half done. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
}

/** Ends long work that was told to stop. Whoever writes must see to it that this comes before the first write. */
export class Stopped extends ToldInFull {
  constructor() {
    super("Stopped, as you asked. Nothing was changed.");
    this.name = "Stopped";
  }
}

/**
 * Works through many things a few at a time: says how far it is before each group, and ends with `Stopped` when it was
 * told to. Between groups the page gets a moment to draw and to take the click on Stop.
 *
 * @param groups made by `groupsOf`, so that each costs about one round trip
 */
export async function throughGroups<T>(
  groups: readonly (readonly T[])[],
  unit: string,
  { signal, onProgress }: LongWork,
  work: (group: readonly T[]) => Promise<void>,
): Promise<void> {
  const total = groups.reduce((sum, { length }) => sum + length, 0);
  let done = 0;
  for (const group of groups) {
    onProgress?.({ done, total, unit });
    await moment();
    if (signal?.aborted) throw new Stopped();
    await work(group);
    done += group.length;
  }
  onProgress?.({ done, total, unit });
}

/** Consecutive things in groups of at most `most` weight; a thing that is heavier by itself is a group of its own. */
export function groupsOf<T>(things: readonly T[], weight: (thing: T) => number, most: number): T[][] {
  const groups: T[][] = [];
  let sum = Infinity;
  for (const thing of things) {
    const own = weight(thing);
    if (sum + own > most) {
      groups.push([]);
      sum = 0;
    }
    groups.at(-1)?.push(thing);
    sum += own;
  }
  return groups;
}

const moment = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
