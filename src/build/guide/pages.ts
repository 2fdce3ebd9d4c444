import { tradeWords } from "../../functions/trade-words";
import { bottlingSteps, kegSteps } from "../../workbook/batch/packaging-steps";
import { escapeHtml } from "../help/html";
import type { PictureName } from "./pictures";

/** One page of the guide. Texts are HTML of our own making: nothing of a user's comes in here. */
export interface GuidePage {
  readonly file: string;
  readonly title: string;
  readonly lead: string;
  readonly sections: readonly GuideSection[];
}

/** What words mean, where a page first uses them; the page of all words says the same. */
const meanings = (...words: readonly (keyof typeof tradeWords)[]): string =>
  words.map((word) => `<b>${escapeHtml(tradeWords[word].term)}:</b> ${escapeHtml(tradeWords[word].means)}`).join(" ");

export interface GuideSection {
  readonly title: string;
  readonly paragraphs: readonly string[];
  /** Things to do, numbered. */
  readonly steps?: readonly string[];
  readonly picture?: PictureName;
}

const formulas: GuidePage = {
  file: "formulas.html",
  title: "Typing formulas",
  lead: "Any sheet of your own can use Gylebook's functions. No template is needed.",
  sections: [
    {
      title: "The first one",
      paragraphs: [
        "Every function begins with <code>GYLE.</code>, then the place in the brewery, then what it gives.",
        meanings("gravity", "wort", "hydrometer"),
      ],
      steps: [
        "If the bench has begun a formula for you (<em>Try a formula</em>), press Escape: it comes back when you choose that again.",
        "Type the gravity before fermentation into B2, for example 1.050, and the gravity after it into B3, for example 1.010.",
        "Type <code>=GYLE.BEER.ABV(B2, B3)</code> into B4. While you type, the functions that fit are listed.",
        "B4 shows 5.31: alcohol in per cent by volume. Change B3, and B4 follows.",
      ],
      picture: "first-formula",
    },
    {
      title: "A column at once",
      paragraphs: [
        "Where a function asks for one cell, a column will do: with readings in B2:B20, <code>=GYLE.WORT.PLATO(B2:B20)</code> gives each in degrees Plato (°P, grams of sugar in a hundred grams of wort) and fills the cells below it, one answer for each reading. An empty reading gives an empty answer.",
        "Put it beside a table, not into one: a table has no room for answers that spread.",
      ],
    },
    {
      title: "Units",
      paragraphs: [
        'Functions that take volumes, masses or temperatures have a last argument <code>units</code>: leave it out for litres, grams, kilograms and °C, or write <code>"us"</code> for gallons, ounces, pounds and °F. Gravity is specific gravity either way.',
      ],
    },
    {
      title: "When a cell shows an error",
      paragraphs: [
        "<code>#VALUE!</code>: something typed cannot be right. <code>#N/A</code>: it can be, but the formula's source does not reach so far. <code>#NUM!</code>: there is no finite answer. Rest the pointer on the cell, and the reason stands there in words, with what is allowed. Excel on a desktop may keep it to itself.",
        "<code>#NAME?</code>: Gylebook was not there when the formula was typed. Select the cell, press F2, then Enter.",
      ],
      picture: "error-explained",
    },
    {
      title: "What a function needs, and where it comes from",
      paragraphs: [
        'The pane, Gylebook\'s own part of the window beside the sheet, has under <em>Help</em> the screen <em>Functions</em>. It finds a function by a word and shows its arguments with units and ranges, its equation, its sources, examples and cautions. The same stands in the <a href="../help/index.html">list of all functions</a>, to read or print.',
      ],
      picture: "functions-screen",
    },
  ],
};

const season: GuidePage = {
  file: "season.html",
  title: "A season in one workbook",
  lead: "One sheet for each batch, from the recipe to the first taste, written by the pane: Gylebook's own part of the window, beside the sheet.",
  sections: [
    {
      title: "A new batch",
      paragraphs: ["The pane writes a sheet of its own; it never touches a cell that you wrote.", meanings("extract", "grain", "mash")],
      steps: [
        "Open the pane: in Excel by the button <em>Gylebook</em> on the tab Home; the bench shows it from the start. Under <em>Plan</em> choose <em>New batch</em>.",
        "Give the batch a name and a day, how much beer you want, your units and whether you brew with extract or grain. An empty recipe waits for yours; the example can be changed.",
        "Choose <em>Write the batch sheet</em>.",
      ],
      picture: "new-batch",
    },
    {
      title: "The sheet, from top to bottom",
      paragraphs: [
        "The sheet follows the job: card, water, malt, hops, yeast, the brew day by the clock, readings, packaging, tasting, checks. What you type and what is computed are told apart by more than colour. The last section says in words what looks wrong or unsafe.",
        "Minutes left says how long before the end of the boil a hop goes in. Instead it may say <em>first wort</em> (in the kettle before the boil), <em>stand</em> (in hot wort after the boil) or <em>dry</em> (in the cold beer); the stand's temperature and minutes are typed on the right of the hops, in column L. The sanitiser's dose stays blank until you have typed what its label says.",
        "On brew day, write the time at which each step really happened beside the planned one. Afterwards type each reading with its day; the card then says whether the beer is still working, and never calls it steady too early. While the pane is open, the first reading brings its chart.",
      ],
      picture: "batch-sheet",
    },
    {
      title: "From kettle to first taste",
      paragraphs: [
        "The pane's places follow the job. <em>Brew</em> shows the step that is due, large, with its caution and why; its button says <em>Start</em> where the time at which it begins is noted, or <em>Done</em> in the boil and at the end, and writes the real time into the sheet; a step that asks for a volume, a gravity or a temperature takes them on its card, and before the yeast goes in it asks how warm the wort is. <em>Ferment</em> takes a reading, corrects it for temperature before it is written, draws the curve, and makes a calendar file. <em>Package</em> tells the sugar and whether the glass will take the pressure, and says no where it will not.",
        "Nothing lives in the pane alone: what it writes stands in the sheet, and what you type into the sheet the pane shows.",
      ],
    },
    {
      title: "Bottling, step by step",
      paragraphs: [
        "<em>Package, Packaging</em> and section 8 of the sheet say how much sugar, and whether the bottles hold the pressure; where they say no, do not bottle. Until two readings a day apart agree, that sugar is only the plan's: none is weighed yet. The yeast ferments this sugar in the closed bottle, and what it makes is the gas of the beer.",
        "For the bottles' labels choose <em>Plan, Pages to print</em>; type above them who made the beer. A page holds sixteen: print it as often as the bottles need.",
        meanings("rack", "priming"),
      ],
      steps: bottlingSteps().map(escapeHtml),
    },
    {
      title: "Into a keg",
      paragraphs: ["Section 8 says the pressure; the keg's own plate comes first, and so do your local rules for gas cylinders."],
      steps: kegSteps().map(escapeHtml),
    },
    {
      title: "All batches in one list",
      paragraphs: [
        "<em>Season</em> writes a sheet with one line for each batch sheet. It follows when a batch is added, copied, renamed, moved or deleted while the pane is open, and catches up when the pane is opened.",
        "It is a record, too: a batch whose sheet is deleted stays in the list with its last figures, and the year's volume and cost stay what they were. A year can be closed; batches of one name are compared under <em>Versions of a recipe</em>.",
      ],
      picture: "season-sheet",
    },
    {
      title: "Your kit, learned from your batches",
      paragraphs: [
        "<em>Kit</em> keeps your equipment, and learns boil-off (how much water an hour of boiling drives off), efficiency (how much of the malt's sugar reaches the kettle), chiller and losses from your own batches; each learned figure says on how many batches it rests, and you decide whether to use it.",
      ],
      picture: "kit-sheet",
    },
    {
      title: "What is on the shelves",
      paragraphs: [
        "<em>Stores</em> keeps what you have, one line for each lot. A batch draws on it once, the oldest lot first or the one that you choose, and what it drew is its cost; what is missing for planned batches is listed.",
      ],
      picture: "stores-sheet",
    },
  ],
};

const blocks: GuidePage = {
  file: "blocks.html",
  title: "More on the sheet",
  lead: "A new sheet is a beginner's. What you need beyond it you choose, at New batch or later; nothing that you typed moves.",
  sections: [
    {
      title: "Adding a block",
      paragraphs: ["A block stands below the checks, on a page of its own, with a line of checks at its end."],
      steps: [
        "At <em>New batch</em>, open <em>More on the sheet</em> and tick what you want; or, on a batch sheet, choose <em>More on the sheet</em> in the pane's place <em>Plan</em>.",
        "Choose <em>Add it</em>. The pane says where the block begins.",
        "Fill in its underlined cells. Formulas of ours that go by the block follow it; a formula of your own stays as it is, and the pane names it.",
      ],
    },
    {
      title: "Water treatment",
      paragraphs: [
        "Type what the supplier's report says, how much demineralised water goes in, and the salts in grams. The block shows what you brew with, and the pH to expect in the mash. With a target, it says beside each salt what the target asks for.",
        "Acid into water, never water into acid; goggles and gloves. Add half, stir, measure a cooled sample, then add the rest.",
      ],
      picture: "water-block",
    },
    {
      title: "Mash steps and run-off",
      paragraphs: [
        "For batches with a mash. The first rest is the one of section 3; up to three more are lifted by boiling water, by a decoction, or by heat. The water that lifts them is taken off the sparge. What the tun does not hold is not given: the check says how much it would be.",
        "Volume and gravity of what runs off tell how much has dissolved, what reaches the kettle, and what the grain keeps. <em>Kit</em> learns from them.",
      ],
    },
    {
      title: "Before the boil",
      paragraphs: [
        "Volume and gravity in the kettle say where the wort is heading while it can still be corrected. With what the kettle holds after the boil, the kit tells the tun's losses from the boil-off.",
      ],
    },
    {
      title: "Late and dry hops, yeast starter",
      paragraphs: [
        "The first lets you choose the model of the bitterness and the days of the dry hops. The second says how much wort grows your packs to what the batch wants, and by when it must be made. Never close a starter tight.",
      ],
    },
    {
      title: "Several packagings",
      paragraphs: [
        "Half into a keg and half into bottles, or one wort with two yeasts: up to four parts. Type the volume of each; what you leave empty is as in section 8. Each part has its own verdict, and behind it its own sugar or pressure; where the verdict says no, no figure stands. Section 8 gives none for the whole then.",
        "A part with a yeast of its own wants its gravity, and the gravity at which that yeast ends. Season and stores count the parts, and nothing twice.",
      ],
    },
    {
      title: "Keg and line",
      paragraphs: [
        "How many kegs, the gravity at which a pressure vessel may be closed, and a line that pours calmly. Never above the pressure on the keg's plate; let the pressure off before you open anything; air the room.",
      ],
    },
    {
      title: "On the brew day",
      paragraphs: [
        "The clock says at its time what a block asks for: salts and acid into the water, the rests, the runnings to measure, the starter, the gravity at which the keg is closed, the days of the dry hops. Steps that you have worded yourself stay as they are.",
      ],
    },
  ],
};

const club: GuidePage = {
  file: "club.html",
  title: "Sharing with a club",
  lead: "A member without Gylebook opens a copy for everyone and sees right values; a member with it carries on.",
  sections: [
    {
      title: "What each member needs",
      paragraphs: [
        "To look: a copy <em>for everyone</em>, which the bench's bar saves and the pane makes under <em>Share, Unplug</em>: plain formulas that any spreadsheet program calculates. An ordinary file shows its last values in Excel only, until a cell is calculated anew; LibreOffice and others calculate at once, do not know the functions, and show <code>#NAME?</code>.",
        'To carry on: Gylebook in their own Excel, put there once from the club\'s site (<a href="../install.html">how</a>), or the bench, which opens and saves the same files.',
      ],
    },
    {
      title: "A copy that calculates without Gylebook",
      paragraphs: [
        "<em>Share, Unplug</em> copies a sheet and turns its formulas into plain spreadsheet formulas, or into values where there is no plain form. Each changed cell keeps its Gylebook formula in a note, so a member who has Gylebook can plug the sheet in again. Notes, and words in a batch sheet’s cells, that begin with “private” stay behind, and prices if you wish.",
        "An unplugged batch can be read as it is: for a recipe page, a scaled copy, a hand-out, a batch file or a club sheet. The season, the kit, the stores and the screens of the brew day pass it over, and say so, until it is plugged back in.",
      ],
      picture: "unplugged-sheet",
    },
    {
      title: "Batches from hand to hand",
      paragraphs: [
        "<em>Batch file</em> makes one batch a short text to send; it is checked before it is taken in, and never writes over a sheet. <em>Plan, Pages to print</em> has a recipe page, a shopping list, a lesson for a class and bottle labels. <em>Hand-out</em> makes a blank for adults learning to brew, in their volume and units, for members without Gylebook as well.",
      ],
      picture: "hand-out",
    },
    {
      title: "Side by side",
      paragraphs: [
        "<em>Club</em> lays members' batches side by side in one unit system, with the tasters' scores, mean and spread. For a class it sets what each plan predicted beside what each learner measured: the blank goes out by <em>Hand-out</em>, the learners' batch files or sheets come back here.",
      ],
      picture: "club-sheet",
    },
    {
      title: "Tasting blind",
      paragraphs: [
        "<em>Blind tasting</em> draws a three-digit code for each beer of a club sheet and makes a score sheet for each taster, with the beers in an order of their own. Score sheets need no Gylebook: print them, fill them in here, or hand them out as a workbook, from which each member sends one line of text back.",
        "The ranking says whether the tasters agree more than chance would have it, and which beers differ. For <em>can anybody taste the difference?</em> there are GYLE.TASTE.TRIANGLE, DUO and PAIR.",
      ],
    },
    {
      title: "Working in one workbook at the same time",
      paragraphs: [
        "That is Excel's own doing: the workbook lies on OneDrive or SharePoint and everybody opens it from there. Gylebook keeps nothing outside the workbook, so there is nothing to bring into line.",
        "Whoever opens the pane or types GYLE formulas needs Gylebook in their own Excel; who only types readings or looks needs nothing, and sees new results once somebody's Excel with Gylebook has calculated them. The workbook must be an .xlsx on OneDrive or SharePoint, shared for editing, with <em>AutoSave</em> on.",
        "Before the pane writes, it looks whether the cells are still as you saw them; if somebody was quicker, it says so and leaves theirs. What two people type into one and the same cell by hand is Excel's matter: there the last one wins. So agree on who types into which batch.",
      ],
    },
    {
      title: "The club's own site",
      paragraphs: [
        "Whoever looks after the club's web site makes the folder once and uploads it; there is no program to run on the server. In the project's folder:",
        "<code>npm run build -- --base https://club.example/gylebook/</code>",
        "The folder is <code>dist/site</code>. Its first page is what members need: the file for their Excel, and the steps for the web, Mac and Windows. <code>HEADERS.txt</code> in it says what the server is to do.",
      ],
    },
  ],
};

export const guidePages: readonly GuidePage[] = [formulas, season, blocks, club];
