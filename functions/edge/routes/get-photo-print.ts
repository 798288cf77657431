import { photoBytes } from "../photos/bytes.ts";
import { anyRole, route } from "./route.ts";

export const getPhotoPrint = route({
  method: "GET",
  path: "/api/photos/:sha256/print",
  says: "The photo for paper",
  who: anyRole,
  asks: { parts: "Of a photo in which parts are blurred: `blurred` of its state, so that the answer may be kept" },
  gives: { 200: "jpeg" },
  run: (call) => photoBytes(call, "print"),
});
