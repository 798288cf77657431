import { type ArchiveFile, type ArchiveList, LARGEST_PAPER } from "#core/wire/index.ts";
import { blurredKey, originalKey, paperKey } from "#functions/shared/index.ts";
import { fileKey, recordFiles } from "../records/files.ts";

/** A file of an archive with its place in the store and its type there. */
export interface StoredFile {
  readonly file: ArchiveFile;
  readonly key: string;
  readonly type: string;
  /** The photo that it is the original of. */
  readonly photo?: string;
  /** The paper that it is. */
  readonly paper?: string;
}

/** The list is named by the digest of its own bytes, so that a byte changed in it is found as in every other file. */
export const listName = (sha256: string): string => `list-${sha256}.json`;

const typeOf = (name: string): string =>
  name.endsWith(".pdf") ? "application/pdf" : name.endsWith(".json") ? "application/json" : "application/octet-stream";

/** The ending of a record's file: what follows the record's folder. */
export const endingOf = ({ name }: ArchiveFile): string => name.slice(name.lastIndexOf("/") + 1);

/** Everything that follows the ledger in an archive, in its order, with where it lies in a company's part of the store. */
export function storedFiles(
  company: string,
  { job, photos, papers, records }: Pick<ArchiveList, "job" | "photos" | "papers" | "records">,
): readonly StoredFile[] {
  return [
    ...photos.flatMap(({ sha256, type, file, blurred }): readonly StoredFile[] => [
      ...(file ? [{ file, key: originalKey(company, sha256), type, photo: sha256 }] : []),
      ...(["screen", "print"] as const).flatMap((which) => {
        const rendition = blurred?.[which];
        return blurred && rendition
          ? [{ file: rendition, key: blurredKey(company, sha256, which, blurred.digest), type: "image/jpeg" }]
          : [];
      }),
    ]),
    ...(papers ?? []).map((file) => ({
      file,
      key: paperKey(company, file.sha256),
      type: "application/pdf",
      paper: file.sha256,
    })),
    ...records.flatMap(({ id, version, files }) =>
      files.map((file) => ({ file, key: fileKey({ company, job, id, version }, endingOf(file)), type: typeOf(file.name) })),
    ),
  ];
}

const endings: ReadonlySet<string> = new Set(Object.values(recordFiles).map(({ ending }) => ending));

/** The names that the parts of a list have to have, so that none reaches into another's place. */
export function namesFit({ ledger, photos, papers, records }: ArchiveList): boolean {
  const ofPhotos = photos.every(({ sha256, bytes, file, blurred }) => {
    const original = file === undefined || (file.name === `photos/${sha256}` && file.sha256 === sha256 && file.bytes === bytes);
    const renditions = [blurred?.screen, blurred?.print].every(
      (one, i) => one === undefined || one.name === `blurred/${sha256}/${i === 0 ? "screen" : "print"}.jpg`,
    );
    return original && renditions;
  });
  const ofPapers = (papers ?? []).every(({ name, sha256, bytes }) => name === `papers/${sha256}` && bytes <= LARGEST_PAPER);
  const ofRecords = records.every(
    ({ id, sha256, bytes, files }) =>
      /^[0-9a-f]{32}$/.test(id) &&
      files.every((file) => {
        const inside = file.name === `records/${id}/${endingOf(file)}` && endings.has(endingOf(file));
        return inside && (endingOf(file) !== "pdf" || (file.sha256 === sha256 && file.bytes === bytes));
      }),
  );
  return ledger.name === "ledger.json" && ofPhotos && ofPapers && ofRecords;
}
