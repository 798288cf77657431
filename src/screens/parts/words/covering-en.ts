/** The crew's pages, covering. */
export const coveringEn = {} as const;
