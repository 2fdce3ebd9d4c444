/** "H14", "H14 and H20", "H14, H20 and H31". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join("") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1) ?? ""}`;
