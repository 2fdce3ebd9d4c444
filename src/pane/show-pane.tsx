import { render } from "preact";
import { followTheme } from "./look/follow-theme";
import { Pane } from "./pane";
// In this order: a later rule of the same weight wins.
import "./look/page.css";
import "./look/fields.css";
import "./look/buttons.css";
import "./explain/explain.css";
import "./look/results.css";

/** Draws the pane into its place. */
export function showPane(place: HTMLElement): void {
  followTheme(place.ownerDocument);
  render(<Pane />, place);
}
