import { contrast, isHex } from "./contrast";

export type Kind = "light" | "dark" | "contrast";

/** The pane's colours; each becomes a CSS variable of that name. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly faint: string;
  readonly line: string;
  readonly accent: string;
  readonly onAccent: string;
  readonly problem: string;
}

/** What the host tells of its own look; every part may be missing. */
export interface HostTheme {
  readonly bodyBackgroundColor?: string;
  readonly bodyForegroundColor?: string;
  readonly isDarkTheme?: boolean;
}

/** Ink on paper and one accent, as on the sheets. */
export const palettes: Readonly<Record<Kind, Palette>> = {
  light: {
    paper: "#FBFAF6",
    ink: "#1D1B16",
    faint: "#5A564C",
    line: "#8A8577",
    accent: "#1F5150",
    onAccent: "#FFFFFF",
    problem: "#8A1C1C",
  },
  dark: { paper: "#1F1E1B", ink: "#F1EEE6", faint: "#BDB8AA", line: "#8F8A7D", accent: "#8FC7C1", onAccent: "#10211F", problem: "#FFB4A8" },
  contrast: {
    paper: "#000000",
    ink: "#FFFFFF",
    faint: "#FFFFFF",
    line: "#FFFFFF",
    accent: "#FFE45C",
    onAccent: "#000000",
    problem: "#FFB4A8",
  },
};

/** WCAG 2.2 AA: 4.5 for words, 3 for lines that carry meaning. */
export function isReadable({ paper, ink, faint, line, accent, onAccent, problem }: Palette): boolean {
  return (
    [ink, faint, accent, problem].every((color) => contrast(color, paper) >= 4.5) &&
    contrast(line, paper) >= 3 &&
    contrast(onAccent, accent) >= 4.5
  );
}

/**
 * Our palette of the host's kind, on the host's own paper where everything stays readable on it. Pure white on pure black is
 * taken for a contrast theme.
 */
export function paletteFor(host: HostTheme | undefined, prefersDark: boolean): { readonly kind: Kind; readonly palette: Palette } {
  const { bodyBackgroundColor: paper, bodyForegroundColor: ink, isDarkTheme } = host ?? {};
  const known = isHex(paper) && isHex(ink);
  const dark = isDarkTheme ?? (known ? contrast(paper, "#000000") < contrast(paper, "#FFFFFF") : prefersDark);
  const kind = known && dark && contrast(paper, ink) > 20 ? "contrast" : dark ? "dark" : "light";
  const ours = palettes[kind];
  const theirs = known ? { ...ours, paper, ink } : ours;
  return { kind, palette: isReadable(theirs) ? theirs : ours };
}
