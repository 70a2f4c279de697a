/** Words of the engine that mean nothing to a woodworker, and better ones. */
const words: Readonly<Record<string, string>> = {
  "An unexpected error occurred. Submit a support ticket at odoo.com/help.": "This cell cannot be worked out. Check its formula.",
  "This sheet is locked and cannot be modified. Please unlock it first.": "This sheet is protected: nothing can be typed here.",
  "This operation is not possible due to a merge. Please remove the merges first than try again.":
    "Merged cells are in the way. Unmerge them first.",
  "Merged cells found in the spill zone. Please unmerge cells before using array formulas.":
    "Merged cells are in the way of the answer. Unmerge them, or choose another cell.",
  "Array result was not expanded because it would overwrite data.": "The answer fills several cells, and one of them is filled: clear it.",
  "Data Validation": "What may be typed",
  "The data you entered in %s violates the data validation rule set on the cell:\n%s": "Cell %s did not take what you typed. %s",
  "The value does not match the custom formula data validation rule":
    "It is outside what this cell is for: see the heading or the words beside it.",
  "The value must be one of: %s": "It takes one of these: %s.",
  "The value must be a value in the range %s": "It takes one of the words in %s: press the arrow in the cell to choose.",
  "The value must be between %s and %s": "It takes a number from %s to %s.",
  "The value must be a valid date": "It takes a day, such as 2026-03-14.",
  "The value must be a date between %s and %s": "It takes a day from %s to %s.",
  "The value must be a date on or after %s": "It takes a day from %s on.",
  "The value must be greater than %s": "It takes a number above %s.",
  "The value must be greater or equal to %s": "It takes a number from %s up.",
  "The value must be less or equal to %s": "It takes a number up to %s.",
  "Split text to columns": "Split text into columns",
};

export const translated = (text: string, ..._: unknown[]): string => words[text] ?? text;

/** Menu entries without a use here: they need a server, or change the spelling of formulas. */
export const hidden: Readonly<Record<string, readonly string[]>> = {
  file: ["settings"],
  view: ["toggle_pin_panel", "view_irregularity_map"],
  insert: ["insert_pivot", "insert_image", "insert_carousel"],
  data: ["pivot_data_sources", "reinsert_dynamic_pivot", "reinsert_static_pivot"],
};
