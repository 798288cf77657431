import type { laidAsideEn } from "./laid-aside-en.ts";

/** Words of the page of work that did not go through, in Spanish. */
export const laidAsideEs: Readonly<Record<keyof typeof laidAsideEn, string>> = {
  "laid-aside-title": "Lo que no se pudo hacer con las fotos",
  "laid-aside-open": "Lo que no se pudo hacer con las fotos",
  "laid-aside-open-some": "Lo que no se pudo hacer con las fotos: {count}",
  "laid-aside-how":
    "Cada foto que llegó está guardada tal como llegó. Lo que se hace después con ella aparece aquí cuando no se logró varias veces. Se vuelve a intentar solo; después de diez intentos, solo una vez al día.",
  "laid-aside-none": "Nada. Todo lo que llegó ya se leyó o se está leyendo.",
  "laid-aside-more": "Hay {count} más que no se muestran.",
  "laid-aside-read": "Una foto que no se pudo examinar",
  "laid-aside-tell": "Un trabajo al que no se le pudo decir qué contiene su foto",
  "laid-aside-compare": "Una foto que no se pudo comparar con las demás",
  "laid-aside-photo": "Foto {photo}",
  "laid-aside-tries": "Se intentó {count} veces. Próximo intento automático: {when}.",
  "laid-aside-daily": "Apartado después de {count} intentos. Próximo intento automático: {when}.",
  "laid-aside-why-media-unavailable": "La parte que lee las fotos no respondió.",
  "laid-aside-why-store-unavailable": "El almacén no respondió.",
  "laid-aside-why-photo-unknown": "El almacén no tiene la foto.",
  "laid-aside-why-photo-hash-differs": "El almacén dio bytes distintos de los que llegaron.",
  "laid-aside-why-broke": "Un fallo del programa. Avise a quien lo mantiene.",
  "laid-aside-why-other": "Motivo: {why}.",
  "laid-aside-why-unknown": "No se supo el motivo.",
  "laid-aside-again": "Intentar otra vez ahora",
  "laid-aside-again-all": "Intentar todo otra vez ahora",
  "laid-aside-asked": "Pedido: {count}. Lo que se logra hacer sale de esta lista.",
};
