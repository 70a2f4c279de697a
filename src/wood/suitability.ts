import { type Arg, choice, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { type Said, said, sayIn } from "../../shared/outcome";
import { row } from "../../shared/result";
import { resistanceOf } from "./heartwood";
import { dryEnough, fairVoids, goodVoids, poorVoids, reach } from "./settings";
import { moistureShare, voidShare } from "./voids";
import { type Wood, woodArg } from "./wood";

/** From worst to best. */
const grades = ["unsuited", "poor", "fair", "good"] as const;
type Grade = (typeof grades)[number];

const conditions = ["sound", "spalted", "punky"] as const;
type Condition = (typeof conditions)[number];

interface Given {
  readonly wood: Wood;
  readonly thickness: number;
  readonly moisture: number;
  readonly condition?: Condition;
  readonly dryEnough: number;
  readonly goodVoids: number;
  readonly fairVoids: number;
  readonly poorVoids: number;
  readonly reach: number;
}

/** What rules said, in the order they spoke. */
type Reason = readonly (string | Said)[];
interface Judged {
  readonly grade: Grade | "dry first";
  readonly reason: Reason;
}

const allowance = 1e-9;

function byVoids(share: number, { goodVoids, fairVoids, poorVoids }: Given): number {
  const least = [poorVoids, fairVoids, goodVoids];
  return 1 + least.findLastIndex((voids) => share >= voids * (1 - allowance));
}

/** The best grade that a wood's heartwood allows. Deep decay has opened it. */
function heartwoodCap({ species }: Wood, condition: Condition): { best: number; reason: Reason } | undefined {
  const resists = species && condition !== "punky" ? resistanceOf.get(species.name) : undefined;
  if (!species || !resists) return undefined;
  const best = grades.indexOf(resists === "difficult" ? "fair" : "poor");
  return { best, reason: [`; heartwood of ${species.name} is ${resists} to treat: at best ${grades[best]}`] };
}

function judged(given: Given): Judged {
  const { wood, thickness, moisture, condition = "sound", dryEnough, reach } = given;
  if (moisture > dryEnough * (1 + allowance))
    return {
      grade: "dry first",
      reason: [said("share", moisture), " moisture is over ", said("share", dryEnough), ": water keeps resin out"],
    };

  const share = Math.max(0, voidShare(wood.gravity, moisture));
  const first = byVoids(share, given);
  const thick = thickness / 2 > reach * (1 + allowance);
  const open = condition !== "sound";
  const cap = heartwoodCap(wood, condition);
  const moved = Math.min(grades.length - 1, Math.max(0, first - Number(thick) + Number(open)));
  return {
    grade: grades[Math.min(moved, cap?.best ?? moved)],
    reason: [
      said("share", share),
      ` voids: ${grades[first]}`,
      ...(thick ? ["; half thickness is over ", said("length", reach), ", the centre stays weak and pale: one lower"] : []),
      ...(open ? [`; ${condition}, decay opens the structure: one higher`] : []),
      ...(cap?.reason ?? []),
    ],
  };
}

const reasonCell: Arg<Reason> = {
  label: "reason",
  example: "67.66 % voids: good",
  sample: () => "words",
  read: () => [],
  show: (reason: Reason, units) => reason.map((part) => (typeof part === "string" ? part : sayIn(units, part))).join(""),
};

/** Grade of a piece and the rules that gave it. */
export const suitability = define({
  name: "SUITABILITY",
  per: "piece",
  asks: "Is this piece worth stabilising?",
  args: {
    wood: woodArg,
    thickness: quantity("length", "thickness", 0.75, [0.01, 200]),
    moisture: optional(moistureShare, 0),
    condition: optional(choice("condition", conditions, "spalted")),
  },
  shop: { dryEnough, goodVoids, fairVoids, poorVoids, reach },
  returns: row({ grade: choice("grade", [...grades, "dry first"], "good"), reason: reasonCell }),
  format: { grade: "@", reason: "@" },
  equation:
    "dry first if {moisture} is over {dryEnough}; else by {voids}: good from {goodVoids}, fair from {fairVoids}, poor from {poorVoids}; one lower if half of {thickness} is over {reach}; one higher if spalted or punky; resistant heartwood at best poor or fair unless punky",
  source:
    "common practice, no source: dense woods take little, decay opens the structure, the centre of a large piece stays weak and pale; voids: Wood Handbook, FPL-GTR-282 (2021), eq. 4-3; resistant heartwoods after its Table 15-7, from memory, a short list",
  accuracy: "a hint, not a measurement: sapwood of a resistant wood takes more, tight grain and resin less; treat one piece and weigh it",
  cautions: ["dust", "wet wood"],
  worked: { typed: ["silver maple", 0.75], gives: ["good", "67.66 % voids: good"] },
  steps: ({ wood, moisture }) => ({ voids: said("share", Math.max(0, voidShare(wood.gravity, moisture))) }),
  run: (given) => judged(given),
});
