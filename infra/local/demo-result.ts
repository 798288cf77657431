/** What is kept of a demo for the next start: where people sign in and where the record lies. */
export interface DemoSummary {
  /** Sign-in links by role. */
  readonly links: Readonly<Record<string, string>>;
  /** Absent where the stack was read back from a backup. */
  readonly pdf?: string;
}

/** What the main job leaves; `infra/demo` makes it through the public API. */
export interface DemoResult {
  readonly pdf: Uint8Array;
  readonly companyFile?: Uint8Array;
  readonly oldPond?: Uint8Array;
  readonly designCheck: Uint8Array;
  readonly record: unknown;
  readonly ledger: unknown;
  readonly keys: unknown;
  readonly findings: readonly unknown[];
  readonly links: Readonly<Record<string, string>>;
}

export interface DemoPlan {
  /** Address of the edge, without a slash at the end. */
  readonly edge: string;
  readonly operatorKey: string;
  readonly log: (line: string) => void;
  /** The job by the second tolerance sheet: filled as well, or its record printed too. */
  readonly oldPond?: "filled" | "printed";
}

/** Runs the demo, loaded only now: a start that finds everything there has no use for it. */
export const runDemo = async (plan: DemoPlan): Promise<DemoResult> => {
  const { runDemo: run } = (await import(new URL("../demo/index.ts", import.meta.url).href)) as {
    runDemo: (plan: DemoPlan) => Promise<DemoResult>;
  };
  return run(plan);
};

export interface CompaniesPlan {
  readonly edge: string;
  readonly operatorKey: string;
  readonly log: (line: string) => void;
  /** Where the answers go. */
  readonly folder: string;
  /** The large company comes in through archives, with so many jobs; absent: its rows are filled. */
  readonly jobs?: number;
}

/** The two made-up companies of the owner's questions, loaded only now. */
export const runCompanies = async (plan: CompaniesPlan): Promise<void> => {
  const { runCompanies: run } = (await import(new URL("../company/index.ts", import.meta.url).href)) as {
    runCompanies: (plan: CompaniesPlan) => Promise<void>;
  };
  return run(plan);
};

/** The lines that `npm start` prints, links made to point at the port of this start. */
export const linesOf = ({ links, pdf }: DemoSummary, edge: string): string[] => {
  const width = Math.max(0, ...Object.keys(links).map((role) => role.length));
  return [
    ...Object.entries(links).map(
      ([role, link]) => `Sign in as ${role.padEnd(width)}  ${new URL(new URL(link, edge).pathname + new URL(link, edge).search, edge)}`,
    ),
    ...(pdf === undefined ? [] : [`The record that was issued: ${pdf}`]),
  ];
};
