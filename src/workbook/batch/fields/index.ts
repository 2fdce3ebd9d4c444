import { describeFields } from "../describe/field";
import { blockFields } from "./blocks";
import { brewDayFields } from "./brew-day";
import { cardFields } from "./card";
import { ingredientFields } from "./ingredients";
import { packagingFields } from "./packaging";
import { readingFields } from "./readings";
import { tastingFields } from "./tasting";
import { waterFields } from "./water";
import { yeastFields } from "./yeast";

/** Everything that a brewer types into a batch sheet, in the order of the sheet and of a batch file. */
export const batchFields = describeFields({
  ...cardFields,
  ...waterFields,
  ...ingredientFields,
  yeast: { kind: "group", label: "Yeast", fields: yeastFields },
  ...brewDayFields,
  ...readingFields,
  packaging: { kind: "group", label: "Packaging", fields: packagingFields },
  tasting: { kind: "group", label: "Tasting", fields: tastingFields },
  ...blockFields,
});
export type BatchFields = typeof batchFields;
