/**
 * Entries of the grid's own menus that make no sense on the bench: rights of other users (there are none), and ten lists
 * of functions beside the one that holds all.
 */
const entries = [
  "sheet.command.add-range-protection-from-toolbar",
  "sheet.contextMenu.permission",
  "sheet.command.add-range-protection-from-sheet-bar",
  "sheet.command.delete-worksheet-protection-from-sheet-bar",
  "sheet.command.change-sheet-protection-from-sheet-bar",
  "sheet.command.view-sheet-permission-from-sheet-bar",
  ...["financial", "logical", "text", "date", "lookup", "math", "statistical", "engineering", "information", "database"].map(
    (category) => `formula-ui.operation.insert-function.${category}`,
  ),
];

export const hiddenMenus: Record<string, { hidden: true }> = Object.fromEntries(entries.map((id) => [id, { hidden: true }]));
