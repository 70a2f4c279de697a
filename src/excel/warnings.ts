import { versionText } from "../version";
import { asked } from "./batch";

/** Whether this Excel writes a decimal comma; a version that does not tell is taken to write a point. */
export const hasCommas = async (): Promise<boolean> =>
  (await asked(async (context) => {
    const { numberFormat } = context.application.cultureInfo;
    numberFormat.load("numberDecimalSeparator");
    await context.sync();
    return numberFormat.numberDecimalSeparator === ",";
  })) ?? false;

/** The second day of 1904 is day 1 where days are counted from the first, and day 1463 everywhere else. */
const countsFrom1904 = async (): Promise<boolean> =>
  (await asked(async (context) => {
    const day = context.workbook.functions.date(1904, 1, 2);
    day.load("value");
    await context.sync();
    return day.value === 1;
  })) ?? false;

export async function warnings(functionsVersion: string | undefined): Promise<string[]> {
  const told: string[] = [];
  if (functionsVersion !== undefined && functionsVersion !== versionText)
    told.push(
      `This pane is version ${versionText} and the functions in cells are version ${functionsVersion}. Close Excel and open it again; it may keep the old functions for up to a day.`,
    );
  if (await countsFrom1904())
    told.push(
      "This workbook counts days from 1904, and Porewise from 1900: every date would be four years off. In Excel's options, under Advanced, uncheck “Use 1904 date system”, and type your dates again.",
    );
  return told;
}
