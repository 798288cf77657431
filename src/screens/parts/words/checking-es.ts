import type { checkingEn } from "./checking-en.ts";

export const checkingEs: Readonly<Record<keyof typeof checkingEn, string>> = {
  "checking-open": "Revisar un registro",
  "checking-title": "¿Está este registro como se selló?",
  "checking-how": "Elija el PDF tal como se entregó. Se lee solo en este equipo y no se envía a ningún lado; funciona sin señal.",
  "checking-pick": "El PDF del registro",
  "checking-keys": "Listas de claves en este equipo: {names}",
  "checking-keys-none": "No hay ninguna lista de claves en este equipo: no se puede decir de quién es la clave que selló un registro.",
  "checking-keys-pick": "Agregar una lista de claves que se entregó",
  "checking-reading": "Leyendo {file} …",
  "checking-not-here": "Lo que lee un PDF no está todavía en este equipo. Abra esta página una vez con señal.",
  "checking-later": "Todo está en este equipo: desde ahora funciona sin señal.",
};
