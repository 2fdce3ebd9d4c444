import { describeFields } from "../describe/field";

/** One line of the tasting: a score and what one would say of it. */
const taste = <const Label extends string, const Row extends number>(label: Label, row: Row) =>
  ({
    kind: "group",
    label,
    fields: {
      score: {
        kind: "number",
        within: ["scores", row, 0],
        label,
        called: "score",
        role: "measured",
        format: "whole",
        limits: [1, 5],
        held: true,
        whole: true,
        blank: true,
      },
      words: { kind: "text", within: ["scores", row, 1], label: "Words", role: "measured", longest: 300 },
    },
  }) as const;

/** 9. Tasting and notes. */
export const tastingFields = describeFields({
  tastedOn: { kind: "moment", cell: "tasted_on", label: "Tasted on", role: "measured", format: "date", blank: true },
  looks: taste("Looks", 0),
  smells: taste("Smells", 1),
  tastes: taste("Tastes", 2),
  feels: taste("Feels", 3),
  again: taste("Would brew it again", 4),
  notes: { kind: "text", cell: "notes", label: "Notes", role: "measured", longest: 2000 },
});

/** What is judged, in the order of the sheet: each with a score and words. */
export const tastedLines = Object.values(tastingFields).filter((field) => field.kind === "group");

/** Lowest and highest score. */
export const scoreLimits = tastingFields.looks.fields.score.limits;
