import { recordFile } from "../records/files.ts";
import { officeUp, route } from "./route.ts";

export const getRecordPdf = route({
  method: "GET",
  path: "/api/records/:record/pdf",
  says: "The record as it was printed",
  who: officeUp,
  gives: { 200: "pdf" },
  run: (call) => recordFile(call, "pdf"),
});
