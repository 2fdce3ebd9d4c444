import { utilisationModels } from "../../../../core/hops/utilisation";
import { linesPoints } from "../../../grid/plan/sheet-builder";
import type { UnitSystem } from "../../../../functions/quantities";
import { fieldRows, type Field } from "../fields";
import { furtherClock } from "../clock-lines";
import { bitternessFormula } from "../hops";
import type { Block } from "./block";

const called: Readonly<Record<(typeof utilisationModels)[number], string>> = {
  tinseth: "Bitterness after Tinseth",
  rager: "Bitterness after Rager",
  kinetic: "Bitterness, kinetic model",
};

/** Mass of hops in a volume, as a brewer speaks of it: g/L, oz/US gal. */
const perVolume: Readonly<Record<UnitSystem, string>> = { metric: "g/L", us: "oz/US gal" };

const massAt = (place: string): string => `SUMIF(hop_minutes,"${place}",INDEX(hop_plan,0,2))`;

/** What the hops of the end bring, and what each model makes of all of them. */
export const lateHops: Block = {
  put(b, { units }, { lateHops: lines }, words) {
    if (!lines) return;
    const rows = b.rowsOf("hop_minutes");
    const shares = `$G$${rows[0] ?? 1}:$G$${rows.at(-1) ?? 1}`;
    const results: [string, Field][] = [
      ...utilisationModels.map((model): [string, Field] => [
        called[model],
        {
          content: bitternessFormula("HOPS.IBU", `"${model}"`),
          format: "whole",
          unit: `=IF(bitterness_model="${model}","IBU; the sheet goes by it","IBU")`,
          name: `ibu_${model}`,
        },
      ]),
      [
        "Hops in the stand",
        { content: `=IF(${massAt("stand")}=0,"",${massAt("stand")})`, format: "one", unit: words.smallMass, name: "stand_mass" },
      ],
      [
        "Bitterness from the stand",
        {
          content: `=IF(OR(stand_mass="",ISERROR(INDEX(${shares},1,1))),"",SUMIF(hop_minutes,"stand",${shares}))`,
          format: "one",
          unit: "IBU",
          name: "stand_bitterness",
        },
      ],
      ["Dry hops", { content: `=IF(${massAt("dry")}=0,"",${massAt("dry")})`, format: "one", unit: words.smallMass, name: "dry_mass" }],
      [
        "in the beer",
        {
          content: '=IF(OR(dry_mass="",N(beer_volume)=0),"",dry_mass/beer_volume)',
          format: units === "us" ? "two" : "one",
          unit: perVolume[units],
          name: "dry_rate",
        },
      ],
      [
        "Bitterness as it tastes, with them",
        {
          content: '=IF(COUNT(dry_effect)<2,"",INDEX(dry_effect,2,2))',
          format: "whole",
          unit: "IBU, ± a quarter",
          name: "dry_bitterness",
        },
      ],
      [
        "They go in on",
        {
          content: '=IF(OR(dry_mass="",dry_after="",pitched_at=""),"",INT(pitched_at)+dry_after)',
          format: "date",
          name: "dry_in",
        },
      ],
      ["and come out on", { content: '=IF(OR(dry_in="",dry_for=""),"",dry_in+dry_for)', format: "date", name: "dry_out" }],
    ];
    const top = b.row;
    fieldRows(b, [lines.model, lines.dryAfter, lines.dryFor], results);
    b.put(
      "Q",
      '=IF(OR(dry_mass="",N(beer_volume)=0),"",GYLE.HOPS.DRY(dry_mass,beer_volume,IF(N(ibu_plan)>0,ibu_plan,""),units))',
      { style: "workings", format: "one", spillsTo: `R${top + 2}` },
      top,
    );
    b.name("dry_effect", `Q${top}:R${top + 2}`);
    b.row -= 1;
    b.put("A", '=IF(COUNT(dry_effect)=0,"",INDEX(dry_effect,3,2))', { style: "message", format: "text", mergeTo: "I" });
    b.height(linesPoints(2));
    b.row += 1;
    furtherClock(b);
    b.gap();
  },
};
