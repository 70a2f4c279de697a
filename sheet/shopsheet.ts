import { said, sayIn } from "../shared/outcome";
import { isoDate } from "../shared/serial";
import type { Setting } from "../shared/settings";
import { shopReader } from "../shared/settings";
import { shop as chosen } from "../src/demo";
import { settings, settingsBySubject } from "../src/shop";
import { ink, input, paper, quiet, teal, tealPale } from "./colours";
import { type Book, widths } from "./data";

const shopSheet = "My Shop";

const first = 4;
const lines = Object.entries(settingsBySubject).flatMap(([subject, own]) => [subject, ...own]);
const last = first + lines.length;

/** Where a setting's value stands, for formulas on other sheets. */
export const settingCell = (name: string): string => {
  const line = lines.findIndex((entry) => typeof entry !== "string" && entry.name === name);
  return `'${shopSheet}'!$B$${first + 1 + line}`;
};

/** What the formulas call MyShop: headings, names and values. */
export const shopRange = `'${shopSheet}'!$A$${first}:$B$${last}`;

const standard = shopReader(settings)(undefined);

/** What holds where the table says nothing, under US units. */
function otherwise(setting: Setting): string {
  if (setting.name === "scale reads") return "oz, or g under SI";
  const value = standard.get(setting);
  if (value === undefined) return "none";
  if (setting.kind === "date") return isoDate(value);
  return typeof value === "number" && setting.kind ? sayIn(standard.units, said(setting.kind, value)) : String(value);
}

const choices = lines.flatMap((entry, i) => {
  if (typeof entry === "string" || !entry.choices) return [];
  const criterion = { type: "isValueInList" as const, values: [...entry.choices], displayStyle: "arrow" as const };
  return [{ id: `choice${i}`, criterion, ranges: [`B${first + 1 + i}`] }];
});

/** The table of settings, every one with its default and where that comes from. */
export function addShopSheet(book: Book): void {
  const size = { columns: 5, rows: last + 10 };
  const layout = {
    cols: widths([190, 110, 150, 370, 480]),
    rows: { 0: { size: 38 }, 1: { size: 26 }, 2: { size: 10 }, 3: { size: 28 } },
    panes: { xSplit: 0, ySplit: first },
    areGridLinesVisible: false,
    dataValidationRules: choices as never,
  };
  book.sheet("shop", shopSheet, size, layout, (draft) => {
    draft.put("A1", "My Shop", { style: { bold: true, fontSize: 16, textColor: teal, verticalAlign: "middle" } });
    draft.put("A2", "Type a value into the second column and every formula follows. Where it is blank, the third column holds.", {
      style: { textColor: quiet },
    });
    const head = { style: { bold: true, textColor: "#ffffff", fillColor: teal, verticalAlign: "middle" as const } };
    ["setting", "here", "otherwise", "what it is", "where that comes from"].forEach((word, i) => {
      draft.put(`${"ABCDE"[i]}${first}`, word, head);
    });
    lines.forEach((entry, i) => {
      const row = first + 1 + i;
      if (typeof entry === "string") {
        draft.put(`A${row}`, entry, { style: { bold: true, textColor: teal, fillColor: tealPale } });
        draft.paint(`B${row}:E${row}`, { style: { fillColor: tealPale } });
        return;
      }
      draft.put(`A${row}`, entry.name, { style: { textColor: ink } });
      const look = { style: { textColor: input, fillColor: paper, align: "right" as const } };
      if (entry.name in chosen) draft.put(`B${row}`, chosen[entry.name], look);
      else draft.paint(`B${row}`, look);
      draft.put(`C${row}`, otherwise(entry), { style: { textColor: quiet, align: "left" } });
      draft.put(`D${row}`, entry.label, { style: { textColor: ink } });
      draft.put(`E${row}`, entry.basis, { style: { textColor: quiet } });
    });
  });
}
