/** Where a cell is, by the grid's ids, zero-based. */
export interface CellPlace {
  unitId: string;
  sheetId: string;
  row: number;
  column: number;
}

export const cellKey = ({ unitId, sheetId, row, column }: CellPlace): string => `${unitId}\n${sheetId}\n${row}\n${column}`;
