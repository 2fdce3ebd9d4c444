import { lastDays, stillFermenting } from "../../../core/log/steady";
import type { BatchContents } from "../contents";
import { chartFigures, fermentationChart } from "./fermentation-chart";
import { nameTable, tableCells, tableColumns } from "../derived/sheet-lines";
import { batchFields } from "../fields";
import { fieldRows, inputTable, section, workings, type BatchBuilder, type BatchLines, type Field } from "./fields";
import { gravityAllowance } from "../gravity-allowance";
import { pitchedAt } from "./pitched";
import type { UnitWords } from "../unit-words";

/** Room for a reading a day over two weeks, and for the chart beside them. */
export const readingTableRows = 16;

/** First and last row of the table of readings. */
export interface ReadingRows {
  readonly first: number;
  readonly last: number;
}

/**
 * Hops that are planned, and not noted yet: nothing that was read before their stay is over shows that it has ended. By the brew day itself:
 * behind the clock, which knows the hour of pitching, the chain of calls would grow too long.
 */
const plannedStay = 'IF(AND(N(dry_mass)>0,N(dry_after)>0,N(brewed_on)>0),INT(brewed_on)+dry_after+MAX(1,N(dry_for)),"")';

/** 7. Readings: what the hydrometer says day by day, where the fermentation stands, and the curve. */
export function readings(b: BatchBuilder, contents: BatchContents, lines: BatchLines, words: UnitWords): ReadingRows {
  section(b, 7, "Readings", "Finished when two readings a day apart agree and the last days' fall is over, often by day 8 to 12");
  originalGravity(b, contents, lines);
  const table = batchFields.readings;
  const heading = b.row;
  const { first, last } = inputTable(b, "Readings", tableColumns(table, contents), tableCells(table, contents.readings), readingTableRows);
  b.put("F", "Gravity", { style: "headingRight" }, heading);
  b.put("G", "Atten. %", { style: "headingRight" }, heading);
  b.put("H", "Alcohol %", { style: "headingRight" }, heading);
  for (let row = first; row <= last; row += 1) {
    const top = row === first;
    b.put(
      "F",
      top ? `=GYLE.WORT.HYDROMETER(B${first}:B${last},D${first}:D${last},calibrated_at,C${first}:C${last},units)` : "",
      { style: "result", format: "gravity", ...(top && { spillsTo: `F${last}` }) },
      row,
    );
    b.put(
      "G",
      top ? `=GYLE.YEAST.ATTENUATION(og,F${first}:F${last})` : "",
      { style: "result", format: "whole", ...(top && { spillsTo: `G${last}` }) },
      row,
    );
    b.put(
      "H",
      top ? `=GYLE.BEER.ABV(og,F${first}:F${last})` : "",
      { style: "result", format: "one", ...(top && { spillsTo: `H${last}` }) },
      row,
    );
  }
  workings(
    b,
    [
      lines.dryHoppedOn,
      // A day without a time counts from its end: the reading just before the hops is often of the same day.
      [
        "Readings count from",
        {
          content: `=IF(N(dry_hopped_on)>0,dry_hopped_on+IF(dry_hopped_on=INT(dry_hopped_on),1,0),${contents.lateHops ? plannedStay : '""'})`,
          format: "dateTime",
          name: "count_from",
        },
      ],
      ["Where it stands rests on", { content: restsOn, format: "text", name: "verdict_rests" }],
      ...pitchedAt,
    ],
    heading,
  );
  nameTable(b, table, contents, { first, last });
  b.name("gravities", `F${first}:F${last}`);
  chartFigures(b, words, { heading, first, last });
  if (contents.readings.length > 0) b.chart(fermentationChart(words, { heading, first, last }));
  fieldRows(
    b,
    [
      [
        "Where it stands",
        {
          content: "=GYLE.LOG.STEADY(reading_times,gravities,0.001,fg_expected,og,count_from)",
          format: "text",
          name: "verdict",
          style: "keyText",
        },
      ],
      [
        "Read again on",
        {
          content: '=IF(OR(verdict="",verdict="steady",verdict="stalled"),"",MAX(last_reading+1,IF(N(count_from)>0,count_from+1,0)))',
          format: "dateTime",
          name: "next_reading",
        },
      ],
      // A curve through readings from before the hops tells nothing of what they wake up; as long as they are only planned it tells the end before them.
      [
        "Expected to finish",
        {
          content: '=IF(OR(N(forecast_day)=0,verdict="steady",verdict="stalled",N(dry_hopped_on)>0),"",forecast_day)',
          format: "date",
          unit: '=IF(OR(end_expected="",N(forecast_spread)=0),"","± "&FIXED(forecast_spread,1,TRUE)&" days (a forecast)")',
          name: "end_expected",
        },
      ],
    ],
    [
      [
        "Gravity now",
        {
          content: '=IF(last_reading="","",INDEX(gravities,MATCH(last_reading,reading_times,0)))',
          format: "gravity",
          name: "fg",
          style: "keyResult",
        },
      ],
      ["Gravity to expect at the end", { content: "=GYLE.YEAST.FINISH(og,attenuation)", format: "gravity", name: "fg_expected" }],
      [
        "Last read on",
        {
          content: '=IF(COUNTIFS(reading_times,">0",gravities,">0")=0,"",MAXIFS(reading_times,gravities,">0"))',
          format: "dateTime",
          name: "last_reading",
        },
      ],
    ],
    (row) => {
      b.put("A", "What to do next", { style: "label" }, row);
      b.put("B", nextStep, { style: "resultText", format: "text", name: "next_step", mergeTo: "I" }, row);
    },
  );
  return { first, last };
}

/** A mash gives what it gives: the reading tells how much. */
const efficiencyReached: [string, Field] = [
  "Mash efficiency",
  {
    content:
      '=IF(OR(og_reached="",gravity_volume="",grain_mass=0),"",GYLE.WORT.EFFICIENCY(malt,gravity_volume*IF(N(volume_reached)>0,volume_reached/volume,1),og_reached,units))',
    format: "whole",
    unit: "%",
    name: "efficiency_reached",
  },
];

/** Points of the malts with these handlings, at their full yield. */
const maltPoints = (...handlings: readonly string[]): string =>
  `SUMPRODUCT(${handlings.map((handling) => `(malt_handling="${handling}")`).join("+")},malt_mass,INDEX(malt,0,2))`;

/**
 * The reading, unless malt and volume rule it out: then what they give. Extract fixes the gravity; of a mash only the ends
 * are known, none and all of the grain's sugar.
 */
function trustedGravity(method: BatchContents["method"]): string {
  const extract = `IF(ABS(og_reached-og_expected)>${gravityAllowance},og_expected,og_reached)`;
  const [grain, dissolved] = [maltPoints("mash", "steep"), maltPoints("extract", "sugar")];
  const ofPlan = `(og_reached-1)*(${grain}*grain_efficiency/100+${dissolved})`;
  const mash = `IF(AND(${ofPlan}<=(og_expected-1)*(${grain}+${dissolved}),${ofPlan}>=(og_expected-1)*${dissolved}),og_reached,og_expected)`;
  return `=IF(ISERROR(og_reached),og_expected,IF(og_reached="",og_plan,IF(og_expected="",og_reached,${method === "extract" ? extract : `IF(grain_mass=0,${extract},${mash})`})))`;
}

/** The first reading of all: what the yeast was given. The sheet judges it against malt and volume. */
function originalGravity(b: BatchBuilder, { method }: BatchContents, { wort, kit }: BatchLines): void {
  fieldRows(
    b,
    [wort.reading, wort.scale, wort.sampleTemperature, kit.hydrometerCalibratedAt],
    [
      [
        "Original gravity, by the reading",
        {
          content: "=GYLE.WORT.HYDROMETER(og_reading,og_temperature,calibrated_at,og_scale,units)",
          format: "gravity",
          unit: "corrected for temperature",
          name: "og_reached",
        },
      ],
      [
        "by malt and volume",
        {
          content: '=IF(OR(N(volume_reached)<=0,og_plan=""),og_plan,1+(og_plan-1)*volume/volume_reached)',
          format: "gravity",
          name: "og_expected",
        },
      ],
      [
        "This sheet goes by",
        { content: trustedGravity(method), format: "gravity", unit: "see the checks at the end", name: "og", style: "keyResult" },
      ],
      wort.volume,
      ...(method === "extract" ? [] : [efficiencyReached]),
    ],
  );
}

/** The readings that say "steady" or "stalled", by the counts of GYLE.LOG.STEADY: five or more of the last four days and a half, else the trade's two. */
const restsOn =
  `=IF(AND(verdict<>"steady",verdict<>"stalled"),"",IF(COUNTIFS(gravities,">0",gravities,"<="&(fg+${stillFermenting}+1E-9),reading_times,">="&MAX(last_reading-${lastDays.days}-1E-9,N(count_from)))>=${lastDays.readings},` +
  `COUNTIFS(gravities,">0",gravities,"<="&(fg+${stillFermenting}+1E-9),reading_times,">="&MAX(last_reading-${lastDays.days}-1E-9,N(count_from)))&" readings of the last days","two readings a day apart"))`;

const nextStep =
  '=IF(verdict="","Pitch; signs of life within 24 to 48 hours. Read again after three days.",' +
  'IF(verdict="steady",IF(AND(N(ends_at)>0,N(fg)>N(ends_at)),"At rest, but above the gravity expected: wait, and read again before you package.","Finished, by "&verdict_rests&": package it when you are ready."&IF(LEFT(verdict_rests,3)="two"," A third makes it surer.","")),' +
  'IF(verdict="stalled","Stopped too early: warm it up, rouse the yeast, wait; do not bottle.",' +
  'IF(verdict="rising","Gravity cannot rise: read again, mind the temperature.",' +
  'IF(verdict="not begun","Not begun: warm enough? No sign of life two days after pitching: give it fresh yeast.",' +
  // A single reading is "working" to the rule, whatever it says.
  'IF(AND(verdict="working",N(og)>0,N(fg)>=N(og)-0.001-1E-9),"Not falling yet: signs of life take 24 to 48 hours. Warm enough? Read again tomorrow.",' +
  'IF(N(count_from)>0,"Dry hops can wake a finished beer up: only readings a day or more after them count. Two a day apart, at least.",' +
  'IF(verdict="nearly","Almost there: leave it, read again tomorrow.","Working: leave the lid closed."))))))))';
