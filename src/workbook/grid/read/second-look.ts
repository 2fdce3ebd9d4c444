/**
 * Somebody else may change the workbook between our looking and our writing: Excel then refuses what would clash, and
 * what was begun has been taken back. So look again and write once more, as if we had come after them.
 *
 * @param work all of it, from the looking on; it must leave the workbook as it was when it fails
 */
export async function withSecondLook<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (problem) {
    if (!isClash(problem)) throw problem;
    return work();
  }
}

/** A name that was free is taken, something that was there is gone, or cells hold what they did not hold when we looked. */
export function isClash(problem: unknown): boolean {
  const code = problem instanceof Error && "code" in problem ? problem.code : undefined;
  return code === "ItemAlreadyExists" || code === "ItemNotFound" || code === "InvalidArgument" || code === "JustChanged";
}
