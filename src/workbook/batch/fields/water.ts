import { describeFields } from "../describe/field";
import { volumes } from "../describe/usual-limits";
import { kitFields } from "./kit";

/** 2. Water and kit. */
export const waterFields = describeFields({
  /** Water added in the fermenter; 0 = the whole volume is boiled. */
  topUp: {
    kind: "number",
    cell: "top_up",
    label: "Top-up water",
    measure: "volume",
    format: "two",
    limits: volumes,
    note: "0 means that the whole volume is boiled. With a small kettle, boil a part and top up with clean cold water in the fermenter; bitterness then follows the stronger wort in the kettle.",
  },
  salts: { kind: "text", cell: "salts", label: "Salts, other treatment", called: "salts", longest: 300 },
  /** As on the kit sheet; "" = the usual one. */
  kitName: { kind: "text", since: 2, cell: "kit_name", label: "Planned on the kit:", called: "kit's name", longest: 120 },
  kit: { kind: "group", label: "Kit", emptied: "usual", fields: kitFields },
});
