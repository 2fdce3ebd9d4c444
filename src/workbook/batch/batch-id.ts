/** A mark that no other batch has, not even in another member's workbook: 12 letters and digits by chance. */
export function newBatchId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => (byte % 36).toString(36)).join("");
}
