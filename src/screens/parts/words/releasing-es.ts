import type { releasingEn } from "./releasing-en.ts";

/** The same words in Spanish. */
export const releasingEs: Readonly<Record<keyof typeof releasingEn, string>> = {
  "issue-language": "En el idioma de quien lo recibe",
  "issue-language-en": "Inglés",
  "issue-language-es": "Español",
  "releasing-title": "Entregar la versión {version} a quien la recibe",
  "releasing-how":
    "Emitido no es todavía entregado. La entrega se cuenta en el trabajo y hace un enlace que abre el registro en un teléfono sin entrar, hasta que usted lo termine.",
  "releasing-to": "A quién, y cómo",
  "releasing-do": "Entregarlo",
  "releasing-made": "Entregado. El enlace se muestra solo ahora: cópielo y déselo a quien lo recibe.",
  "releasing-open": "{to}: entregado el {time}, el enlace abre el registro.",
  "releasing-ended": "{to}: el enlace terminó el {time}.",
  "releasing-end": "Terminar este enlace",
  "message-about-released": "Un mensaje con este enlace",
  "message-about-others": "Un mensaje con este enlace para ellos",
  "message-about-warranty": "Un mensaje sobre los días por venir",
  "message-how":
    "El mensaje es un archivo que abre y manda su propio programa de correo. Desde aquí no se manda nada, salvo que en esta instalación haya un servicio de correo.",
  "message-name": "Para quién",
  "message-address": "Dirección de correo",
  "message-language": "En el idioma de quien lo lee",
  "message-make": "Hacer el mensaje",
  "message-send": "Mandarlo desde aquí",
  "message-making": "Haciéndolo …",
  "message-made": "Hecho. Abra el archivo y mándelo.",
  "message-sent": "Mandado: el servicio de correo lo aceptó.",
};
