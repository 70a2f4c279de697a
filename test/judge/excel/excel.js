// Runs in the page: a workbook at the other end of the library's bridge. It takes the library's batches apart and plays their
// steps on plain objects, whose members are named as the batches name them. Protection, editing and failures are put on.
import { played } from "./batch.js";
import { book } from "./book.js";
import { next } from "./names.js";

const bridge = {
  sendMessageToHost(text) {
    const { id, type, message } = JSON.parse(text);
    if (type !== 1) return;
    const body = played(message.body);
    toLibrary({ id, type: 1, message: { statusCode: 200, headers: {}, body } });
  },
};
const toLibrary = (message) => setTimeout(() => bridge.onMessageFromHost(JSON.stringify(message)));

/** Tells the library of an event, by the number that it has for it. */
book.tell = (type, message) =>
  toLibrary({ id: null, type: 3, message: { entries: [[65536, type, "Workbook", JSON.stringify(message), next()]] } });

/** Has a cell call a function: its id and its arguments, packed as Excel packs them. */
book.ask = (address, id, parameters) => {
  const call = next();
  toLibrary({ id: null, type: 3, message: { entries: [[1, 1000, "", [call, id, parameters, address, 4], call]] } });
};

globalThis.beExcel = (platform = "PC") => {
  globalThis.OfficeExtension.HostBridge.init(bridge);
  globalThis.sayReady({ host: "Excel", platform });
};
