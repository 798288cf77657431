/** The crew's pages, reading. */
export const readingEn = {} as const;
