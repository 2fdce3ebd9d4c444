import { render } from "preact";
import { followTheme } from "./look/follow-theme";
import { Pane } from "./pane";
import "./pane.css";

/** Draws the pane into its place. */
export function showPane(place: HTMLElement): void {
  followTheme(place.ownerDocument);
  render(<Pane />, place);
}
