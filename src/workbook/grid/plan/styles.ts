import type { NumberFormat, StyleName } from "./sheet-plan";

/**
 * The look of our sheets: ink on paper and one accent. Inputs carry a line below, results a shade, so that the two
 * are told apart in a black-and-white print as well. Nothing that is printed is smaller than 11 points: our widest sheets
 * stand at three quarters of their size on paper, and 8 points is what can be read there at arm's length.
 */
export interface Style {
  readonly fill?: string;
  readonly color: string;
  readonly size: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly align: "Left" | "Right" | "Center";
  readonly indent?: number;
  readonly wrap?: boolean;
  /** Line below: thin for an input, medium for a heading. */
  readonly line?: { readonly weight: "Thin" | "Medium"; readonly color: string };
}

const ink = "#1D1B16";
const faint = "#5A564C";
const accent = "#1F5150";
const shade = "#EFECE3";
const inputLine = { weight: "Thin", color: "#6F6A5E" } as const;

export const styles: Readonly<Record<StyleName, Style>> = {
  title: { color: accent, size: 18, bold: true, align: "Left" },
  section: { color: accent, size: 12, bold: true, align: "Left", line: { weight: "Medium", color: accent } },
  sectionHint: { color: faint, size: 11, italic: true, align: "Left", line: { weight: "Medium", color: accent } },
  label: { color: ink, size: 11, align: "Left" },
  unit: { color: faint, size: 11, align: "Left", indent: 1 },
  hint: { color: faint, size: 11, italic: true, align: "Left" },
  /** A hint that may need several lines. */
  hintWords: { color: faint, size: 11, italic: true, align: "Left", wrap: true },
  heading: { color: ink, size: 11, bold: true, align: "Left", indent: 1, line: { weight: "Thin", color: ink } },
  headingRight: { color: ink, size: 11, bold: true, align: "Right", line: { weight: "Thin", color: ink } },
  input: { color: ink, size: 11, align: "Right", line: inputLine },
  inputText: { color: ink, size: 11, align: "Left", indent: 1, line: inputLine },
  /** Words that may need several lines. */
  inputWords: { color: ink, size: 11, align: "Left", indent: 1, wrap: true, line: inputLine },
  result: { color: ink, size: 11, fill: shade, align: "Right" },
  resultText: { color: ink, size: 11, fill: shade, align: "Left", indent: 1 },
  keyResult: { color: ink, size: 11, fill: shade, bold: true, align: "Right" },
  keyText: { color: ink, size: 11, fill: shade, bold: true, align: "Left", indent: 1 },
  caution: { color: "#6B1F1F", size: 11, fill: shade, align: "Left", indent: 1 },
  /** Words that may need two lines. */
  message: { color: ink, size: 11, fill: shade, align: "Left", indent: 1, wrap: true },
  /** The one or two words before a message, never on two lines. */
  state: { color: ink, size: 11, fill: shade, align: "Left" },
  swatch: { color: ink, size: 11, fill: shade, align: "Center" },
  workings: { color: faint, size: 10, align: "Left" },
};

export const fontName = "Calibri";

export const numberFormats: Readonly<Record<NumberFormat, string>> = {
  general: "General",
  gravity: "0.000",
  fineGravity: "0.0000",
  one: "0.0",
  two: "0.00",
  whole: "0",
  percent: "0 %",
  date: "yyyy-mm-dd",
  time: "hh:mm",
  dateTime: "yyyy-mm-dd hh:mm",
  monthDay: "mm-dd",
  text: "General",
  money: "0.00",
};
