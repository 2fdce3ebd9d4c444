/** Entries of the grid's own menus that make no sense on the bench. */
export const hiddenMenus: Record<string, { hidden: true }> = {};
