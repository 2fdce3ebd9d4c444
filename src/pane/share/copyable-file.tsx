import { useEffect, useRef, useState } from "preact/hooks";

/**
 * A file for others: to be saved, and as text to be copied, since Excel on the desktop may not let a pane save files.
 */
export function CopyableFile({ fileName, text }: { readonly fileName: string; readonly text: string }) {
  const area = useRef<HTMLTextAreaElement>(null);
  const [address, setAddress] = useState<string>();
  const [copied, setCopied] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    setAddress(made);
    setCopied(undefined);
    return () => URL.revokeObjectURL(made);
  }, [text]);
  const copy = async () => {
    area.current?.select();
    try {
      await navigator.clipboard.writeText(text);
      setCopied("Copied. Paste it into a message to the club.");
    } catch {
      setCopied("The text is selected: press Ctrl+C (⌘C on a Mac) to copy it.");
    }
  };
  return (
    <div class="field">
      <p>
        <a class="button" href={address} download={fileName}>
          Save “{fileName}”
        </a>
      </p>
      <label for="file-text">Or copy its text</label>
      <textarea id="file-text" ref={area} readOnly rows={6} value={text} spellcheck={false} />
      <button type="button" onClick={() => void copy()}>
        Copy the text
      </button>
      <p role="status" class="hint">
        {copied}
      </p>
    </div>
  );
}
