/** Hands bytes or text to the browser's own "save as". */
export function download(content: BlobPart, fileName: string, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser has taken the address by the next turn; holding it for a while costs nothing.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A name that every file system takes. */
export function fileNameFor(workbookName: string): string {
  const safe = workbookName.replace(/[\\/:*?"<>|\p{Cc}]+/gu, " ").replace(/^[.\s]+|[.\s]+$/gu, "");
  return safe === "" ? "workbook" : safe;
}
