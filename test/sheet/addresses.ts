/** "B3" as the engine counts: from zero. */
export const addresses = (address: string): { col: number; row: number } => ({
  col: address.charCodeAt(0) - 65,
  row: Number(address.slice(1)) - 1,
});
