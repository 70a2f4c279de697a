import { hour, minute } from "../../../src/run/hours";
import { problemsOf } from "../../../src/run/problems";
import { finish } from "../../../src/run/progress";
import { type Run, stepOf } from "../../../src/run/schema";
import { begunNow, demo, made, piece, telling } from "./run";

const said = (run: Run, id: string, now: number) => problemsOf(run, stepOf(run, id), now, telling).join(" ");

it("finds nothing wrong with a run in time", () => {
  const run = made();
  for (const { id } of run.steps) expect(said(run, id, run.origin)).toBe("");
});

it("says at the step that its start has passed", () => {
  const run = made();
  expect(said(run, "choose", demo - 10 * minute)).toMatch(/^It was due to start at 13:15, 35 min ago\./);
  expect(said(run, "safety", demo - 10 * minute)).not.toMatch(/was due to start/);
});

it("says at each step that it cannot be in time for the demo, and which are not for it", () => {
  const run = made({ loads: [{ pieces: [piece(4)] }, { pieces: [piece(4)] }] });
  const now = demo - hour;
  for (const id of ["vacuum-1", "bake-1", "cool-1", "load-2"])
    expect(said(run, id, now)).toMatch(/will not be done in time for the demo at 14:00/);
  expect(said(run, "soak-2", now)).toBe("");
});

it("says at the step which number is missing, and why", () => {
  const thick = made({ loads: [{ pieces: [piece(1, { thickness: 3, width: 3, dry: undefined })] }] });
  expect(said(thick, "bake-1", thick.origin)).toMatch(/thick/);
  const many = made({ loads: [{ pieces: [piece(4)] }, { pieces: [piece(5000)] }] });
  expect(said(many, "mix", many.origin)).toMatch(/^Load 2: does not fit into one load: it takes \d+/);
  expect(said(many, "load-2", many.origin)).toMatch(/does not fit/);
  const unknown = made({ loads: [{ pieces: [piece(4, { wood: "woood", dry: undefined })] }] });
  expect(said(unknown, "choose", unknown.origin)).toMatch(/woood/);
});

it("says that a step runs past closing time", () => {
  const run = begunNow({ begins: { how: "now", at: demo + 3 * hour } });
  expect(said(run, "vacuum-1", run.begins.at)).toMatch(/outside the hours on My Shop \(08:00 to 20:00\)/);
  expect(said(finish(run, "choose", run.begins.at), "choose", demo + 9 * hour)).toBe("");
});
