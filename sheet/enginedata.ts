/** The form of the engine's data that is written here. */
export const version = "19.3.2";

/** Days as a person of this language types them: 3/4 is a day of March to some and of April to others. */
function dateFormat(language: string): string {
  const [first] = new Intl.DateTimeFormat(language).formatToParts(0).flatMap(({ type }) => (/^(day|month|year)$/.test(type) ? [type] : []));
  return { day: "dd/mm/yyyy", month: "mm/dd/yyyy" }[first as string] ?? "yyyy-mm-dd";
}

/** Points in numbers and commas between arguments, as formulas are written here; days in a person's own order. */
export const localeOf = (language: string) => ({
  name: "International",
  code: "en_US",
  thousandsSeparator: ",",
  decimalSeparator: ".",
  weekStart: 1,
  dateFormat: dateFormat(language),
  timeFormat: "hh:mm",
  formulaArgSeparator: ",",
});
