import { beerForms } from "./beer";
import { dayForms } from "./day";
import { cleanForms, heatForms } from "./heat-and-clean";
import { hopsForms } from "./hops";
import { logForms } from "./log";
import { mashForms } from "./mash";
import { packForms } from "./pack";
import type { PlainForm, ValueOnly } from "./plain-form";
import { spread } from "./spread";
import { tasteForms } from "./taste";
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
    ...tasteForms,
    ...dayForms,
    "GAUGE.SPREAD": spread,
  }),
);
