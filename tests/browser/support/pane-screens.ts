import type { Frame } from "playwright-core";
import type { Place } from "../../../src/pane/screens";

/** Opens a screen of the pane by its place in the job and its title. */
export async function openScreen(pane: Frame, place: Place, title: string): Promise<void> {
  await pane.getByRole("navigation", { name: "Places in the job" }).getByRole("button", { name: place, exact: true }).click();
  const neighbours = pane.getByRole("navigation", { name: `Screens of ${place}` });
  if (await neighbours.count()) await neighbours.getByRole("button", { name: title, exact: true }).click();
}
