import { first } from "../cautions";
import { toSheet } from "./onsheet";
import type { List } from "./schema";

/** The list as rows of a sheet of its own, to print. */
export function printedRows(of: List): string[][] {
  const { run, list } = toSheet(of);
  const heading = [
    ["Done?", "When", "What to do", "Why"],
    ["", "", first, ""],
  ];
  const names = ["day", "who runs it", "who stands by", "who calls for help"].map((name, i) => [
    "",
    name,
    i ? String(run[i][0]) : of.now.when,
    "",
  ]);
  return [...heading, ...names, ...list.filter((row) => row[2] !== "").map((row) => row.map(String))];
}
