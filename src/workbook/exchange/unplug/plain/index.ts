import { beerForms } from "./beer";
import { cleanForms, heatForms } from "./heat-and-clean";
import { hopsForms } from "./hops";
import { dayForms, gaugeForms, logForms } from "./log-and-day";
import { mashForms } from "./mash";
import { packForms } from "./pack";
import type { PlainForm, ValueOnly } from "./plain-form";
import { waterForms } from "./water";
import { wortForms } from "./wort";
import { yeastForms } from "./yeast";

/** Every worksheet function: its plain form, or why it becomes a value. */
export const plainForms: ReadonlyMap<string, PlainForm | ValueOnly> = new Map<string, PlainForm | ValueOnly>(
  Object.entries({
    ...wortForms,
    ...hopsForms,
    ...waterForms,
    ...mashForms,
    ...heatForms,
    ...cleanForms,
    ...yeastForms,
    ...logForms,
    ...beerForms,
    ...packForms,
    ...dayForms,
    ...gaugeForms,
  }),
);
