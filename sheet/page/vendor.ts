import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { App as OwlApp } from "@odoo/owl";

/** The packages' own files stand beside the page unmodified and set these globals before our script runs. */
declare const o_spreadsheet: typeof OSpreadsheet;
declare const owl: { App: typeof OwlApp };

export const engine = o_spreadsheet;
export const { App } = owl;
