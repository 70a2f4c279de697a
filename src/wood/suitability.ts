import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said, tidy } from "../../shared/outcome";
import { row } from "../../shared/result";
import { choice, text } from "../../shared/words";
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

interface Judged {
  readonly grade: Grade | "dry first";
  /** What rules said, in the order they spoke. */
  readonly reason: string;
}

const allowance = 1e-9;

function byVoids(share: number, { goodVoids, fairVoids, poorVoids }: Given): number {
  const least = [poorVoids, fairVoids, goodVoids];
  return 1 + least.findLastIndex((voids) => share >= voids * (1 - allowance));
}

/** The best grade that a wood's heartwood allows. Deep decay has opened it. */
function heartwoodCap({ species }: Wood, condition: Condition): { best: number; reason: string } | undefined {
  const resists = species && condition !== "punky" ? resistanceOf.get(species.name) : undefined;
  if (!species || !resists) return undefined;
  const best = grades.indexOf(resists === "difficult" ? "fair" : "poor");
  return { best, reason: `; heartwood of ${species.name} is ${resists} to treat: at best ${grades[best]}` };
}

const percent = (share: number): string => `${tidy(100 * share)} %`;

function judged(given: Given): Judged {
  const { wood, thickness, moisture, condition = "sound", dryEnough, reach } = given;
  if (moisture > dryEnough * (1 + allowance))
    return { grade: "dry first", reason: `${percent(moisture)} moisture is over ${percent(dryEnough)}: water keeps resin out` };

  const share = Math.max(0, voidShare(wood.gravity, moisture));
  const first = byVoids(share, given);
  let grade = first;
  let reason = `${percent(share)} voids: ${grades[first]}`;
  if (thickness / 2 > reach * (1 + allowance)) {
    grade--;
    reason += "; half thickness is over the reach, the center stays weak and pale: one grade lower";
  }
  if (condition !== "sound") {
    grade++;
    reason += `; ${condition}, decay opens the structure: one grade higher`;
  }
  const cap = heartwoodCap(wood, condition);
  if (cap) reason += cap.reason;
  const within = Math.min(grades.length - 1, Math.max(0, grade));
  return { grade: grades[Math.min(within, cap?.best ?? within)], reason };
}

/** Grade of a piece and the rules that gave it. */
export const suitability = define({
  name: "SUITABILITY",
  per: "piece",
  asks: "Is this piece worth stabilizing?",
  args: {
    wood: woodArg,
    thickness: quantity("length", "thickness", 0.75, [0.01, 200]),
    moisture: optional(moistureShare, 0),
    condition: optional(choice("condition", conditions, "spalted")),
  },
  shop: { dryEnough, goodVoids, fairVoids, poorVoids, reach },
  returns: row({ grade: choice("grade", [...grades, "dry first"], "good"), reason: text("reason", "68.03 % voids: good") }),
  format: { grade: "General", reason: "General" },
  equation:
    "dry first if {moisture} is over {dryEnough}; else by {voids}: good from {goodVoids}, fair from {fairVoids}, poor from {poorVoids}; one lower if half of {thickness} is over {reach}; one higher if spalted or punky; resistant heartwood at best poor or fair unless punky",
  source:
    "common practice, no source: dense woods take little, decay opens the structure, the center of a large piece stays weak and pale; voids: Wood Handbook, FPL-GTR-282 (2021), eq. 4-3; resistant heartwoods after its Table 15-7, from memory, a short list",
  accuracy: "a hint, not a measurement: sapwood of a resistant wood takes more, tight grain and resin less; treat one piece and weigh it",
  cautions: ["dust", "wet wood"],
  worked: { typed: ["silver maple", 0.75], gives: ["good", "68.03 % voids: good"] },
  steps: ({ wood, moisture }) => ({ voids: said("share", Math.max(0, voidShare(wood.gravity, moisture))) }),
  run: (given) => judged(given),
});
