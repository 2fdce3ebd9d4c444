import { someOf } from "../../../excel-stand-in/xlsx";
import { ask } from "../words/ask";
import { showNotice } from "../words/notices";
import type { Session } from "../session";
import { fileNameFor } from "../naming/file-name";
import { download } from "./download";
import { fetchSample, sampleName } from "./sample";

export const xlsxType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

export interface FileCommands {
  startNew: () => Promise<void>;
  /** Whether the open workbook may give way: where something was changed, it is asked. */
  mayReplace: (title: string) => Promise<boolean>;
  choose: () => void;
  open: (file: File) => Promise<void>;
  /** Answers whether there is a file now. */
  save: () => Promise<boolean>;
}

/** What the buttons, the shortcuts and a dropped file do. */
export function fileCommands(session: Session): FileCommands {
  const input = document.getElementById("file-input") as HTMLInputElement;

  async function save(): Promise<boolean> {
    try {
      const texts: string[] = [];
      const bytes = await session.toFile((address) => texts.push(address));
      download(bytes as Uint8Array<ArrayBuffer>, `${fileNameFor(session.name)}.xlsx`, xlsxType);
      session.forgetEdits();
      if (texts.length > 0) tellOfTexts(texts);
      return true;
    } catch (problem) {
      complain("The file could not be written", problem);
      return false;
    }
  }

  async function open(file: File): Promise<void> {
    if (!(await mayReplace(`Open ${file.name}?`))) return;
    try {
      const remarks = await session.openFile(new Uint8Array(await file.arrayBuffer()), file.name);
      for (const text of remarks) showNotice({ kind: "warning", text });
    } catch (problem) {
      complain(`${file.name} could not be opened`, problem);
    }
  }

  async function startNew(): Promise<void> {
    await session.endTyping();
    const choice = await ask<"empty" | "sample">({
      title: "Start a new workbook?",
      text: `It takes the place of “${session.name}” in this browser. If you want that one later, cancel and save it as a file first.`,
      choices: [
        { label: sampleName, value: "sample" },
        { label: "Empty workbook", value: "empty", main: true },
      ],
    });
    try {
      if (choice === "empty") await session.openEmpty();
      if (choice === "sample" && !(await openSample(session))) throw new Error("this bench has none.");
    } catch (problem) {
      complain(`${sampleName} could not be opened`, problem);
    }
  }

  async function mayReplace(title: string): Promise<boolean> {
    await session.endTyping();
    if (!session.edited) return true;
    const answer = await ask<"save" | "open">({
      title,
      text: `It takes the place of “${session.name}” in this browser, which has changes that are in no file yet.`,
      choices: [
        { label: "Open without saving", value: "open" },
        { label: "Save first, then open", value: "save", main: true },
      ],
    });
    return answer === "save" ? save() : answer !== undefined;
  }

  input.addEventListener("change", () => {
    const file = input.files?.[0];
    input.value = "";
    if (file) void open(file);
  });
  return { startNew, mayReplace, choose: () => input.click(), open, save };
}

/** Answers whether the sample was there. */
export async function openSample(session: Session): Promise<boolean> {
  const bytes = await fetchSample();
  if (bytes === undefined) return false;
  await session.openFile(bytes, `${sampleName}.xlsx`);
  return true;
}

function tellOfTexts(cells: readonly string[]): void {
  showNotice({
    kind: "warning",
    text: `No spreadsheet program can read what stands here as a formula, so the file holds it as a text: ${someOf(cells)}. Look for a bracket, a quotation mark or a comma too many or too few.`,
  });
}

function complain(what: string, problem: unknown): void {
  console.error(problem);
  showNotice({ kind: "warning", text: `${what}: ${problem instanceof Error ? problem.message : String(problem)}` });
}
