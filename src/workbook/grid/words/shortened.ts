/** Excel's limit. */
export const longestSheetName = 31;

/**
 * A name that fits and ends as it should: "Sluice Keeper's unplugged". What is too long gives way in its stem, at a whole word where that leaves
 * half of the room or more, and no half of a sign that takes two, such as an emoji, is left at the cut: no file can hold one.
 */
export function shortened(stem: string, ending = "", longest = longestSheetName): string {
  const room = longest - ending.length;
  if (stem.length <= room) return stem + ending;
  const cut = stem.slice(0, room).replace(/[\uD800-\uDBFF]$/, "");
  const words = /^\s/.test(stem.slice(cut.length)) ? cut : cut.replace(/\s+\S*$/, "");
  return (words.length >= room / 2 ? words : cut).replace(/[\s,;:–-]+$/, "") + ending;
}
