import { twoLinesPoints, type SheetBuilder } from "../plan/sheet-builder";
import type { BatchContents, Method } from "./contents";
import { section } from "./fields";
import { gravityAllowance } from "./gravity-allowance";
import type { UnitWords } from "./unit-words";

/**
 * One thing that the sheet watches. `message` is a native formula that gives the words to show, or "" when there is
 * nothing to say. "look" wants a second look; "stop" wants the brewer to wait, since somebody could get hurt or the
 * batch be lost.
 */
interface Check {
  readonly label: string;
  readonly weight: "look" | "stop";
  readonly message: string;
}

const gravityText = (name: string): string => `TEXT(${name},"0.000")`;

/** Extract and volume fix the gravity, so a reading far from it is doubted, not the malt. */
const extractGravityMessage =
  `IF(OR(og_reached="",og_expected=""),"",IF(og_reached-og_expected>${gravityAllowance},` +
  `"Reading "&${gravityText("og_reached")}&" is more than the malt can give ("&${gravityText("og_expected")}&"). "&IF(N(top_up)>0,"Usual cause: sampled before the top-up water was mixed in. ","Usual cause: syrup not stirred in, or less wort than written. ")&"Trust "&${gravityText("og_expected")}&"; stir, sample again.",` +
  `IF(og_expected-og_reached>${gravityAllowance},"Reading "&${gravityText("og_reached")}&" is less than the malt gives ("&${gravityText("og_expected")}&"). "&IF(N(top_up)>0,"Usual cause: top-up water lying on top, not mixed in. ","Usual cause: extract left in the tin or on the bottom, or more wort than written. ")&"Trust "&${gravityText("og_expected")}&"; stir, sample again.","")))`;

/** A mash may give less or more; what it cannot give is more than all of the grain's sugar. */
const mashGravityMessage =
  `IF(og_reached="","",IF(ISERROR(efficiency_reached),"Reading "&${gravityText("og_reached")}&" is more or less than this grain can give at all. Usual cause: not stirred, or sampled before the top-up water was mixed in. Stir, sample again.",` +
  'IF(efficiency_reached="","",IF(ABS(efficiency_reached-grain_efficiency)>10,"The grain gave "&TEXT(efficiency_reached,"0")&" % of its yield, planned were "&TEXT(grain_efficiency,"0")&" %: check crush, volume and reading; plan with it next time.",""))))';

const steepingMessage = (words: UnitWords): string =>
  `IF(N(soak_temperature)>${words.temperature === "°F" ? 170 : 77},"Steeping above ${words.temperature === "°F" ? "170 °F" : "77 °C"} draws harsh taste out of the husks.",IF(AND(grain_mass>0,N(soak_minutes)>45),"Steeped longer than needed: half an hour does.",""))`;

/** Below and above these the enzymes of the mash hardly work, or not for long (textbook knowledge; the limits from memory). */
const mashMessage = (words: UnitWords): string =>
  `IF(grain_mass=0,"",IF(OR(soak_temperature<${words.temperature === "°F" ? 140 : 60},soak_temperature>${words.temperature === "°F" ? 162 : 72}),"A mash at "&TEXT(soak_temperature,"0")&" ${words.temperature} hardly turns starch into sugar.",IF(AND(water_collect<>"",mash_water>water_collect),"The mash alone takes more water than the batch needs: make it thicker.","")))`;

function checkList(words: UnitWords, method: Method): readonly Check[] {
  return [
    {
      label: "Original gravity against the malt",
      weight: "look",
      message: method === "extract" ? extractGravityMessage : mashGravityMessage,
    },
    { label: "Volumes", weight: "look", message: 'IF(N(volume)=0,"Into the fermenter: no volume yet.",IF(N(top_up)>=volume,"Top-up water is as much as the whole batch: nothing is left to boil.",""))' },
    {
      label: "Room in the kettle",
      weight: "stop",
      message: `IF(OR(water_before_boil="",N(kettle_size)=0),"",IF(water_before_boil*1.04>kettle_size,"Will not fit: it needs "&TEXT(water_before_boil*1.04,"0.0")&" ${words.volume} hot, the kettle holds "&TEXT(kettle_size,"0.0")&". Boil less, top up in the fermenter.",IF(water_before_boil*1.04>0.9*kettle_size,"Less than a tenth of the kettle is free: it will boil over unless you stand by it.","")))`,
    },
    { label: method === "extract" ? "Steeping" : "Mash", weight: "look", message: method === "extract" ? steepingMessage(words) : mashMessage(words) },
    { label: "Hops", weight: "look", message: 'IF(MAX(hop_alpha)>25,"An alpha acid of "&MAX(hop_alpha)&" %? No hop has so much: is a decimal point missing?",IF(MAX(hop_minutes)>boil_minutes,"A hop is to boil longer than the boil lasts.",""))' },
    { label: "Yeast", weight: "look", message: 'IF(OR(packs_in_hand="",packs_to_pitch=""),"",IF(packs_in_hand<packs_to_pitch,"Too little yeast: "&packs_to_pitch&" packs wanted, "&packs_in_hand&" in hand.",""))' },
    { label: "Temperature of the beer", weight: "look", message: `IF(COUNT(beer_temperatures)=0,"",IF(MAX(beer_temperatures)>ferment_to+2,"It has been at "&TEXT(MAX(beer_temperatures),"0")&" ${words.temperature}: too warm for this yeast, it will taste of it.",IF(MIN(beer_temperatures)<ferment_from-2,"It has been at "&TEXT(MIN(beer_temperatures),"0")&" ${words.temperature}: so cold the yeast may stop.","")))` },
    { label: "Course of the gravity", weight: "look", message: 'IF(verdict="rising","Gravity rose between two readings, which beer cannot do: check scale, temperature and date.",IF(AND(fg<>"",N(fg)>N(og)),"Gravity now is above the original gravity: one of the two is wrong.",""))' },
    { label: "Has it finished?", weight: "stop", message: 'IF(verdict="stalled","Stopped well above the expected "&TEXT(fg_expected,"0.000")&". Do not bottle: what is left may ferment in the glass.",IF(AND(N(packaged_on)>0,verdict<>"steady"),"Packaged before two readings a day apart agreed. Keep the bottles cold, boxed, and open one with care.",""))' },
    { label: "Pressure in the bottle", weight: "stop", message: 'IF(pressure_verdict="","",IF(LEFT(pressure_verdict,4)="over",pressure_verdict,""))' },
    { label: "Clock of the brew day", weight: "look", message: 'IF(ISERROR(INDEX(timeline,1,1)),"The clock cannot be made: click on cell Q below the heading of section 6 and read why.","")' },
    { label: "Figures", weight: "look", message: 'IF(SUMPRODUCT(--ISERROR(figures))>0,"A figure of the card shows an error: click on it, or on what it is made of, and read why.","")' },
  ];
}

/** 10. Checks: what looks wrong or unsafe on this sheet, in words. A check that cannot be made says so. */
export function checks(b: SheetBuilder, { method }: BatchContents, words: UnitWords): void {
  section(b, 10, "Checks", "What looks wrong or unsafe on this sheet");
  const first = b.row;
  for (const { label, weight, message } of checkList(words, method)) {
    b.put("A", label, { style: "label" });
    b.put("C", `=IFERROR(${message},"Cannot be checked: a figure it needs shows an error.")`, { style: "message", format: "text", mergeTo: "I" });
    b.height(twoLinesPoints);
    b.put("B", `=IF(C${b.row}="","fine",IF(LEFT(C${b.row},6)="Cannot","look","${weight}"))`, { style: "result" });
    b.row += 1;
  }
  const last = b.row - 1;
  b.name("check_states", `B${first}:B${last}`);
  b.name("check_texts", `C${first}:C${last}`);
  b.highlight({ range: `B${first}:B${last}`, formula: `=$B${first}="stop"`, fill: "#7A1F1F", color: "#FFFFFF", bold: true });
  b.highlight({ range: `B${first}:B${last}`, formula: `=$B${first}="look"`, fill: "#F2D58A", color: "#3A2A00", bold: true });
}
