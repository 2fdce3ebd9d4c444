import type { UnitSystem } from "../../../functions/quantities";
import { firstOf, text, unusable } from "./words";

const isBottled = 'into="bottles"';

/** Sugar in bottles is never reckoned without a word about what they can take. */
export function pressureMessage(units: UnitSystem): string {
  return firstOf([
    [`units<>"${units}"`, `"The units cell says “"&units&"”, but this sheet was made in ${units}: every figure on it is misread, the pressure too. Type ${units} again."`],
    ["ISERROR(into)", text("Into shows an error: choose bottles or keg.")],
    [`AND(NOT(${isBottled}),into<>"keg")`, text("Choose bottles or keg: until then neither sugar nor pressure is reckoned. Some of each: a sheet for each part.")],
    ...unusable("carbonation", "Carbonation wished"),
    ["N(carbonation)=0", text("Carbonation wished: none yet, so neither sugar nor pressure is reckoned.")],
    [`IF(AND(${isBottled},ISNUMBER(residual_gas)),residual_gas>=carbonation,FALSE)`, '"The beer already holds "&TEXT(residual_gas,"0.0")&" volumes of CO2: to get "&TEXT(carbonation,"0.0")&" no sugar is needed."'],
    [`AND(NOT(${isBottled}),ISERROR(keg_pressure))`, text("The pressure of the keg cannot be reckoned: look at the temperature at which it stands. Set none by guess.")],
    [`NOT(${isBottled})`, '""'],
    ["ISERROR(pressure_verdict)", text("Whether the glass takes it cannot be judged: look at the warmest place, the kind of bottle and the gravities. Do not bottle on it.")],
    ["ISERROR(sugar_mass)", text("The sugar cannot be reckoned: look at its kind, the warmest temperature since it finished, and the volume. Do not guess it.")],
    ['warmest_beer=""', text("Warmest since it finished is empty: until it is filled in, no sugar is reckoned.")],
    ['AND(sugar_mass<>"",pressure_verdict="")', text("Whether the glass takes it is not known yet: fill in the kind of bottle and the warmest place they will stand.")],
    ['LEFT(pressure_verdict,4)="over"', "pressure_verdict"],
  ]);
}
