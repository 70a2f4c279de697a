import { type Answers, answers } from "../../src/run/answers";

declare global {
  /** The functions, as the run view asks them: it comes in a script of its own and brings none along. */
  var porewiseAnswers: Answers;
}

let asked: Promise<void> | undefined;

/** Brings the run view in, with its looks; a second look asks nothing anew. */
export function loadRun(): Promise<void> {
  globalThis.porewiseAnswers = answers;
  asked ??= new Promise<void>((done, failed) => {
    const looks = Object.assign(document.createElement("link"), { rel: "stylesheet", href: "run.css" });
    const script = Object.assign(document.createElement("script"), { src: "run.js", onload: () => done(), onerror: failed });
    document.head.append(looks, script);
  }).catch((error) => {
    asked = undefined;
    throw error;
  });
  return asked;
}
