/** Asked one after another: a formula that is put together from more cells than this is no single number's. */
const most = 6;

/** The single cells that a formula is put together from, as the sheet that holds it writes them; ranges and names are passed over. */
export function cellsIn(formula: string, address: string): readonly string[] {
  const own = address.slice(0, address.lastIndexOf("!") + 1);
  const found = formula
    .replace(/"[^"]*"/g, '""')
    .matchAll(/(?<![\w.:!'$])((?:'(?:[^']|'')+'|[A-Za-z_][\w.]*)!)?(\$?[A-Z]{1,3}\$?\d{1,7})(?![\w.:(!])/g);
  const all = [...found].map(([, sheet = own, cell]) => sheet + cell.replaceAll("$", ""));
  return [...new Set(all)].slice(0, most);
}
