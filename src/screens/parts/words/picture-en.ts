/** The crew's pages, picture. */
export const pictureEn = {} as const;
