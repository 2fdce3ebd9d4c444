import { refusal } from "../../../functions/pack/check-words";
import type { UnitSystem } from "../../../functions/quantities";
import { firstOf, text, unusable } from "./words";

const isBottled = 'into="bottles"';

/** Sugar in bottles, or a pressure on a keg, is never reckoned without a word about what they can take: the sheet's verdict. */
export function pressureMessage(units: UnitSystem): string {
  return firstOf([
    [`units<>"${units}"`, `"The units cell says “"&units&"”, but this sheet was made in ${units}: every figure on it is misread, the pressure too. Type ${units} again."`],
    ["ISERROR(into)", text("Into shows an error: choose bottles or keg.")],
    [`AND(NOT(${isBottled}),into<>"keg")`, text("Choose bottles or keg: until then neither sugar nor pressure is reckoned. Some of each: a sheet for each part.")],
    ...unusable("carbonation", "Carbonation wished"),
    ["N(carbonation)=0", text("Carbonation wished: none yet, so neither sugar nor pressure is reckoned.")],
    [`IF(AND(${isBottled},ISNUMBER(residual_gas)),residual_gas>=carbonation,FALSE)`, '"The beer already holds "&FIXED(residual_gas,1,TRUE)&" volumes of CO2: to get "&FIXED(carbonation,1,TRUE)&" no sugar is needed."'],
    ["ISERROR(pressure_verdict)", `IF(${isBottled},${text("Whether the glass takes it cannot be judged: look at the warmest place, the kind of bottle, the air in the neck and the gravities. Do not bottle on it.")},${text("The pressure of the keg cannot be reckoned: look at the temperature at which it stands. Set none by guess.")})`],
    [`AND(NOT(${isBottled}),ISERROR(keg_pressure))`, text("The pressure of the keg cannot be reckoned: look at the temperature at which it stands. Set none by guess.")],
    [`AND(${isBottled},ISERROR(sugar_mass))`, text("The sugar cannot be reckoned: look at its kind, the warmest temperature since it finished, and the volume. Do not guess it.")],
    [`AND(${isBottled},warmest_beer="")`, text("Warmest since it finished is empty: until it is filled in, no sugar is reckoned.")],
    ['pressure_verdict=""', `IF(${isBottled},${text("Whether the glass takes it is not known yet: fill in the kind of bottle and the warmest place they will stand.")},${text("Keg stands at: no temperature yet, so no pressure is reckoned.")})`],
    [`OR(ISNUMBER(FIND("${refusal}",pressure_verdict)),LEFT(pressure_verdict,6)="close:")`, "pressure_verdict"],
  ]);
}
