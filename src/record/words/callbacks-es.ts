import type { CallbackText } from "./callbacks-en.ts";

/** Sentences of callbacks, in Spanish. */
export const callbacksEs: Readonly<Record<CallbackText, string>> = {
  "symptom-water low": "El agua está baja",
  "symptom-water bill": "El recibo del agua llegó alto",
  "symptom-wet ground": "El suelo está mojado",
  "symptom-no flow": "No sale agua, o poca",
  "symptom-noise": "Hace ruido",
  "symptom-breaker or ground fault trips": "Salta el interruptor o la protección a tierra",
  "symptom-edge or lid sunk": "Se hundió una orilla o la tapa",
  "symptom-splash": "Salpica",
  "symptom-frozen": "Se congeló",
  "symptom-foam or smell": "Hace espuma o huele",
  "symptom-damage by others": "Alguien más la dañó",
  "caution-electrician":
    "Lo que salta es asunto de un electricista con licencia: se queda apagado hasta que esa persona lo vea. Corriente apagada antes de meter la mano, cada vez. Deciden el código local y una persona con licencia.",
  "caution-power": "Corriente apagada antes de meter la mano, cada vez. Deciden el código local y una persona con licencia.",
  "room-left": "le quedan {room} hasta su límite de {limit}",
  "room-doubt": "le quedan {room} hasta su límite de {limit}, y su duda es mayor",
  "room-none": "pasa de su límite de {limit} por {room}",
  "room-none-doubt": "pasa de su límite de {limit} por {room}, menos que su duda",
  "lies-under": "Está bajo lo que se cubrió al: {act}",
  "lies-tied": "{name}: {ties}",
  "lies-tie": "a {distance} de {mark}",
  "lies-deep": "{name}: {ties}; a {depth} de hondo",
  "closed-confirmed": "Causa confirmada: {cause}",
  "closed-supposed": "Supuesta y sin confirmar: {cause}",
  "closed-part": "Pieza: {part}",
  "borne-company": "lo paga la empresa",
  "borne-maker": "lo paga el fabricante",
  "borne-customer": "lo paga el cliente",
  "borne-others": "lo pagan otros",
};
