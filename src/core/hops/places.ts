/**
 * Places of a hop that are not so many minutes before the end of the boil: in the kettle before it boils, in wort that
 * stands hot after the flame is out, or in the fermenter.
 */
export const hopPlaces = ["first wort", "stand", "dry"] as const;
export type HopPlace = (typeof hopPlaces)[number];

/** When a hop goes in: minutes left of the boil, or a place by name. */
export type WhenAdded = number | HopPlace;
