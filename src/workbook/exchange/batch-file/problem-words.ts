import { ownEntry } from "../../../functions/own-entry";
import type { z } from "zod";
import { called, type Column, type Field, type Fields, type Table } from "../../batch/describe/field";
import { batchFields } from "../../batch/fields";

/** What zod found first, in a brewer's words: where, what is there, what may be there. */
export function problemWords({ issues }: z.ZodError, data: unknown): string {
  const issue = deepest(issues);
  const where = placeWords(issue.path);
  const found = shown(at(data, issue.path));
  switch (issue.code) {
    case "unrecognized_keys":
      return `${where} has an entry “${issue.keys[0]?.slice(0, 40) ?? ""}” that a batch file does not know.`;
    case "too_big":
      if (issue.origin === "array") return `${where} has more rows than the ${String(issue.maximum)} that the batch sheet holds.`;
      return issue.origin === "string"
        ? `${where} is longer than ${String(issue.maximum)} characters.`
        : `${where} is ${found}; it may be at most ${String(issue.maximum)}.`;
    case "too_small":
      return `${where} is ${found}; it must be at least ${String(issue.minimum)}.`;
    case "invalid_value":
      return `${where} is ${found}; it may be ${issue.values.map((value) => `“${String(value)}”`).join(", ")}.`;
    case "custom":
      return `${where} ${issue.message}: ${found}.`;
    case "invalid_type":
      return found === "missing"
        ? `${where} is missing.`
        : `${where} is ${found}; a ${issue.expected === "number" || issue.expected === "int" ? "number" : issue.expected === "string" ? "text" : issue.expected} is expected there.`;
    default:
      return `${where} is ${found}, which cannot stand there.`;
  }
}

/** Of the ways in which a "blank or number" failed, the one that says most. */
function deepest(issues: z.core.$ZodIssue[]): z.core.$ZodIssue {
  const [first] = issues;
  if (!first) throw new Error("zod gave no reason");
  if (first.code !== "invalid_union") return first;
  const within = first.errors.filter((branch) => branch.length > 0).at(-1);
  return within ? { ...deepest(within), path: [...first.path, ...(within[0]?.path ?? [])] } : first;
}

/** ["malt", 1, "mass"] → "malt, row 2, mass". */
function placeWords(path: readonly PropertyKey[]): string {
  if (path.length === 0) return "The batch";
  let fields: Fields | Table["columns"] = batchFields;
  return path
    .map((part) => {
      if (typeof part === "number") return `row ${part + 1}`;
      const field: Field | Column | undefined = ownEntry(fields, String(part));
      if (field?.kind === "group") fields = field.fields;
      if (field?.kind === "table") fields = field.columns;
      return field ? called(field) : String(part);
    })
    .join(", ");
}

function at(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inside, part) => (typeof inside === "object" && inside !== null ? (inside as Record<PropertyKey, unknown>)[part] : undefined),
    data,
  );
}

function shown(value: unknown): string {
  if (value === undefined) return "missing";
  if (typeof value === "string") return `“${value.slice(0, 60)}”`;
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  return Array.isArray(value) ? "a list" : "a group of entries";
}
