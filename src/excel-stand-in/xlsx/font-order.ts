/** The order of a font's parts in ECMA-376 part 1, 18.8.22, as Excel writes it. hucre 1.0.0 writes the colour before the size. */
const ORDER = [
  "b",
  "i",
  "strike",
  "condense",
  "extend",
  "outline",
  "shadow",
  "u",
  "vertAlign",
  "sz",
  "color",
  "name",
  "family",
  "charset",
  "scheme",
];

const FONT = /<font>([\s\S]*?)<\/font>/g;
const PART = /<(\w+)(?:\s[^>]*)?\/>/g;

/** The styles part with every font's parts in order, in cells' looks and in conditional ones. */
export function withFontsInOrder(styles: string): string {
  return styles.replace(FONT, (_, inside: string) => {
    const parts = [...inside.matchAll(PART)].map(([part, name]) => ({ part, place: ORDER.indexOf(name ?? "") }));
    return `<font>${parts
      .sort((a, b) => a.place - b.place)
      .map(({ part }) => part)
      .join("")}</font>`;
  });
}
