import { alivePercent } from "../../core/yeast/aged";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { number, optional, percent } from "../vocabulary";

const day = (doc: string) =>
  number("date", { doc, limits: { atLeast: 32874, atMost: 73415 }, typical: 46114, hint: () => "type a date from 1990 to 2100" });

export const yeastAged = describeFunction({
  id: "YEAST.AGED",
  summary: "Share of the yeast still alive, by the date on the pack and the maker's own figure.",
  parameters: {
    madeOn: day("The date on which the pack was made."),
    today: day("The date that you ask about, for example TODAY()."),
    figure: percent("What the maker says is still alive, %, after the days beside it: for example 50 at the end of shelf life.", {
      limits: { above: 1, atMost: 100 },
      typical: 80,
      hint: percentHint,
    }),
    days: optional(
      number("days", { doc: "Days after which the figure holds: 30 when left out.", limits: { above: 0, atMost: 1100 }, typical: 30 }),
      30,
    ),
  },
  result: { kind: "number", quantity: "percent", doc: "Living cells, % of those in the fresh pack." },
  equation: "100 × (figure / 100)^((today − made_on) / days)",
  sources: [{ cite: "the maker's label or data sheet", where: "the figure; that as large a share dies every day is our assumption" }],
  examples: [
    { arguments: [46114, 46234, 50, 120], value: 50, tolerance: 1e-9, from: "the maker's figure itself" },
    { arguments: [46114, 46174, 80], value: 64, tolerance: 1e-9, from: "worked by hand: 0.80 × 0.80" },
  ],
  cautions: ["Holds for a pack that stayed as cold as the maker asks. A small trial in a glass of wort shows whether it lives."],
  compute: ({ madeOn, today, figure, days }) => alivePercent(madeOn, today, figure, days),
});
