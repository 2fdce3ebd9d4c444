import { gravityFromPlato, platoFromGravity } from "./plato";

/**
 * Specific gravity 20/20 °C of worts poured together: masses and sugar add up (volumes do not quite).
 *
 * @param worts volumes in any one unit, at 20 °C; at least one
 */
export function mixedGravity(worts: readonly { readonly volume: number; readonly gravity: number }[]): number {
  let mass = 0;
  let sugar = 0;
  for (const { volume, gravity } of worts) {
    mass += volume * gravity;
    sugar += volume * gravity * platoFromGravity(gravity);
  }
  return gravityFromPlato(sugar / mass);
}
