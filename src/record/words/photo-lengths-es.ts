import type { PhotoLengthSentence } from "./photo-lengths-en.ts";

/** Lo que midió una foto con una tarjeta, junto a lo que dijo la cinta. */
export const photoLengthsEs: Readonly<Record<PhotoLengthSentence, string>> = {
  both: "Cinta: {tape} ± {tapeDoubt}; en la foto: {measured} ± {measuredDoubt}.",
  tape: "Cinta: {tape} ± {tapeDoubt}.",
  photo: "En la foto: {measured} ± {measuredDoubt}.",
  length: "{measured} ± {measuredDoubt}",
  agree: "Coinciden.",
  disagree: "No coinciden.",
  "cannot tell": "La foto no lo puede decir: {why}.",
  often: "Medido en fotos {times} veces; se compara la última.",
  "because-no reading": "aquí no cuenta ninguna lectura con cinta",
  "because-not flat": "la tarjeta no estaba plana",
  "because-card elsewhere": "mirada otra vez, la foto muestra la tarjeta en otro lugar",
  "because-too doubtful": "habría que saberlo a ± {needed}",
  "because-tape too rough": "la lectura con cinta tendría que conocerse a ± {needed}",
  "because-card not found": "mirada otra vez, la foto no muestra ninguna tarjeta",
  "because-not shown": "alguien miró la foto, y no lo muestra",
  "because-refused": "lo que se anotó con ella no da ninguna longitud",
};
