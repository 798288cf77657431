import type { CardsWord } from "./cards-en.ts";

/** Palabras de las tarjetas impresas que se ponen en las fotos, en español. */
export const cardsEs: Readonly<Record<CardsWord, string>> = {
  document: "Tarjetas para fotos: {job}",
  kind: "Tarjeta para fotos",
  step: "Paso {number}",
  "any-step": "Cualquier paso",
  codes: "Cuatro códigos que nombran el trabajo y el paso de esta tarjeta",
  "how.flat":
    "Póngala plana sobre el plano que se mide, sin nada debajo y sin nada sobre sus códigos. Doblada o con una esquina levantada, mide otro plano.",
  "how.near": "Tome la foto de modo que se vean los cuatro códigos y que lo que se mide quede a no más de dos largos de la tarjeta.",
  "how.agrees":
    "Los códigos dicen a qué trabajo y a qué paso pertenece la foto. Si la foto se puso en otra parte, se le pregunta a alguien.",
  "how.ruler":
    "Antes de usarla, ponga una cinta junto a la regla. Si no marca 10\u00a0in (254\u00a0mm), imprímala otra vez al 100 %, sin ajustar a la página.",
  "how.caution": "Nadie entra en una zanja, bajo una piedra o cerca de cables por una tarjeta: entonces se deja fuera.",
};
