import { createStore, del, get, set } from "idb-keyval";
import { fromRecord, generationOf, toRecord, type WorkbookState } from "./kept-workbook";

/**
 * The workbook in the browser's IndexedDB, in two places that are written in turn: a writing that breaks off, or a
 * state that turns out damaged, never takes the other generation with it.
 */
const places = ["workbook-a", "workbook-b"] as const;
type Place = (typeof places)[number];

const store = createStore("gylebook-bench", "workbooks");

export interface Damage {
  /** Under this key the damaged record is kept for downloading. */
  key: string;
  record: unknown;
  reason: string;
}

export interface Kept {
  /** Newest first. */
  states: (WorkbookState & { savedAt: Date; place: Place })[];
  damages: Damage[];
}

let next: { place: Place; generation: number } = { place: places[0], generation: 1 };

/** Reads both generations. A damaged one is moved to a key of its own, so that its place can be written again. */
export async function readKept(): Promise<Kept> {
  const records = await Promise.all(places.map(async (place) => ({ place, record: await get<unknown>(place, store) })));
  const present = records
    .filter(({ record }) => record !== undefined)
    .sort((one, other) => generationOf(other.record) - generationOf(one.record));
  const kept: Kept = { states: [], damages: [] };
  for (const { place, record } of present) {
    try {
      kept.states.push({ ...fromRecord(record), place });
    } catch (problem) {
      kept.damages.push(await setAside(place, record, (problem as Error).message));
    }
  }
  const newest = kept.states[0];
  next = {
    place: newest === undefined ? places[0] : otherThan(newest.place),
    generation: Math.max(0, ...present.map(({ record }) => generationOf(record))) + 1,
  };
  return kept;
}

/** Takes a record that cannot be opened out of the way without losing it. */
export async function setAside(place: Place, record: unknown, reason: string): Promise<Damage> {
  const key = `damaged-${new Date().toISOString()}-${place}`;
  await set(key, record, store);
  await del(place, store);
  return { key, record, reason };
}

/** Writes over the older generation. Writings may overlap: storage does them in the order in which they were asked for. */
export async function keep(state: WorkbookState): Promise<Date> {
  const now = new Date();
  const mine = next;
  next = { place: otherThan(mine.place), generation: mine.generation + 1 };
  try {
    await set(mine.place, toRecord(state, mine.generation, now), store);
  } catch (problem) {
    // The other place now holds the newest state: the next attempt must not touch it.
    next = { ...next, place: mine.place };
    throw problem;
  }
  return now;
}

const otherThan = (place: Place): Place => (place === places[0] ? places[1] : places[0]);
