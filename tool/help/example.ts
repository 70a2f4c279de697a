import type { Contract } from "../../shared/contract";
import type { Entries } from "../../shared/form";
import { linesOf, tableOf } from "../../taskpane/answer";
import { type Asked, ask, shopName } from "../../taskpane/asking";
import { escaped, scrolled } from "./markup";

/** A value of a worked example as a person types it into a field: a line a row. */
const typedText = (value: unknown): string =>
  Array.isArray(value) ? value.map((row) => (Array.isArray(row) ? row.join(", ") : String(row))).join("\n") : String(value ?? "");

/** The worked example of a contract as a form holds it. */
export function exampleOf(contract: Contract) {
  const names = Object.keys(contract.args);
  const { typed } = contract.worked;
  const texts = Object.fromEntries(
    names.flatMap((name, i) => (typed[i] === undefined || typed[i] === "" ? [] : [[name, typedText(typed[i])]])),
  );
  const shop = typed[names.length] as (string | number)[][] | undefined;
  return { name: contract.name, typed: texts, ...(shop ? { shop } : {}) };
}

/** The example as it is answered. */
export function answered(contract: Contract): Asked {
  const { typed, shop } = exampleOf(contract);
  const entries: Entries = Object.fromEntries(Object.entries(typed).map(([name, text]) => [name, { typed: text }]));
  return ask(contract, entries, shop ? shopName : "US", shop);
}

export function answerWords(contract: Contract): string {
  const { answer, shop, many } = answered(contract);
  if (!answer) return "";
  if (many || contract.returns.form === "table" || contract.returns.form === "spread") {
    const { head, rows } = tableOf(contract, answer, shop.units);
    const cells = (row: readonly string[], as: string) => `<tr>${row.map((text) => `<${as}>${escaped(text)}</${as}>`).join("")}</tr>`;
    return scrolled("Answer", `<table>${cells(head, "th")}${rows.map((row) => cells(row, "td")).join("")}</table>`);
  }
  return `<ul>${linesOf(contract, answer[0], shop.units)
    .map(({ label, value }) => `<li>${escaped(label)}: <strong>${escaped(value)}</strong></li>`)
    .join("")}</ul>`;
}
