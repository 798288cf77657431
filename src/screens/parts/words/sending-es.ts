import type { sendingEn } from "./sending-en.ts";

export const sendingEs: Readonly<Record<keyof typeof sendingEn, string>> = {
  "newer-app": "Hay una versión más nueva lista.",
  "take-newer": "Usarla ahora",
  "signed-out-kept": "Sesión terminada. Todo sigue guardado en este teléfono; pida un enlace nuevo a la oficina y seguirá por sí solo.",
  "phone-person": "Anota aquí",
  "phone-who": "¿Quién anota hoy en este teléfono?",
  "phone-not-sent-one": "1 sin enviar.",
  "phone-not-sent-other": "{count} sin enviar.",
  "phone-troubled-one": "1 que la oficina no aceptó: lea por qué.",
  "phone-troubled-other": "{count} que la oficina no aceptó: lea por qué.",
  "phone-sending": "Enviando una foto: {share} %.",
  "phone-away": "Sin respuesta desde las {time}.",
  "phone-all-sent": "Todo enviado. Leído a las {time}.",
  "phone-signed-out": "Sesión cerrada.",
  "phone-not-here": "No está en este teléfono",
  "phone-not-here-how": "Este teléfono aún no lo tiene. Con señal llega por sí solo.",
};
