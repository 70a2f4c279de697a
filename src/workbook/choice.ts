/** Which file of the template: with our functions or with plain formulas, in which units, with demo data or empty. */
export interface Choice {
  readonly edition: "live" | "plain";
  readonly units: "us" | "si";
  readonly empty: boolean;
}

/** The folder of the built site that holds the files. */
export const folder = "workbook";

export const nameOf = ({ edition, units, empty }: Choice): string => `porewise-${edition}-${units}${empty ? "-empty" : ""}.xlsx`;
