import "./loaded";
import { DOMParser } from "linkedom";
import { Unreadable } from "../../../shared/xlsx/unzip";
import { extend } from "../../extend";
import { opened } from "../../file/open";
import { register } from "../../functions";
import { engine } from "../vendor";
import type { Told } from "./reading";

/** Reads workbook files beside the page, which stays at hand meanwhile and may end this at any time. */

register(engine);
extend(engine);
// A worker has no reader of XML of its own; the engine must have loaded before it finds one.
Object.assign(globalThis, { DOMParser });

const tell = (told: Told): void => (globalThis as unknown as Worker).postMessage(told);

function read(bytes: Uint8Array): Told {
  try {
    const { file: _, ...content } = opened(bytes, engine, (progress) => tell({ progress }));
    return { content };
  } catch (error) {
    return error instanceof Unreadable
      ? { refused: error.message }
      : { refused: `something in it cannot be read here (${(error as Error).message})` };
  }
}

addEventListener("message", ({ data }: MessageEvent<Uint8Array>) => tell(read(data)));
tell({ ready: true });
