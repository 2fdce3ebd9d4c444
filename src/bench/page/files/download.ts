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
