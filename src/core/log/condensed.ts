import type { Reading } from "./readings";

/** Readings close together, as one: the mean of their times and gravities, and how many they are. */
export interface GroupedReading extends Reading {
  readonly readings: number;
}

/** So many readings can be followed one by one. */
const fewEnough = 24;
const groupDays = 0.25;

/** A log as it is fitted: a floating instrument's readings are taken together by quarters of a day, counted from the first. */
export function condensed(readings: readonly Reading[]): GroupedReading[] {
  if (readings.length <= fewEnough) return readings.map((reading) => ({ ...reading, readings: 1 }));
  const start = readings[0]?.day ?? 0;
  const groups = new Map<number, Reading[]>();
  for (const reading of readings) {
    const key = Math.floor((reading.day - start) / groupDays);
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  return [...groups.values()].map((group) => ({
    day: group.reduce((sum, { day }) => sum + day, 0) / group.length,
    gravity: group.reduce((sum, { gravity }) => sum + gravity, 0) / group.length,
    readings: group.length,
  }));
}
