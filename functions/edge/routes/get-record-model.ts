import { storedRecordModel } from "#core/wire/index.ts";
import { recordFile } from "../records/files.ts";
import { officeUp, route } from "./route.ts";

export const getRecordModel = route({
  method: "GET",
  path: "/api/records/:record/model",
  says: "The record's view model",
  who: officeUp,
  gives: { 200: storedRecordModel },
  run: (call) => recordFile(call, "model"),
});
