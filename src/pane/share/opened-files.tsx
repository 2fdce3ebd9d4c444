import { useState } from "preact/hooks";
import { decodeText } from "../../workbook/exchange/readings-file/decode-text";

export interface OpenedText {
  readonly name: string;
  readonly text: string;
}

interface OpenedFilesProps {
  readonly id: string;
  readonly label: string;
  readonly accept: string;
  readonly multiple?: boolean;
  readonly pasteLabel: string;
  /** Words on the button that takes what was pasted. */
  readonly pasteAction: string;
  readonly onTexts: (texts: readonly OpenedText[]) => void;
}

/** Files from this computer, or their text pasted where a pane may not open files. */
export function OpenedFiles({ id, label, accept, multiple = false, pasteLabel, pasteAction, onTexts }: OpenedFilesProps) {
  const [pasted, setPasted] = useState("");
  const [problem, setProblem] = useState<string>();
  const open = async (input: HTMLInputElement) => {
    const files = [...(input.files ?? [])];
    try {
      const texts = await Promise.all(
        files.map(async (file) => ({ name: file.name, text: decodeText(new Uint8Array(await file.arrayBuffer())) })),
      );
      setProblem(undefined);
      onTexts(texts);
    } catch {
      setProblem("The file could not be opened.");
    }
    // So that the same file, corrected, can be chosen again.
    input.value = "";
  };
  return (
    <>
      <div class="field">
        <label for={`${id}-file`}>{label}</label>
        <input id={`${id}-file`} type="file" accept={accept} multiple={multiple} onChange={(event) => void open(event.currentTarget)} />
        {problem && (
          <p class="problem" role="alert">
            {problem}
          </p>
        )}
      </div>
      <div class="field">
        <label for={`${id}-paste`}>{pasteLabel}</label>
        <textarea id={`${id}-paste`} rows={3} value={pasted} spellcheck={false} onInput={(event) => setPasted(event.currentTarget.value)} />
        <button
          type="button"
          disabled={pasted.trim() === ""}
          onClick={() => {
            onTexts([{ name: "what you pasted", text: pasted }]);
            setPasted("");
          }}
        >
          {pasteAction}
        </button>
      </div>
    </>
  );
}
