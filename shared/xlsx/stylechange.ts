/** A border of a cell on one side; null removes it. */
export interface Edge {
  readonly style: string;
  /** `#RRGGBB`. */
  readonly color?: string;
}

/** A change of a cell's style; what is left out stays, null removes. */
export interface StyleChange {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly strike?: boolean;
  readonly underline?: boolean;
  readonly size?: number | null;
  readonly color?: string | null;
  readonly fill?: string | null;
  readonly horizontal?: string | null;
  readonly vertical?: string | null;
  readonly wrap?: boolean;
  readonly rotation?: number | null;
  readonly edges?: Readonly<Partial<Record<"left" | "right" | "top" | "bottom", Edge | null>>>;
  /** A number format as files spell it. */
  readonly format?: string | null;
}
