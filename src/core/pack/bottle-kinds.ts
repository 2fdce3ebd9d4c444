/** What a kind of bottle may be filled to. */
export interface WorkingLimit {
  /** Carbonation, volumes; absent where only the pressure counts. */
  readonly volumes?: number;
  /** Gauge pressure at the warmest storage, bar. */
  readonly gaugeBar: number;
}

/**
 * Working limits of bottle kinds: common practice and from memory, chosen on the low side; the maker's own sheet for a
 * bottle comes first. What can be named stands far above them, and why they are no higher:
 *
 * - New beer bottles are proofed to 12 bar for a minute (GB 4544; methods in ISO 7458 and ASTM C147). Under a load that
 *   lasts half a year glass bears under half of what it bears for a minute (load duration 0.663 t^(−1/16), t in hours, EN
 *   16612; from memory), and glass that was knocked, scratched or refilled some two thirds of that (our judgement): 3.5 bar.
 * - Heavier returnables and ale bottles: more glass by weight, no standard read; from memory.
 * - Sparkling-wine bottles are made for wine of 5 to 6 atm.
 * - Soda bottles of PET are sold with up to about 4 volumes; the plastic creeps when warm.
 * - A keg's plate bears its own figure (under the European directive on pressure equipment, or ASME's code), of which
 *   4 bar (60 psi) is the lowest in common use.
 */
export const bottleLimits = {
  ordinary: { volumes: 3, gaugeBar: 3.5 },
  heavy: { volumes: 3.5, gaugeBar: 4.2 },
  thick: { volumes: 4, gaugeBar: 5 },
  sparkling: { volumes: 6, gaugeBar: 6 },
  plastic: { volumes: 3.5, gaugeBar: 4.2 },
  keg: { gaugeBar: 4 },
} as const satisfies Record<string, WorkingLimit>;

export type VesselKind = keyof typeof bottleLimits;
export type BottleKind = Exclude<VesselKind, "keg">;
export const bottleKinds = ["ordinary", "heavy", "thick", "sparkling", "plastic"] as const satisfies readonly BottleKind[];
export const vesselKinds = [...bottleKinds, "keg"] as const satisfies readonly VesselKind[];

/** Carbonations that anybody may ask about, volumes: wide, since the judgement says what is too much. */
export const carbonationLimits = { atLeast: 0.5, atMost: 10 } as const;
