/**
 * What could not be tried, for want of Excel, with exact steps for a person who has it. Whoever does so: note Excel's version
 * (File > Account) and what was seen. Plain text, for the built page and for try-in-excel.md alike. What would hurt most comes first;
 * what half an hour has no room for says no minutes.
 */
export interface Trial {
  readonly title: string;
  /** How long it takes, as far as we can tell; those that have one make half an hour together. */
  readonly minutes?: number;
  /** Where it matters; everywhere when left out. */
  readonly where?: string;
  readonly steps: readonly string[];
  readonly see: string;
}

export const trials: readonly Trial[] = [
  {
    title: "It loads",
    minutes: 2,
    steps: [
      "Follow the page Put Gylebook into your Excel (or run npm run excel) for the web, Mac and Windows.",
      "Click Gylebook on the Home tab.",
    ],
    see: "A button Gylebook with our icon (a sheet with a falling curve), sharp, not blurred; the pane opens within seconds and shows New batch.",
  },
  {
    title: "The functions are there",
    minutes: 1,
    steps: ["New workbook. Type =GYLE. into A1 and wait.", "Finish it: =GYLE.BEER.ABV(1.05,1.01)"],
    see: "The list of functions while you type; then 5.31 in A1.",
  },
  {
    title: "Functions that Excel does not know yet",
    minutes: 4,
    where: "Windows, added from a shared folder",
    steps: [
      "Add Gylebook by a shared folder for the first time and do not restart Excel. Open the pane and write a batch sheet.",
      "If the pane refuses: close Excel altogether, with all its windows, open it again, and write the sheet.",
    ],
    see: "Either the sheet with all its figures, or the pane's words that Excel does not know the functions yet, and no sheet. Never a sheet of #NAME?. After the restart the sheet is written.",
  },
  {
    title: "A decimal comma",
    minutes: 3,
    where: "Windows or Mac with German or French regional settings",
    steps: [
      "Type =GYLE.BEER.ABV(1,05;1,01) into a cell; select it, and open Help, Explain.",
      "Help, Functions, GYLE.BEER.ABV: type 1,05 and 1,01 into the fields of Put into a cell.",
      "Write the example batch in metric units, and read the lines of the brew day and the card.",
      "In the first row of its readings type a day and 12,4; leave the scale at SG. Read the checks, then clear the row.",
    ],
    see: "5,31; Explain and the form show the formula with semicolons and commas. No line tells of a volume without its decimals (“Heat 11 L” for 11,40), and no #VALUE! stands anywhere. The check “Course of the gravity” says that a reading is no specific gravity.",
  },
  {
    title: "A batch from the pane",
    minutes: 4,
    steps: [
      "In an empty workbook type 1 into A1. New batch, name Footbridge, the example pale ale, Write the batch sheet. Look at the clock.",
      "File > Print: look at the preview. Windows and Mac: press Ctrl+Z (Mac: Cmd+Z) until nothing is left to undo. Write the sheet again.",
    ],
    see: "The sheet stands after a few seconds, all values shown, none #BUSY! for longer; the preview has three pages, nothing cut, the breaks before 6 and 8; undo takes away the sheet or leaves it whole, never half, and then takes away the 1. Note where it ends sooner.",
  },
  {
    title: "They start without the pane",
    minutes: 2,
    steps: ["Save that workbook, close Excel altogether, open the workbook.", "Without opening the pane, type =GYLE.BEER.EBC(10) into A2."],
    see: "A1 still 5.31; A2 19.69, with #BUSY! for a few seconds at most, never #NAME?.",
  },
  {
    title: "The sample workbooks",
    minutes: 4,
    steps: [
      "Open each file of sample-workbooks in an Excel without Gylebook, then in one with it.",
      "With it, in first-extract-batch.xlsx: change the malt mass in the first row of the malt table.",
    ],
    see: "Without: the same values as on the bench, no question about repairing the file, no missing add-in message. With: formulas read =GYLE.…, and planned gravity and alcohol follow the change.",
  },
  {
    title: "Blocks",
    minutes: 3,
    steps: [
      "On that sheet: Plan, More on the sheet. Tick Late and dry hops and Water treatment, Add it.",
      "Type 60 beside calcium in the source water. Plan, New batch: a second sheet, Deep Cut, all-grain, with everything under “Beyond the usual sheet” ticked.",
    ],
    see: "The blocks stand below the checks, each on a page of its own in the print preview; nothing above moved, and undo still works. The treated water follows the 60. No #SPILL!, no #VALUE! on either sheet.",
  },
  {
    title: "Pages to print",
    minutes: 2,
    steps: [
      "Plan, Pages to print: write all four pages of Footbridge. Look at each in the print preview. Change the batch's name on its sheet.",
    ],
    see: "Each page fits one sheet of paper, nothing cut, labels with lines to cut along; each shows the new name at once.",
  },
  {
    title: "Club, class and blind tasting",
    minutes: 4,
    steps: [
      "Share, Batch file: make a file of Footbridge and of Deep Cut. Share, Club: take both in, give each a member, write a club sheet and a class sheet.",
      "Share, Blind tasting: draw codes for the two beers with the tasters Ann and Bert; write the score sheets; fill in one of them; read the score sheets of this workbook.",
    ],
    see: "Club and class sheets with both beers in columns. A score sheet for each taster, with the codes in an order of its own and no beer's name; its sums stand in the tasting sheet under the right codes, and the key shows which beer is which.",
  },
  {
    title: "Readings and chart",
    minutes: 1,
    steps: ["On Footbridge type three readings into the readings table: day, gravity, temperature."],
    see: "Corrected gravity and attenuation beside each; the verdict on the card changes; with the first reading, while the pane is open, the chart comes, and shows the points, the fitted curve between two dashed lines, and the temperature against an axis of its own at the right.",
  },
  {
    title: "Excel of a volume licence",
    where: "Excel 2021 or 2024 of an organisation's volume licence",
    steps: [
      "Write the example batch, add a reading, package it, make a season sheet, run Check.",
      "Share, Unplug: read what stands there before the button is pressed.",
    ],
    see: "Everything works. Unplug says that a copy cannot be plugged in again there, since this Excel has no notes for add-ins.",
  },
  {
    title: "Blank cells",
    steps: ["Leave B1 empty. In C1: =GYLE.BEER.ABV(B1,1.01)", "In C2: =GYLE.BEER.ABV(1.05,1.01,) with nothing after the last comma."],
    see: "C1 looks empty, no error. C2 5.31.",
  },
  {
    title: "Wrong types",
    steps: [
      '=GYLE.BEER.ABV("soon",1.01) in C3; =GYLE.BEER.ABV(TRUE,1.01) in C4; =GYLE.BEER.EBC(1/0) in C5.',
      "Rest the pointer on the green corner of C3, and click the sign beside the cell.",
    ],
    see: '#VALUE! in C3 and C4, #DIV/0! in C5. On the web our words "must be a number, not the text …"; on a desktop perhaps only Excel\'s own words.',
  },
  {
    title: "A column spills",
    steps: ["Type 5, 10, nothing, 20 into E1:E4. In F1: =GYLE.BEER.EBC(E1:E4)", "Type anything into F3."],
    see: "9.84, 19.69, an empty cell, 39.37 below one another; after typing into F3: #SPILL! in F1, and all is well again when F3 is cleared.",
  },
  {
    title: "The calendar file",
    steps: ["Ferment, Calendar: save the file, open it with Outlook or the Mac's Calendar."],
    see: "The file is saved (if the pane does not let it, note what it says); the dates of the pane, brew day at the time on the sheet.",
  },
  {
    title: "A copy of the sheet",
    steps: ["Right-click the sheet's tab, Move or Copy, tick Create a copy. Change the malt on the copy."],
    see: "Only the copy's figures change: its formulas use its own names.",
  },
  {
    title: "Season, kit and stores",
    steps: [
      "Season, Season: Write the season sheet. Season, Kit: Write the kit sheet. Season, Stores: Write the stores sheet.",
      "With the pane open: rename the tab of a batch, drag it to another place, then type 18 beside “Volume in the fermenter” on the copy made above, go to another sheet, and delete the copy. Click the name of a batch in the list.",
    ],
    see: "Three sheets; the season's list follows each change within seconds, in the order of the tabs; the copy stays at its end with its figures, and the year's volume is what it was; a click on a name opens its sheet.",
  },
  {
    title: "Hand-out and unplug",
    steps: [
      "Share: write a blank with Hand-out, once more as a workbook for members without Gylebook; make a copy with Unplug, inside the workbook and as a workbook of its own.",
      "Open that workbook in an Excel without Gylebook and change the malt. Then plug it in again with Gylebook.",
    ],
    see: "Each sheet as the pane says. The unplugged one shows what the batch showed and follows the malt without Gylebook; plugged in, its cells read =GYLE.… again.",
  },
  {
    title: "An older sheet",
    steps: ["Open tests/samples/old/first-extract-batch-plan-1.xlsx; Help, Older sheets: bring it to today's plan."],
    see: "One chart beside the readings, as in Readings and chart, where the old one was; all other figures as before.",
  },
  {
    title: "While a cell is being edited",
    steps: [
      "Double-click a cell so that the cursor stands in it, then click Write the batch sheet in the pane.",
      "Press Enter in the cell.",
    ],
    see: "The pane waits, then writes; no error, nothing lost.",
  },
  {
    title: "Another workbook in front",
    where: "Windows and Mac",
    steps: [
      "With the pane at Brew, Brew day, open a second workbook and work in it for a minute, so that both windows can be seen.",
      "Click into the first one again.",
    ],
    see: "The pane goes on showing the batch, at most with words that another workbook is in front; back in the first one it follows changes again.",
  },
  {
    title: "Something left behind",
    steps: [
      "While the pane writes a batch sheet, end Excel by force (Task Manager, Force Quit). Open the workbook again, wait a minute, and open the pane.",
    ],
    see: "Either no half sheet is there, or the pane says that writing was broken off and offers to delete the sheet or to keep it. It deletes nothing unasked.",
  },
  {
    title: "Dark and high contrast",
    steps: ["Switch Excel to its dark theme; switch Windows to a contrast theme. Look at the pane."],
    see: "All text readable, the focused button has a clear frame.",
  },
  {
    title: "Two people in one workbook",
    where: "web, with Gylebook for both",
    steps: [
      "Share the workbook on OneDrive; both open it. One types a reading, the other writes a second batch from the pane at the same time.",
      "In the same second both add a reading with Ferment, Reading.",
    ],
    see: "Both see the reading and the new sheet; nothing twice. Two readings below one another, or one of the panes says that somebody was quicker; if a reading is lost, note it: on two computers Excel joins changes by rules of its own.",
  },
  {
    title: "Nothing forbidden, nothing asked for",
    where: "web; on a desktop where its developer tools can be had",
    steps: ["Open the browser's developer tools (F12), reload with the pane open, look at Console and Network for the pane's frame."],
    see: "Requests only to our site and to appsforoffice.microsoft.com. At most complaints that a frame or a report of Microsoft's (firstpartyapps, events.data.microsoft.com) was refused by our policy; everything above still works.",
  },
  {
    title: "Without the network",
    where: "desktop",
    steps: [
      "Open a workbook with Gylebook formulas, switch the network off, change an input. Then close and open it again, still without.",
    ],
    see: "The change is computed. After opening again: the last values, or #BUSY! and #NAME? until the network is back; note which.",
  },
  {
    title: "A newer version",
    steps: [
      "Upload a build with a higher version and one more function over the old files. Open the pane the same day and the next. Then add the new manifest.xml.",
    ],
    see: "The pane is the new one at once. The new function is listed within a day, or at once after adding the manifest. Formulas typed before keep working throughout.",
  },
  {
    title: "The second visit of a workbook typed elsewhere",
    steps: [
      "Make a workbook with one GYLE formula in Excel on the web; open it in Excel for Windows and Mac with Gylebook installed there from another manifest file of the same site.",
    ],
    see: "The value stands and follows its inputs; no ADD-IN ERROR pane.",
  },
];
