import type { RecordMade } from "#core/wire/index.ts";
import type { RecordRow } from "../adapters/records.ts";

export const recordView = ({ id, version, edition, pages, bytes, sha256 }: RecordRow): RecordMade => ({
  record: id,
  version,
  edition,
  pages,
  bytes,
  sha256,
  pdf: `/api/records/${id}/pdf`,
});
