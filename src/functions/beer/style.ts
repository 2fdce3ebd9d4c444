import { fitOf, styleNamed, stylesLike, type Range, type Style } from "../../core/beer/style";
import { ArgumentProblem } from "../cell-error";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { gravity, number, omissible } from "../vocabulary";

export const beerStyle = describeFunction({
  id: "BEER.STYLE",
  summary: "Holds a beer's figures against the ranges of a style, and says which fall inside.",
  parameters: {
    style: { kind: "text", doc: "Code or name of the style in the BJCP guidelines of 2021, such as 15B or Irish Stout." },
    originalGravity: omissible(gravity("Specific gravity of the wort when the yeast went in; left out, it is not judged.")),
    finalGravity: omissible(gravity("Specific gravity of the beer; left out, it is not judged.", { typical: 1.01 })),
    abv: omissible(
      number("percent", {
        doc: "Alcohol by volume, for example from GYLE.BEER.ABV; left out, it is not judged.",
        limits: { above: 0.2, atMost: 30 },
        typical: 5,
        hint: percentHint,
      }),
    ),
    ibu: omissible(
      number("bitterness", {
        doc: "Bitterness, for example from GYLE.HOPS.IBU; left out, it is not judged.",
        limits: { above: 0, atMost: 500 },
        typical: 30,
      }),
    ),
    srm: omissible(
      number("colourSrm", {
        doc: "Colour, for example from GYLE.WORT.COLOUR; left out, it is not judged.",
        limits: { above: 0, atMost: 300 },
        typical: 8,
      }),
    ),
  },
  result: {
    kind: "grid",
    doc: "Five rows: figure, your value, lowest and highest of the style, and inside, below or above; empty where you gave no value.",
    columns: ["figure", "value", "low", "high", "verdict"],
  },
  equation: "inside when low ≤ value ≤ high, rounded to 0.001 SG, 0.1 % alcohol, 1 IBU, half an SRM",
  sources: [
    { cite: "Beer Judge Certification Program, 2021 Beer Style Guidelines", where: "vital statistics of each style; numeric facts only" },
  ],
  examples: [
    {
      arguments: ["15B", 1.042, 1.01, 4.2, 50, 35],
      value: [
        ["original gravity", 1.042, 1.036, 1.044, "inside"],
        ["final gravity", 1.01, 1.007, 1.011, "inside"],
        ["alcohol, % v/v", 4.2, 3.8, 5, "inside"],
        ["bitterness, IBU", 50, 25, 45, "above"],
        ["colour, SRM", 35, 25, 40, "inside"],
      ],
      from: "BJCP 2021, 15B: OG 1.036 to 1.044, FG 1.007 to 1.011, ABV 3.8 to 5.0, IBU 25 to 45, SRM 25 to 40",
    },
    {
      arguments: ["american pale ale", 1.042],
      value: [
        ["original gravity", 1.042, 1.045, 1.06, "below"],
        ["final gravity", "", 1.01, 1.015, ""],
        ["alcohol, % v/v", "", 4.5, 6.2, ""],
        ["bitterness, IBU", "", 30, 50, ""],
        ["colour, SRM", "", 5, 10, ""],
      ],
      from: "BJCP 2021, 18B: OG 1.045 to 1.060",
    },
  ],
  cautions: [
    "A style is a description for competitions, not a law: good beer may lie outside.",
    "The letters of 21Ba to 21Bg and of 27B to 27I are ours: the guidelines name these styles without one. Their whole name works as well.",
    "Saison (25B) spans weak to strong and pale to dark; the colour of Fruit Lambic (23F) goes with the fruit.",
  ],
  compute: ({ style: name, originalGravity, finalGravity, abv, ibu, srm }) => {
    const style = wanted(name);
    return [
      row("original gravity", originalGravity, style.originalGravity, 0.001),
      row("final gravity", finalGravity, style.finalGravity, 0.001),
      row("alcohol, % v/v", abv, style.abvPercent, 0.1),
      row("bitterness, IBU", ibu, style.ibu, 1),
      row("colour, SRM", srm, style.srm, 0.5),
    ];
  },
});

const row = (figure: string, value: number | undefined, range: Range, step: number): (string | number)[] => [
  figure,
  value ?? "",
  ...range,
  value === undefined ? "" : fitOf(value, range, step),
];

function wanted(name: string): Style {
  const style = styleNamed(name);
  if (style !== undefined) return style;
  const near = stylesLike(name)
    .slice(0, 6)
    .map((like) => `${like.code} ${like.name}`);
  const help = near.length > 0 ? `did you mean ${near.join(", ")}?` : "some styles, such as 28A, have no figures in the guidelines";
  throw new ArgumentProblem(
    "#VALUE!",
    `style is the text "${name}"; it must be a code such as 15B, or the whole name of a style (${help})`,
  );
}
