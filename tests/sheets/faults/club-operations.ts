import { addToClub, insertClub, insertLarger } from "../../../src/workbook/sheets/club/add-to-club";
import { beersOfClub, insertScoreSheets, insertTasting, takeScores, tastingSheets } from "../../../src/workbook/sheets/club/blind-tasting";
import { clubSheet } from "../../../src/workbook/sheets/club/club-sheet";
import { replaceOnClub, standingOnClub } from "../../../src/workbook/sheets/club/replace-on-club";
import type { Scores } from "../../../src/workbook/sheets/club/score-line";
import { sample } from "./beginnings";
import { inserting, working, type Operation } from "./told";

const clubEntries = [{ member: "Bert", batch: { ...sample, id: "other" } }];
const replaced = [{ member: "Ann", batch: { ...sample, style: "Other" } }];

/** Always the first of what is left: the codes and orders of a tasting are the same each time. */
const notByChance = (): number => 0;
const scoreSheetsOut = (into: "here" | "new") =>
  working("No score sheet was made, and the workbook is as it was.", (context) =>
    insertScoreSheets(context, "Tasting", into === "new" ? (base64) => Excel.createWorkbook(base64) : undefined, notByChance),
  );

/** What is done with members' batches: club and class sheets, blind tasting. */
export const clubOperations: readonly Operation[] = [
  {
    name: "club sheet",
    from: "an empty workbook",
    act: inserting("club sheet", (context) => insertClub(context, { sheetName: "Club", units: "metric", entries: clubEntries })),
    places: ["Club"],
  },
  {
    name: "added to a club",
    from: "club",
    act: inserting("club sheet", (context) => addToClub(context, "Club", clubEntries)),
    places: ["Club"],
  },
  {
    name: "replaced on a club",
    from: "club",
    ready: () => Excel.run((context) => standingOnClub(context, "Club", replaced)),
    act: (standing) => inserting("club sheet", (context) => replaceOnClub(context, "Club", [...replaced, ...clubEntries], standing))(),
    places: ["Club"],
  },
  {
    name: "class sheet",
    from: "an empty workbook",
    act: inserting("club sheet", (context) =>
      insertClub(context, { sheetName: "Class", units: "metric", entries: clubEntries, kind: "class" }),
    ),
    places: ["Class"],
  },
  {
    name: "larger copy of a club",
    from: "club",
    act: inserting("club sheet", (context) => insertLarger(context, "Club", clubEntries)),
    places: ["Club (2)"],
  },
  {
    name: "codes drawn",
    from: "club of two",
    act: working("The codes were not drawn, and the workbook is as it was.", async (context) => {
      const club = await clubSheet(context, "Club");
      await insertTasting(context, { sheetName: "Tasting", club, beers: beersOfClub(club), tasters: ["Ann", "Bert"] }, notByChance);
    }),
    places: ["Tasting"],
  },
  { name: "score sheets", from: "a tasting", act: scoreSheetsOut("here"), places: ["Scores Ann", "Scores Bert"] },
  { name: "score sheets as a workbook", from: "a tasting", act: scoreSheetsOut("new"), places: ["Scores Ann", "Scores Bert"] },
  {
    name: "scores taken in",
    from: "a tasting",
    ready: async (): Promise<Scores[]> => {
      const [tasting] = await Excel.run(tastingSheets);
      const codes = tasting!.block("tasting_codes").flat().map(Number);
      return ["Ann", "Cleo"].map((taster) => ({
        from: "a line",
        tastingId: tasting!.text("tasting_id"),
        taster,
        sums: codes.map((code) => ({ code, sum: 12 })),
      }));
    },
    act: (scores: readonly Scores[]) => working("No score was written.", (context) => takeScores(context, "Tasting", scores))(),
    places: ["Tasting"],
  },
];
