import { render } from "preact";
import { NewBatch } from "./new-batch/new-batch";
import "./pane.css";

/** Draws the pane into its place. There is one screen so far: a new batch. */
export function showPane(place: HTMLElement): void {
  render(<NewBatch />, place);
}
