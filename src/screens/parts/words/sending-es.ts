import type { sendingEn } from "./sending-en.ts";

export const sendingEs: Readonly<Record<keyof typeof sendingEn, string>> = {
  "newer-app": "Hay una versión más nueva lista.",
  "take-newer": "Usarla ahora",
  "signed-out-kept": "Sesión terminada. Todo sigue guardado en este teléfono; pida un enlace nuevo a la oficina y seguirá por sí solo.",
};
