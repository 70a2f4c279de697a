// Runs in the page: stands where Excel would, at the other end of the library's bridge. All that crosses it is JSON.
// Calls go in as one message; answers come back in requests of the library, which are acknowledged as Excel does.
const waiting = new Map();

const bridge = {
  sendMessageToHost(text) {
    const { id, type, message } = JSON.parse(text);
    if (type !== 1) return;
    const results = message.body.Actions.map(({ Id, Name, ArgumentInfo }) => {
      if (Name === "SetInvocationArrayResults") for (const answer of ArgumentInfo.Arguments[0]) settle(answer);
      return { ActionId: Id, Value: null };
    });
    toLibrary({ id, type: 1, message: { statusCode: 200, headers: {}, body: { Results: results } } });
  },
};

const toLibrary = (message) => setTimeout(() => bridge.onMessageFromHost(JSON.stringify(message)));

function settle([id, worked, value, code]) {
  waiting.get(id)?.({ worked, value, code });
  waiting.delete(id);
}

globalThis.beExcel = () => {
  OfficeExtension.HostBridge.init(bridge);
  sayReady({ host: "Excel", platform: "PC" });
};

// Each call: a function's id, its arguments as Excel would pack them, address and flags.
globalThis.callAsExcel = (calls) => {
  const answers = calls.map((_, id) => new Promise((answered) => waiting.set(id, answered)));
  toLibrary({ id: null, type: 3, message: { entries: calls.map((call, id) => [1, 1000, "", [id, ...call], id]) } });
  return Promise.all(answers);
};
