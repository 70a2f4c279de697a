/** Words of the engine that say nothing to a person at a bench, and better ones. */
const words: Readonly<Record<string, string>> = {
  "An unexpected error occurred. Submit a support ticket at odoo.com/help.": "This cell cannot be worked out. Check its formula.",
  "This sheet is locked and cannot be modified. Please unlock it first.": "This sheet is protected: nothing can be typed here.",
  "This operation is not possible due to a merge. Please remove the merges first than try again.":
    "Merged cells are in the way. Unmerge them first.",
  "Merged cells found in the spill zone. Please unmerge cells before using array formulas.":
    "Merged cells are in the way of the answer. Unmerge them, or choose another cell.",
  "Array result was not expanded because it would overwrite data.": "The answer fills several cells, and one of them is filled: clear it.",
  "Data Validation": "What may be typed",
  "Split text to columns": "Split text into columns",
};

export const translated = (text: string, ..._: unknown[]): string => words[text] ?? text;

/** Menu entries that mean nothing here: they want a server behind the sheet, or change how formulas are spelled. */
export const hidden: Readonly<Record<string, readonly string[]>> = {
  file: ["settings"],
  view: ["toggle_pin_panel", "view_irregularity_map"],
  insert: ["insert_pivot", "insert_image", "insert_carousel"],
  data: ["pivot_data_sources", "reinsert_dynamic_pivot", "reinsert_static_pivot"],
};
