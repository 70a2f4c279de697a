import type { Standing } from "./current";

/** As this browser's language has it: 4:56 AM, or 04:56. */
const clock = (moment: number) =>
  new Date(moment).toLocaleTimeString(undefined, { hour: "numeric", minute: "2-digit" }).replace("\u202f", " ");

/** What was kept of a workbook, and what was not: the engine may fail on one formula. */
function keptWords({ moment, missing = [] }: Standing): string {
  if (!missing.length) return `saved ${clock(moment)}`;
  const cells = missing.filter((one) => one.includes("!"));
  const words = [
    ...(cells.length ? [`the ${cells.length === 1 ? "formula" : "formulas"} in ${cells.join(", ")} (the value is saved instead)`] : []),
    ...missing.filter((one) => !one.includes("!")),
  ];
  return `saved ${clock(moment)}, but not ${words.join("; ")}`;
}

/** How keeping stands, for a person to read; who is at fault is named. */
export function standingWords(standing: Standing): string {
  switch (standing.state) {
    case "waiting":
      return "saving";
    case "kept":
      return keptWords(standing);
    case "full":
      return "not saved: this browser has no room left. Save it as a file, or delete old workbooks";
    case "failed":
      return "not saved: this browser does not let this page keep anything. Save it as a file, and leave the page open";
    case "stuck":
      return `not saved: the spreadsheet on this page could not read its own cells (${standing.why}). Your earlier versions are kept. Leave the page open and try Undo`;
    case "read only":
      return "open in another tab: here it can only be read";
  }
}
