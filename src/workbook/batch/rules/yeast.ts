import type { BlockKey } from "../fields/blocks";
import { rule, silent, type CheckLine, type Rule } from "./rule";
import { shareOfOne, unusable } from "./words";

/** Without an attenuation a fermentation that stopped too early passes for a finished one. */
export const yeastLine = (blocks: readonly BlockKey[]): CheckLine => ({
  id: "yeast",
  label: "Yeast",
  weight: "look",
  steps: [
    ...unusable("packs_in_hand", "Packs in hand"),
    ...unusable("cells_per_pack", "Cells in one pack"),
    ...unusable("viability", "Still alive"),
    ...unusable("pitch_rate", "Pitching rate"),
    ...unusable("attenuation", "Apparent attenuation"),
    ...(["viability", "attenuation"] as const).flatMap((name): Rule[] => {
      const label = name === "viability" ? "Still alive" : "Apparent attenuation";
      return [
        rule(`${name}-above-all`, `N(${name})>100`, `"${label}: "&${name}&" %? More than all of it cannot be."`),
        shareOfOne(name, label),
      ];
    }),
    rule(
      "attenuation-missing",
      "AND(COUNT(readings)>0,N(attenuation)=0)",
      "What apparent attenuation do you expect?",
      "Without that nobody sees whether it stopped too early.",
    ),
    rule(
      "packs-unknown",
      "ISERROR(packs_to_pitch)",
      "The packs cannot be calculated:",
      "look at volume, malt and the figures of the yeast.",
    ),
    // What a starter grows is not to be bought.
    ...(blocks.includes("starter") ? [silent("starter-grows-it", "ISNUMBER(starter_volume)")] : []),
    silent("unknown", 'OR(packs_in_hand="",packs_to_pitch="")'),
    rule(
      "too-few-packs",
      "packs_in_hand<packs_to_pitch",
      '"Too little yeast: "&packs_to_pitch&IF(packs_to_pitch=1," pack"," packs")&" wanted, "&packs_in_hand&" in hand."',
    ),
  ],
});
