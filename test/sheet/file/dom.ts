import "../../../sheet/engine";
import { JSDOM } from "jsdom";

// The engine looks for a page when it loads: it must have loaded before it finds a reader of XML.
const { DOMParser, XMLSerializer } = new JSDOM().window;
Object.assign(globalThis, { DOMParser, XMLSerializer });
