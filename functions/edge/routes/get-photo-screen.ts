import { photoBytes } from "../photos/bytes.ts";
import { anyRole, route } from "./route.ts";

export const getPhotoScreen = route({
  method: "GET",
  path: "/api/photos/:sha256/screen",
  says: "The photo for a screen",
  who: anyRole,
  gives: { 200: "bytes" },
  run: (call) => photoBytes(call, "screen"),
});
