import { ledger } from "#core/wire/index.ts";
import { recordFile } from "../records/files.ts";
import { officeUp, route } from "./route.ts";

export const getRecordLedger = route({
  method: "GET",
  path: "/api/records/:record/ledger",
  says: "The ledger as it is attached to the record",
  who: officeUp,
  gives: { 200: ledger },
  run: (call) => recordFile(call, "ledger"),
});
