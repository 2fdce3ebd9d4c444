import { registry } from "../../../functions/registry";

/** The function that somebody may have meant: most alike, and alike enough. */
export function likelyFunction(id: string): string | undefined {
  const wanted = id.toUpperCase();
  const [best] = registry
    .map((candidate) => ({
      id: candidate.id,
      steps: stepsBetween(wanted, candidate.id) - (lastPart(candidate.id) === lastPart(wanted) ? 3 : 0),
    }))
    .sort((one, other) => one.steps - other.steps);
  return best && best.steps <= Math.max(2, wanted.length / 3) ? best.id : undefined;
}

const lastPart = (id: string): string => id.slice(id.lastIndexOf(".") + 1);

/** How many letters must be put in, taken out or changed (Levenshtein, 1966). */
function stepsBetween(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let index = 1; index <= one.length; index += 1) {
    const next = [index];
    for (let place = 1; place <= other.length; place += 1) {
      const change = (row[place - 1] ?? 0) + (one[index - 1] === other[place - 1] ? 0 : 1);
      next.push(Math.min(change, (row[place] ?? 0) + 1, (next[place - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[other.length] ?? 0;
}
