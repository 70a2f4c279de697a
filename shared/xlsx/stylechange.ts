/** An edge of a cell; null takes it away. */
export interface Edge {
  readonly style: string;
  /** `#RRGGBB`. */
  readonly color?: string;
}

/** What is to be other about the look of a cell; what is not named stays, null takes it away. */
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
