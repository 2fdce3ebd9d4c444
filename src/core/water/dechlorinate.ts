/** Molar masses of the metabisulfites, g/mol, from atomic weights. */
export const metabisulfites = { potassium: 222.324, sodium: 190.107 } as const;
export type Metabisulfite = keyof typeof metabisulfites;
export const metabisulfiteKinds = Object.keys(metabisulfites) as readonly Metabisulfite[];

export const chlorineMolarMass = 70.906;

/** Old powder has lost some of its strength: the dose is a quarter above the bare sum. */
export const excess = 1.25;

/**
 * Metabisulfite that takes the chlorine or chloramine out of water, mg: S2O5 + 2 Cl2 + 3 H2O → 2 SO4 + 4 Cl + 6 H, and a
 * quarter more. Chloramine counts the same when it is given as chlorine, as waterworks do.
 */
export function metabisulfiteMg(volumeL: number, chlorineMgPerL: number, kind: Metabisulfite): number {
  return (volumeL * chlorineMgPerL * excess * metabisulfites[kind]) / (2 * chlorineMolarMass);
}
