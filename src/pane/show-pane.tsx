import { render } from "preact";
import { Pane } from "./pane";
import "./pane.css";

/** Draws the pane into its place. */
export function showPane(place: HTMLElement): void {
  render(<Pane />, place);
}
