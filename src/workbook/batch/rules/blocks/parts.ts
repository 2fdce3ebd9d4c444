import { refusal } from "../../../../functions/pack/check-words";
import { partNames, partRow, type PartField } from "../../fields/blocks/parts";
import { inParts, tooMuchInParts } from "../../sheet/parts";
import type { UnitWords } from "../../unit-words";
import { rule, silent, type CheckLine, type Rule } from "../rule";
import { unusableIn } from "../words";

const verdicts = partNames.map((name) => `part_${name}_verdict`);
const anyVerdict = (holds: (verdict: string) => string): string => `OR(${verdicts.map(holds).join(",")})`;
const own = (key: PartField, index: number): string => `INDEX(wort_parts,${partRow(key)},${index + 1})`;
const used = (index: number): string => `N(${own("volume", index)})>0`;

const isRefused = anyVerdict((verdict) => `ISNUMBER(FIND("${refusal}",${verdict}))`);
const isUnknown = anyVerdict((verdict) => `ISERROR(${verdict})`);

/** What the line about the pressure says of a sheet whose beer is packaged in parts: no figure is given for the whole. */
export const pressureOfParts: readonly Rule[] = [
  rule(
    "part-unknown",
    isUnknown,
    "Whether every part will hold cannot be judged: look at the parts below, at their kinds of bottle, places and gravities.",
    "Do not fill it.",
  ),
  rule(
    "part-refused",
    isRefused,
    "A part of this batch may not be filled so: see its verdict in “Several packagings”.",
    "It gets no figure.",
  ),
  silent("in-parts", inParts),
];

export const partsOfWortLine = (_: unknown, words: UnitWords): CheckLine => ({
  id: "parts",
  label: "Checks",
  // Glass under pressure.
  weight: "stop",
  lines: 3,
  steps: [
    ...unusableIn("volume", `INDEX(wort_parts,${partRow("volume")},0)`, "Beer in the parts"),
    silent("none", "parts_total=0"),
    rule(
      "into-unknown",
      'SUMPRODUCT((parts_into<>"")*(parts_into<>"bottles")*(parts_into<>"keg"))>0',
      "A part goes neither into bottles nor into a keg:",
      "choose one; until then it gets neither sugar nor pressure.",
    ),
    rule(
      "more-than-beer",
      tooMuchInParts,
      `"Not enough beer: "&FIXED(parts_total,2,TRUE)&" ${words.volume} in the parts, "&FIXED(parts_beer,2,TRUE)&" to share out. No sugar is given:"`,
      "it would go into less beer than it is for. Correct a part.",
    ),
    rule(
      "end-missing",
      `OR(${partNames.map((_name, index) => `AND(${used(index)},N(${own("gravity", index)})>0,N(${own("endsAt", index)})<=0)`).join(",")})`,
      "A part with a gravity of its own has no gravity at which it ends:",
      "type what its yeast is expected to leave. Until then it is not judged.",
    ),
    rule(
      "cannot-be-judged",
      isUnknown,
      "Whether a part will hold cannot be judged:",
      "look at its kind of bottle, its place, the air in the neck and its gravities. Do not fill it.",
    ),
    rule("refused", isRefused, "A part may not be filled so, and gets no figure: its verdict above says why, and what to do."),
    rule(
      "not-known-yet",
      `OR(${verdicts.map((verdict, index) => `AND(${used(index)},${verdict}="")`).join(",")})`,
      "Whether a part will hold is not known yet:",
      "fill in its carbonation, its kind of bottle and its warmest place, or those of section 8.",
    ),
    rule(
      "sugar-unknown",
      `OR(${partNames.map((name) => `ISERROR(part_${name}_sugar)`).join(",")})`,
      "The sugar of a part cannot be calculated:",
      "look at its kind, and at the warmest temperature since it finished. Do not guess it.",
    ),
    rule(
      "sugar-missing",
      `OR(${partNames.map((name, index) => `AND(INDEX(parts_into,1,${index + 1})="bottles",part_${name}_sugar="")`).join(",")})`,
      "Warmest since it finished is empty:",
      "until it is filled in, a part in bottles gets no sugar.",
    ),
    rule(
      "close",
      anyVerdict((verdict) => `LEFT(${verdict},6)="close:"`),
      "close: a part comes near what its bottles or its keg may bear.",
      "See above.",
    ),
    rule(
      "counted-twice",
      "N(bottles_filled)>0",
      "Cannot be counted twice: “Bottles filled” in section 8 is left out.",
      "Type them beside their part.",
    ),
    rule(
      "left-over",
      "IF(ISNUMBER(parts_left),parts_left>0.03*parts_beer,FALSE)",
      `"Cannot tell what becomes of "&FIXED(parts_left,2,TRUE)&" ${words.volume}: no part has them."`,
    ),
    rule(
      "bottles-more-than-beer",
      "parts_bottled+parts_kegged>1.1*parts_total",
      "Cannot be: more is filled than the parts held.",
      "Look at the bottles, at what one holds, and at the kegs.",
    ),
  ],
});
