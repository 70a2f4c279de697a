/** The form of the engine's data that is written here. */
export const version = "19.3.2";

/** Points in numbers, commas between arguments, and days that read one way only. */
export const locale = {
  name: "International",
  code: "en_US",
  thousandsSeparator: ",",
  decimalSeparator: ".",
  weekStart: 1,
  dateFormat: "yyyy-mm-dd",
  timeFormat: "hh:mm",
  formulaArgSeparator: ",",
};
