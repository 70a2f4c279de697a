import "./engine";
import * as engine from "@odoo/o-spreadsheet";
import { JSDOM } from "jsdom";
import { type Opened, opened } from "./file/open";

// The engine checks for a DOM when it loads: it must be loaded before jsdom's DOMParser is made global.
const { DOMParser, XMLSerializer } = new JSDOM().window;
Object.assign(globalThis, { DOMParser, XMLSerializer });

/** A workbook file as the page would take it, read without a page. */
export const openedHere = (bytes: Uint8Array): Opened => opened(bytes, engine);
