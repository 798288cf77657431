/** The crew's pages, numbers. */
export const numbersEn = {} as const;
