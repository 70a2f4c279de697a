import { findProgram } from "../tool/programs";

/** A suite that needs other programs is left out where a machine lacks one; on a build machine it runs, and so fails. */
export const needing = (...programs: Parameters<typeof findProgram>[0][]): jest.Describe =>
  process.env.CI || programs.every(findProgram) ? describe : describe.skip;
