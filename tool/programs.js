const { existsSync } = require("node:fs");
const { delimiter, join } = require("node:path");

// Plain Node: this is asked before any package is installed.

/** Programs that judge ours, where they install themselves, by platform. */
const places = {
  browser: {
    linux: ["/opt/google/chrome/chrome", "/snap/bin/chromium"],
    darwin: [
      "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
      "/Applications/Chromium.app/Contents/MacOS/Chromium",
      "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    ],
    win32: ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].flatMap((variable) => {
      const folder = process.env[variable];
      return folder ? [`${folder}/Google/Chrome/Application/chrome.exe`, `${folder}/Microsoft/Edge/Application/msedge.exe`] : [];
    }),
  },
  firefox: {
    linux: ["/snap/bin/firefox"],
    darwin: ["/Applications/Firefox.app/Contents/MacOS/firefox"],
    win32: ["PROGRAMFILES", "PROGRAMFILES(X86)"].flatMap((variable) => {
      const folder = process.env[variable];
      return folder ? [`${folder}/Mozilla Firefox/firefox.exe`] : [];
    }),
  },
  nginx: { linux: ["/usr/sbin/nginx"] },
  caddy: {},
  paper: {},
  spreadsheet: {
    linux: ["/usr/local/bin/soffice", "/opt/libreoffice/program/soffice"],
    darwin: ["/Applications/LibreOffice.app/Contents/MacOS/soffice"],
    win32: ["PROGRAMFILES", "PROGRAMFILES(X86)"].flatMap((variable) => {
      const folder = process.env[variable];
      return folder ? [`${folder}/LibreOffice/program/soffice.exe`] : [];
    }),
  },
};

/** What a shell calls them. */
const commands = {
  browser: ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge"],
  firefox: ["firefox-esr", "firefox"],
  spreadsheet: ["soffice"],
  paper: ["pdftotext"],
  nginx: ["nginx"],
  caddy: ["caddy"],
};

/** Another place may be named for each. */
const variables = {
  browser: "PORE_BROWSER",
  firefox: "PORE_FIREFOX",
  spreadsheet: "PORE_SPREADSHEET",
  paper: "PORE_PDFTOTEXT",
  nginx: "PORE_NGINX",
  caddy: "PORE_CADDY",
};

/** The full path of an installed program, or nothing. */
exports.findProgram = (which) => {
  const named = process.env[variables[which]];
  if (named) return existsSync(named) ? named : undefined;
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  const onPath = commands[which].flatMap((command) => folders.map((folder) => join(folder, command)));
  return [...onPath, ...(places[which][process.platform] ?? [])].find((path) => existsSync(path));
};
