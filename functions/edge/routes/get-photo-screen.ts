import { photoBytes } from "../photos/bytes.ts";
import { anyRole, route } from "./route.ts";

export const getPhotoScreen = route({
  method: "GET",
  path: "/api/photos/:sha256/screen",
  says: "The photo for a screen",
  who: anyRole,
  asks: { parts: "Of a photo in which parts are blurred: `blurred` of its state, so that the answer may be kept" },
  gives: { 200: "jpeg" },
  run: (call) => photoBytes(call, "screen"),
});
