import type { WaterSentence } from "./water-en.ts";

/** The same in Spanish. */
export const waterEs: Readonly<Record<WaterSentence, string>> = {
  "flow.as-expected":
    "{title}: medido {value} ± {measuredDoubtFlow}; el diseño da {expectedFlow} ± {expectedDoubtFlow}: como se esperaba, dentro de la duda de ambos.",
  "flow.less":
    "{title}: medido {value} ± {measuredDoubtFlow}; el diseño da {expectedFlow} ± {expectedDoubtFlow}: {byFlow} menos, y la duda de ambos es solo de {doubt}.",
  "flow.more":
    "{title}: medido {value} ± {measuredDoubtFlow}; el diseño da {expectedFlow} ± {expectedDoubtFlow}: {byFlow} más, y la duda de ambos es solo de {doubt}.",
  "flow.off-card":
    "{title}: medido {value} ± {measuredDoubtFlow}; el diseño da {expectedFlow} ± {expectedDoubtFlow}: {byFlow} más, y más que el último punto de la ficha de la bomba. Es otra bomba que la de la ficha, o la ficha no es correcta.",
  "flow.bin-too-fast":
    "{title}: no cuenta, porque el recipiente se llenó en {tookDuration}; debe tardar {leastDuration}. Serviría un recipiente de {enoughVolume}.",
  "flow.alone": "{title}: medido {measuredFlow} ± {doubtFlow}. No hay con qué compararlo hasta conocer esto: {unknown}.",
  "flow.several-crossings":
    "{title}: medido {measuredFlow} ± {doubtFlow}. Según su ficha, la bomba puede trabajar con varios caudales en este tubo, así que no se espera ninguno.",
  "flow.on-a-vertical-piece":
    "{title}: medido {measuredFlow} ± {doubtFlow}. Según su ficha, la bomba trabaja donde su curva cae derecho, así que no se espera ningún caudal.",
  "flow.curve-below-static-head":
    "{title}: medido {measuredFlow} ± {doubtFlow}. Según su ficha, la bomba no sube agua hasta el labio: mire la ficha y la altura estática.",
  "flow.beyond-the-last-point":
    "{title}: medido {measuredFlow} ± {doubtFlow}. La bomba trabaja más allá del último punto de su ficha, así que no se espera un caudal en cifra.",
  "flow.before-the-first-point":
    "{title}: medido {measuredFlow} ± {doubtFlow}. La bomba trabaja antes del primer punto de su ficha, así que no se espera un caudal en cifra.",
  "explains.are": "Qué lo explicaría, cada cosa por sí sola y primero la más probable: {causes}. Para saber dónde mirar, no es prueba.",
  "explains.times": "{cause} ({times} veces lo habitual)",
  "explains.times-most": "{cause} ({times} veces lo habitual, o más)",
  "explains.none": "Nada de lo que se busca aquí lo explicaría.",
  "explains.cannot": "De ningún tamaño lo explicarían: {causes}.",
  "explains.static-head.more": "una altura estática de {wouldBe}, {off} más que en el diseño",
  "explains.static-head.less": "una altura estática de {wouldBe}, {off} menos que en el diseño",
  "explains.blockage": "algo en la línea que quita {wouldBe} de carga, como un diámetro interior del {share} del suyo en todo el tubo",
  "explains.air": "aire, {wouldBe} de lo que mueve la bomba",
  "explains.wrong-curve": "una bomba que da {wouldBe} de la carga de su ficha",
  "explains.C.less": "un tubo más áspero, de C {wouldBe}, {off} menos de lo supuesto",
  "explains.C.more": "un tubo más liso, de C {wouldBe}, {off} más de lo supuesto",
  "cause.static head": "altura estática",
  "cause.blockage": "obstrucción",
  "cause.air": "aire",
  "cause.wrong curve": "otra curva que la de la ficha",
  "cause.C": "la C del tubo",
  "leak.weather-odd": "{title}: no cuenta, porque el tiempo anotado para ella no concuerda. Mire otra vez sus cifras.",
  "leak.no-evaporation":
    "{title}: sin cubeta de control espera el tiempo que hizo en la prueba ({missing}), o un dato del diseño: {unknown}.",
  "leak.area-unknown": "{title}: no se puede calcular cuánto se evaporó de cascadas y pozas hasta conocer esto: {unknown}.",
  "leak.site-unknown": "{title}: no se puede calcular cuánto se evaporó por el tiempo hasta conocer esto: {unknown}.",
  "rain.within":
    "{title}: cabe {value} ± {doubt} de lluvia sobre el área con membrana; la lluvia de un día según el diseño es {perDay}: dentro. Con esa lluvia, y sin que nada se seque, se desborda en {overflowDuration}.",
  "rain.outside":
    "{title}: cabe {value} ± {doubt} de lluvia sobre el área con membrana; la lluvia de un día según el diseño es {perDay}: fuera por {by}. Con esa lluvia, y sin que nada se seque, se desborda en {overflowDuration}.",
  "rain.too-close":
    "{title}: cabe {value} ± {doubt} de lluvia sobre el área con membrana; la lluvia de un día según el diseño es {perDay}: demasiado justo para decidir. Con esa lluvia, y sin que nada se seque, se desborda en {overflowDuration}.",
  "tried.most": "La mayor parte de la duda: {sources}.",
  "source.resolution": "las marcas que se leyeron",
  "source.placing": "donde se apoya la lectura",
  "source.receiver": "el receptor",
  "source.slope": "la inclinación del láser",
  "source.line": "la línea de nivel",
  "source.vial": "el nivel de burbuja",
  "source.permitted-error": "la desviación admitida del instrumento",
  "source.watch": "la mano en el cronómetro",
  "source.bin/mark": "la marca del recipiente",
  "source.clocks": "los relojes",
  "source.limit": "el límite, que viene del diseño",
  "source.design:limit": "el límite, que viene del diseño",
  "source.design:water-per-depth": "el agua por altura del depósito",
  "source.weather:highest": "la temperatura más alta del día",
  "source.weather:lowest": "la temperatura más baja del día",
  "source.weather:humidity": "la humedad del aire",
  "source.weather:wind": "el viento",
  "source.weather:sunshine": "las horas de sol",
  "source.weather:radiation": "la radiación del sol",
  "source.own:part-of-day": "qué parte del día fue",
  "source.factor:open-water-coefficient": "lo que vale aquí la fórmula de evaporación",
};
