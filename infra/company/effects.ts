/** What can be planted in a company, each with its size. Absent: not planted. */
export interface Effects {
  /** A laser whose line moves: micrometres a year. */
  readonly drift?: { readonly laser: string; readonly perYear: number };
  /** A foreman who types the design's figure instead of what he reads: share of his readings. */
  readonly nominal?: { readonly foreman: string; readonly share: number };
  /** One picture that stands in so many jobs. */
  readonly ring?: { readonly jobs: number };
  /** A held answer that is asked on every job and never finds anything. */
  readonly idle?: { readonly step: string };
  /** A part that fails in winter: chance to fail in one whole winter. */
  readonly winter?: { readonly part: string; readonly chance: number };
}

/** Sizes at which the questions find an effect in 90 of 100 companies, by how many jobs they have at least. */
const sizes = [
  { jobs: 5_000, perYear: 1_000, share: 0.46, ring: 6, chance: 0.1 },
  { jobs: 150, perYear: 3_200, share: 0.65, ring: 6, chance: 0.2 },
  { jobs: 0, perYear: 2_500, share: 0.8, ring: 4, chance: 0.6 },
] as const;

/** Every effect, at its size for a company of so many jobs. Among 60 jobs drift and the idle answer cannot be told, and are not. */
export function planted(jobs: number): Required<Effects> {
  const { perYear, share, ring, chance } = sizes.find((size) => jobs >= size.jobs) ?? sizes[2];
  return {
    drift: { laser: "laser-3", perYear },
    nominal: { foreman: "foreman-2", share },
    ring: { jobs: ring },
    idle: { step: "step-six" },
    winter: { part: "Valve of the second make", chance },
  };
}

/** Plain words for what was planted, printed beside the answers. */
export const plantedWords = ({ drift, nominal, ring, idle, winter }: Effects): readonly string[] => [
  ...(drift ? [`${drift.laser} drifts by ${drift.perYear / 1000} mm a year`] : []),
  ...(nominal ? [`${nominal.foreman} types the design's figure in ${Math.round(nominal.share * 100)} % of his readings`] : []),
  ...(ring ? [`one picture stands in ${ring.jobs} jobs`] : []),
  ...(idle ? [`the held answer of ${idle.step} never finds anything`] : []),
  ...(winter ? [`${winter.part} fails in a winter with a chance of ${winter.chance}`] : []),
];
