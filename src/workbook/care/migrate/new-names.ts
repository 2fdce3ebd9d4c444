/** Names of single cells that each version of the plan has beyond the one before. Names of the chart's figures come with the chart. */
export const newNames: Readonly<Record<number, readonly string[]>> = {
  2: ["batch_id", "kit_name"],
  3: [
    "absorption",
    "tun_dead_space",
    "tun_size",
    "sanitiser_per_volume",
    "stand_temperature",
    "stand_minutes",
    "dry_hopped_on",
    "collected",
    "headspace",
    "stand_after",
    "pitch_line",
    "pitched_at",
    "vessel",
    "warmest",
    "ends_at",
    "primed_gas",
    "abv_bottle",
    "count_from",
    "verdict_rests",
    "abv_now",
    "abv_spread",
    "energy_now",
  ],
};

/** Every name that a sheet of this version lacks, oldest first. */
export const namesSince = (version: number): readonly string[] =>
  Object.entries(newNames).flatMap(([to, names]) => (Number(to) > version ? names : []));
