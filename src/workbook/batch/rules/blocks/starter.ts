import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine } from "../rule";
import { unusable } from "../words";
import type { Chosen } from "./chosen";

/** Of a vessel, what may be filled: the rest is for the foam (common practice). */
const fullest = 0.75;

export const starterLine = (_: Chosen, words: UnitWords): CheckLine => ({
  id: "starter",
  label: "Checks",
  weight: "look",
  steps: [
    ...unusable("starter_packs", "Packs into the starter"),
    ...unusable("starter_gravity", "Gravity of the starter"),
    ...unusable("starter_vessel", "Its vessel holds"),
    rule(
      "cells-missing",
      "AND(N(starter_packs)>0,N(cells_per_pack)=0)",
      "How many cells are in a pack? Section 5 does not say it,",
      "and until then nobody knows how large a starter must be.",
    ),
    rule(
      "cannot",
      "ISERROR(starter_volume)",
      "No single starter grows so few cells to so many:",
      "more packs, or a small starter first that feeds a larger one. The cell tells the most that one step gives.",
    ),
    rule(
      "none-needed",
      "IF(ISNUMBER(starter_volume),starter_volume=0,FALSE)",
      "There are cells enough without a starter:",
      "pitch the packs as they are.",
    ),
    rule(
      "dry-yeast",
      'IF(ISNUMBER(starter_volume),ISNUMBER(SEARCH("dry",yeast_name)),FALSE)',
      "Dry yeast seldom wants a starter: it was grown with air and fed before it was dried.",
      "Pitch enough packs instead, wetted first if their label says so (common practice).",
    ),
    rule(
      "vessel-too-small",
      `IF(AND(ISNUMBER(starter_volume),N(starter_vessel)>0),starter_volume>${fullest}*starter_vessel,FALSE)`,
      `"The starter of "&FIXED(starter_volume,2,TRUE)&" ${words.volume} and its foam want a vessel of "&FIXED(starter_volume/${fullest},2,TRUE)&":"`,
      "a larger one, or two steps.",
    ),
    rule(
      "more-packs-than-in-hand",
      'IF(packs_in_hand="",FALSE,N(starter_packs)>packs_in_hand)',
      '"The starter takes "&starter_packs&IF(starter_packs=1," pack"," packs")&"; in hand: "&packs_in_hand&"."',
    ),
    rule(
      "too-late",
      "AND(N(starter_made_on)>0,N(brewed_on)>0,starter_made_on>=brewed_on)",
      "The starter was made on the brew day or after it:",
      "it grows for a day at least. Pitch once it has settled.",
    ),
  ],
});
