import { bitternessAfterDryHopping, mostDryHopsGPerL } from "../../core/hops/dry";
import { describeFunction } from "../describe";
import { number, omissible, smallMass, units, volume } from "../vocabulary";

/** A spilled answer can carry its caution: this one must not be missed. */
export const dryHopCaution =
  "Dry hops can wake the yeast: the gravity may fall by up to 0.008 more, which is 4 volumes of gas. Bottle only when two readings a day apart agree, the first of them a day or more after the hops.";

export const hopsDry = describeFunction({
  id: "HOPS.DRY",
  summary: "What dry hops come to in a litre, and what they do to the bitterness.",
  parameters: {
    mass: smallMass("Mass of the dry hops.", { typical: 80 }),
    volume: volume("Beer that they go into."),
    ibu: omissible(
      number("bitterness", {
        doc: "Bitterness from the boil and the stand, as GYLE.HOPS.IBU gives it; without it no bitterness is given.",
        limits: { above: 0, atMost: 500 },
        typical: 30,
      }),
    ),
    units,
  },
  result: {
    kind: "grid",
    doc: `Three rows: rate (g/L or oz/US gal), bitterness as it tastes (IBU, ± a quarter), and what to wait for before bottling. None above ${mostDryHopsGPerL} g/L.`,
    columns: ["what", "value"],
  },
  equation: "rate = mass / volume; bitterness = IBU × exp(−0.06 g/L) + 0.66 × 3 mg/g × g/L",
  sources: [
    { cite: "J. P. Maye and R. Smith, MBAA Technical Quarterly 53(3), 2016", where: "iso-alpha acid lost to dry hops; from memory" },
    { cite: "J. P. Maye, R. Smith and J. Leker, MBAA Technical Quarterly 53(1), 2016", where: "humulinones in pellets; from memory" },
    {
      cite: "V. Algazzali and T. Shellhammer, Journal of the ASBC 74(1), 2016",
      where: "humulinones taste 66 % ± 13 % as bitter; from memory",
    },
    {
      cite: "K. R. Kirkpatrick and T. H. Shellhammer, Journal of Agricultural and Food Chemistry 66, 2018",
      where: "enzymes of hops make dextrins fermentable: 1.9 °P in 40 days; from memory",
    },
    {
      cite: "S. R. Lafontaine and T. H. Shellhammer, Journal of the Institute of Brewing 124, 2018",
      where: "2 to 16 g/L; above 8 g/L more herbs and tea than fruit; from memory",
    },
  ],
  examples: [
    {
      arguments: [154.8, 20, 48],
      value: [
        ["rate", 7.74],
        ["bitterness, as it tastes", 45.5],
        ["before bottling", dryHopCaution],
      ],
      tolerance: 0.8,
      from: "Maye and Smith 2016, from memory: 48 mg/L fall to 30 while 24 of humulinones come in; 30 + 0.66 × 24 = 45.8",
    },
    {
      arguments: [4, 5, null, "us"],
      value: [
        ["rate", 0.8],
        ["bitterness, as it tastes", ""],
        ["before bottling", dryHopCaution],
      ],
      tolerance: 1e-9,
      from: "worked by hand: 4 oz in 5 US gal",
    },
  ],
  cautions: [
    "Never close or bottle beer soon after dry hopping: it can ferment on for weeks, and burst bottles. Cold, short contact (1 to 3 days) keeps that small.",
    "Hops dropped into carbonated beer make it gush: let the gas off first, add them slowly.",
    "Weakly bittered beer gains bitterness, strongly bittered beer loses some; alpha acid hardly matters, since it does not dissolve in cold beer.",
  ],
  compute: ({ mass, volume: litres, ibu }, { show }) => {
    const after = bitternessAfterDryHopping(ibu ?? 0, mass / litres);
    return [
      ["rate", show("hopRate", mass / litres)],
      ["bitterness, as it tastes", ibu === undefined ? "" : show("bitterness", after)],
      ["before bottling", dryHopCaution],
    ];
  },
});
