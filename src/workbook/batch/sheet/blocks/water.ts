import { calciumCarbonateMgPerMeq } from "../../../../core/water/acid";
import { ionNames, molar } from "../../../../core/water/ions";
import { ionLimits } from "../../fields/blocks/water";
import type { SheetLine } from "../../derived/sheet-lines";
import { isAcid } from "../acids";
import { fieldRows, type BatchLines, type Field } from "../fields";
import type { Block } from "./block";

/** A column for each ion. */
const letters = ["B", "C", "D", "E", "F", "G"] as const;
const symbols = ["Ca", "Mg", "Na", "Cl", "SO4", "HCO3"] as const;

/** Of bicarbonate in mg/L, what a report calls alkalinity as calcium carbonate. */
export const alkalinityOfBicarbonate = (calciumCarbonateMgPerMeq / molar.bicarbonate).toFixed(4);

/** Water, its salts, and what they make of it. The six ions stand side by side, as in a report. */
export const waterTreatment: Block = {
  put(b, { method, waterTreatment: typed }, { waterTreatment: lines }, words) {
    if (!lines || !typed) return;
    const mashes = method === "all-grain";
    const heading = b.row;
    b.put("A", "Dissolved, mg/L", { style: "heading" });
    letters.forEach((letter, index) => b.put(letter, symbols[index] ?? "", { style: "headingRight" }));
    const [source, treated, target] = [heading + 1, heading + 2, heading + 3];
    const row = (label: string, at: number, name: "source_water" | "treated_water" | "target_water"): void => {
      b.put("A", label, { style: "label" }, at);
      b.name(name, `B${at}:G${at}`);
    };
    row("Your water", source, "source_water");
    row("As you brew with it", treated, "treated_water");
    row("Target", target, "target_water");
    ionNames.forEach((ion, index) => {
      const letter = letters[index] ?? "";
      b.put(letter, typed.source[ion], { style: "input", format: "whole", between: ionLimits }, source);
      b.put(letter, `=IF(COUNT(treated_ions)=0,"",INDEX(treated_ions,${index + 1},2))`, { style: "keyResult", format: "whole" }, treated);
      b.put(letter, typed.target[ion], { style: "input", format: "whole", between: ionLimits }, target);
    });
    b.put("H", "by the supplier's report", { style: "unit" }, source);
    b.put("H", "diluted, with the salts below", { style: "unit" }, treated);
    b.put("H", "that you aim at; may stay empty", { style: "unit" }, target);
    spilled(b, heading);
    b.row = heading + 4;
    const salts = [
      wanted(lines.gypsum, 3),
      wanted(lines.calciumChloride, 4),
      wanted(lines.epsomSalt, 5),
      lines.magnesiumChloride,
      wanted(lines.tableSalt, 6),
      wanted(lines.bakingSoda, 7),
      lines.chalk,
      lines.slakedLime,
    ];
    const first = b.row + 2;
    b.name("salt_bill", `A${first}:B${first + salts.length - 1}`);
    const [intoLabel, into] = lines.saltsInto;
    const results: [string, Field][] = [
      [
        "Water that is treated",
        {
          content: mashes
            ? `=IF(salts_into="the mash water",IF(N(mash_water)=0,"",mash_water),IF(ISNUMBER(water_collect),water_collect,""))`
            : '=IF(ISNUMBER(water_collect),water_collect,"")',
          format: "two",
          unit: words.volume,
          name: "treated_volume",
        },
      ],
      [
        "Alkalinity as calcium carbonate",
        {
          content: `=IF(COUNT(treated_ions)=0,"",INDEX(treated_ions,6,2)*${alkalinityOfBicarbonate})`,
          format: "whole",
          unit: "mg/L",
          name: "alkalinity_treated",
        },
      ],
      [
        "Residual alkalinity",
        {
          content:
            '=IF(alkalinity_treated="","",GYLE.WATER.ALKALINITY(alkalinity_treated,INDEX(treated_ions,1,2),INDEX(treated_ions,2,2)))',
          format: "whole",
          unit: "mg/L; it raises the pH of the mash",
          name: "residual_alkalinity",
        },
      ],
      [
        "Sulfate for each chloride",
        {
          content: '=IF(COUNT(treated_ions)=0,"",IF(INDEX(treated_ions,4,2)<1,"",INDEX(treated_ions,5,2)/INDEX(treated_ions,4,2)))',
          format: "one",
          unit: "above 2 tastes drier, below 1 rounder",
          name: "sulfate_to_chloride",
        },
      ],
    ];
    if (mashes) results.push(...ofTheMash(lines.mash));
    fieldRows(
      b,
      [wantedShare(lines.demineralisedPercent), [intoLabel, mashes ? into : { ...into, choices: ["all the water"] }], ...salts],
      results,
    );
  },
};

/** What the target asks for, beside what is typed. */
const wanted = ([label, field]: SheetLine, row: number): SheetLine => [
  label,
  { ...field, unit: `=IF(COUNT(salts_wanted)=0,"g","g; target "&FIXED(INDEX(salts_wanted,${row},2),1,TRUE))` },
];
const wantedShare = ([label, field]: SheetLine): SheetLine => [
  label,
  {
    ...field,
    unit: '=IF(COUNT(salts_wanted)=0,"%","%; target "&FIXED(100*INDEX(salts_wanted,2,2)/(INDEX(salts_wanted,1,2)+INDEX(salts_wanted,2,2)),0,TRUE))',
  },
];

/** Malts, mash water with its salts: what stands first in both functions of the mash. */
const mashOf = "malt,mash_water,alkalinity_treated,INDEX(treated_ions,1,2),INDEX(treated_ions,2,2)";
const noMash = 'OR(alkalinity_treated="",N(mash_water)=0)';

/** The pH to expect with what is typed, and what would bring it to the target while nothing is. */
const ofTheMash = (lines: NonNullable<BatchLines["waterTreatment"]>["mash"]): [string, Field][] => [
  lines.corrector,
  lines.strengthPercent,
  lines.amount,
  [
    "pH of the mash to expect",
    {
      content: `=IF(${noMash},"",GYLE.MASH.ACIDITY(${mashOf},mash_corrector,mash_acid_strength,N(mash_acid_amount),colour_scale,units))`,
      format: "two",
      unit: "± 0.1, by the colours of the malts",
      name: "mash_ph",
      style: "keyResult",
    },
  ],
  lines.targetPh,
  [
    "For the target",
    {
      content:
        `=IF(OR(${noMash},N(mash_target)=0,N(mash_acid_amount)>0),"",IF(IF(${isAcid("mash_corrector")},mash_ph<=mash_target,mash_ph>=mash_target),0,` +
        `GYLE.MASH.CORRECT(${mashOf},mash_target,mash_corrector,mash_acid_strength,colour_scale,units)))`,
      format: "one",
      unit: `=IF(${isAcid("mash_corrector")},"mL; add half, stir, measure","g; add half, stir, measure")`,
      name: "mash_correction",
    },
  ],
  lines.measuredPh,
];

/** The ions of what is collected, and those with the salts in it, outside the printed page. */
function spilled(b: Parameters<Block["put"]>[0], heading: number): void {
  const row = heading + 1;
  b.put("Q", "Ions, diluted; then with the salts", { style: "hint" }, heading);
  ["Q", "R", "S", "T", "U", "V"].forEach((letter, index) => {
    const source = `${letters[index] ?? ""}${row}`;
    b.put(letter, `=IF(COUNT(source_water)=0,"",N(${source})*(1-N(demineralised)/100))`, { style: "workings", format: "one" }, row);
  });
  b.name("diluted_water", `Q${row}:V${row}`);
  b.put(
    "Q",
    '=IF(OR(COUNT(source_water)=0,N(treated_volume)=0),"",GYLE.WATER.IONS(salt_bill,treated_volume,diluted_water,units))',
    { style: "workings", format: "one", spillsTo: `R${row + 6}` },
    row + 1,
  );
  b.name("treated_ions", `Q${row + 1}:R${row + 6}`);
  // Beside the ions, so that it ends above the block's last row: what comes next begins there.
  b.put("X", "For the target", { style: "hint" }, heading);
  b.put(
    "X",
    '=IF(OR(COUNT(source_water)=0,COUNT(target_water)=0,N(treated_volume)=0),"",GYLE.WATER.TARGET(source_water,target_water,treated_volume,,"yes",units))',
    { style: "workings", format: "one", spillsTo: `Z${row + 12}` },
    row,
  );
  b.name("salts_wanted", `X${row}:Z${row + 12}`);
  b.put(
    "Q",
    '=IF(COUNT(source_water)<6,"",INDEX(GYLE.WATER.BALANCE(source_water),4,2))',
    { style: "workings", name: "report_verdict" },
    row + 7,
  );
}
