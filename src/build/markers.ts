/** `text` with what stands between `<!-- name -->` and `<!-- /name -->` replaced; everything else stays as it is. */
export function replaceBetweenMarkers(text: string, name: string, content: string): string {
  const open = `<!-- ${name} -->`;
  const close = `<!-- /${name} -->`;
  const start = text.indexOf(open);
  const end = text.indexOf(close);
  if (start < 0 || end < start) throw new Error(`the markers ${open} and ${close} are missing`);
  return `${text.slice(0, start + open.length)}\n${content.trim()}\n${text.slice(end)}`;
}
