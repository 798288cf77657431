import { photoBytes } from "../photos/bytes.ts";
import { anyRole, route } from "./route.ts";

export const getPhotoPrint = route({
  method: "GET",
  path: "/api/photos/:sha256/print",
  says: "The photo for paper",
  who: anyRole,
  gives: { 200: "bytes" },
  run: (call) => photoBytes(call, "print"),
});
