/** Where things lie in the S3 store. An object of a company never lies outside its own folder. */

/** `column`: as wide as a column of the record. */
export const renditionNames = ["screen", "print", "column"] as const;
export type RenditionName = (typeof renditionNames)[number];

const COMPANY = /^[A-Za-z0-9_-]{1,64}$/;
const SHA = /^[0-9a-f]{64}$/;

/** Whether a company's id can be part of a key: letters, digits, `_` and `-`, at most 64. */
export const isCompanyId = (text: string): boolean => COMPANY.test(text);
/** Whether a text is a SHA-256 in lower-case hex. */
export const isSha = (text: string): boolean => SHA.test(text);

const part = (name: string, value: string, shape: RegExp): string => {
  // Routes check before; a value with a slash or dots in it would reach into another company's folder.
  if (!shape.test(value)) throw new RangeError(`${name} cannot be part of a key: ${JSON.stringify(value.slice(0, 80))}`);
  return value;
};

export const originalKey = (company: string, sha: string): string =>
  `${part("company", company, COMPANY)}/originals/${part("hash", sha, SHA)}`;

/** A paper as PDF. */
export const paperKey = (company: string, sha: string): string => `${part("company", company, COMPANY)}/papers/${part("hash", sha, SHA)}`;

export const renditionKey = (company: string, sha: string, name: RenditionName): string =>
  `${part("company", company, COMPANY)}/renditions/${part("hash", sha, SHA)}/${name}.jpg`;

/** A company's mark: as it was sent, for screens with what is see-through, and on white for paper. */
export const markKeys = (company: string, sha: string): Readonly<Record<"sent" | "screen" | "paper", string>> => {
  const [owner, mark] = [part("company", company, COMPANY), part("hash", sha, SHA)];
  return { sent: `${owner}/marks/${mark}`, screen: `${owner}/renditions/${mark}/mark.png`, paper: `${owner}/renditions/${mark}/mark.jpg` };
};

/** Of a rendition in which parts are blurred; the digest of those parts names it. */
export const blurredKey = (company: string, sha: string, name: RenditionName, digest: string): string =>
  `${part("company", company, COMPANY)}/renditions/${part("hash", sha, SHA)}/${name}-${part("digest", digest, SHA)}.jpg`;

/** `version` counts the issued records of a job from 1; `ending` tells the PDF from what lies beside it. */
export const recordKey = (company: string, job: string, version: number, ending = "pdf"): string => {
  if (!Number.isSafeInteger(version) || version < 1) throw new RangeError(`not a record's version: ${version}`);
  return `${part("company", company, COMPANY)}/records/${part("job", job, COMPANY)}/${version}.${part("ending", ending, /^[a-z0-9.-]{1,60}$/)}`;
};

/** A printed report of the company owner's, by the digest of what is printed. */
export const reportKey = (company: string, digest: string): string =>
  `${part("company", company, COMPANY)}/reports/${part("digest", digest, SHA)}.pdf`;

/** The printed cards of a job, by the digest of what is printed. */
export const cardsKey = (company: string, job: string, digest: string): string =>
  `${part("company", company, COMPANY)}/cards/${part("job", job, COMPANY)}/${part("digest", digest, SHA)}.pdf`;

/** A printed design check, by the digest of what is printed: the same design has the same place. */
export const designKey = (company: string, job: string, digest: string): string =>
  `${part("company", company, COMPANY)}/designs/${part("job", job, COMPANY)}/${part("digest", digest, SHA)}.pdf`;
