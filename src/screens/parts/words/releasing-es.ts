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
};
