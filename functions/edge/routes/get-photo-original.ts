import { photoBytes } from "../photos/bytes.ts";
import { officeUp, route } from "./route.ts";

export const getPhotoOriginal = route({
  method: "GET",
  path: "/api/photos/:sha256/original",
  says: "The photo as it was taken",
  who: officeUp,
  gives: { 200: "picture" },
  run: (call) => photoBytes(call, "original"),
});
