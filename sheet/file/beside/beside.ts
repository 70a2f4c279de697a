import type { Documents } from "../../../shared/xlsx/documents";
import type { KeptCharts } from "./charts";
import type { KeptLink } from "./links";
import type { Looks } from "./looks";
import type { KeptNote } from "./notes";
import type { BySheet } from "./piece";
import type { Print } from "./print";
import type { Properties } from "./properties";
import type { Sizes } from "./sizes";
import type { KeptTable } from "./tables";
import type { KeptValidations } from "./validations";

/** What a workbook holds beside what the engine keeps, each by the name of its piece. */
export interface Beside {
  /** The file that the workbook came from, as it came. */
  readonly file?: Uint8Array;
  readonly documents: Documents;
  readonly print: BySheet<Print>;
  readonly charts?: BySheet<KeptCharts>;
  readonly links?: BySheet<readonly KeptLink[]>;
  readonly notes?: BySheet<readonly KeptNote[]>;
  readonly sizes?: BySheet<Sizes>;
  readonly tables?: BySheet<readonly KeptTable[]>;
  readonly validations?: BySheet<KeptValidations>;
  readonly looks?: Looks;
  readonly properties?: Properties;
}
