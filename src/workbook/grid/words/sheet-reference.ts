/** "It's mine" → "'It''s mine'!", to stand before a name of that sheet in a formula. */
export const sheetPrefix = (sheetName: string): string => `'${sheetName.replaceAll("'", "''")}'!`;

/** The sheet whose `name` a formula speaks of; Excel leaves the quotes away where a sheet's name needs none. */
export function sheetOfName(formula: string, name: string): string | undefined {
  const match = new RegExp(`(?:'((?:[^']|'')+)'|([^\\s'!(),=<>+*/&-]+))!${name}(?![\\w.])`, "i").exec(formula);
  const found = match?.[1]?.replaceAll("''", "'") ?? match?.[2];
  return found === undefined || found.startsWith("#") ? undefined : found;
}
