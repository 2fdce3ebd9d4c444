/**
 * The address of the folder that the built files are to be uploaded to, checked; or, in words, what is wrong with it.
 * Excel loads add-ins from https only, and every other address is made by joining a file's name to this one.
 */
export function baseAddress(typed: string): { base: string } | { problem: string } {
  const refuse = (reason: string) => ({
    problem: `--base "${typed}" cannot be used: ${reason}. It looks like https://club.example/gylebook/`,
  });
  if (!URL.canParse(typed)) return refuse("it is no web address");
  const address = new URL(typed);
  if (address.protocol === "http:") return refuse("Excel loads add-ins over https only, not over plain http");
  if (address.protocol !== "https:") return refuse(`Excel loads add-ins over https only, not over ${address.protocol.slice(0, -1)}`);
  if (!/^https:\/\//i.test(typed)) return refuse("two slashes must follow https:");
  if (address.username !== "" || address.password !== "")
    return refuse("a name or a password in it would stand in a file that everybody can read");
  if (typed.includes("?")) return refuse("it names a folder, so nothing may follow a question mark");
  if (typed.includes("#")) return refuse("it names a folder, so nothing may follow a #");
  if (/\s|\\/.test(typed)) return refuse("it holds a blank or a backslash");
  if (!typed.endsWith("/")) return refuse("the slash at its end is missing, and without it the last word would be taken for a file");
  return { base: address.href };
}
