/**
 * A function's message as a sentence. The name of an argument stays as Excel shows it and as the list below shows it:
 * "original_gravity is 12.4; …", since "Original_gravity" is the name of nothing.
 */
export function sentenceOf(message: string, argumentNames: readonly string[]): string {
  const [first = ""] = /^\w*/.exec(message) ?? [];
  const start = argumentNames.includes(first) ? message : message.charAt(0).toUpperCase() + message.slice(1);
  return `${start}.`;
}
