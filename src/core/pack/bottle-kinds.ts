/** What a kind of bottle may be filled to. */
export interface WorkingLimit {
  /** Carbonation, volumes; absent where only the pressure counts. */
  readonly volumes?: number;
  /** Gauge pressure at the warmest storage, bar. */
  readonly gaugeBar: number;
}

/**
 * Working limits of bottle kinds: common practice and from memory, chosen on the low side. New glass is proofed far
 * higher (GB 4544 asks new beer bottles to stand 12 bar), but a proof is not a working limit: glass that has been
 * knocked, scratched or refilled breaks at a fraction of it. The pressures of the first three are what their volumes
 * make at about 27 °C; sparkling-wine bottles are made for 5 to 6 atm; a keg's plate bears its own figure, of which
 * 4 bar (60 psi) is the lowest in common use.
 */
export const bottleLimits = {
  ordinary: { volumes: 3, gaugeBar: 3.5 },
  heavy: { volumes: 3.5, gaugeBar: 4.2 },
  thick: { volumes: 4, gaugeBar: 5 },
  sparkling: { volumes: 6, gaugeBar: 6 },
  plastic: { volumes: 3.5, gaugeBar: 4.2 },
  keg: { gaugeBar: 4 },
} as const satisfies Record<string, WorkingLimit>;

export type BottleKind = keyof typeof bottleLimits;
export const bottleKinds = ["ordinary", "heavy", "thick", "sparkling", "plastic", "keg"] as const satisfies readonly BottleKind[];
