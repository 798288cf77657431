import type { UpkeepText } from "./upkeep-en.ts";

/** Cómo usar lo construido, a lo largo del año. */
export const upkeepEs: Readonly<Record<UpkeepText, string>> = {
  "title-running": "En marcha",
  "title-without": "Sin agua de reposición",
  "title-topping": "Rellenar",
  "title-winter": "Invierno",
  "title-spring": "Primavera",
  "run-hand": "Corriente cortada antes de meter la mano en el agua, cada vez.",
  "run-falls":
    "En marcha, el agua del depósito queda {drawDown} más abajo que en reposo. Esa agua ({transit}) está en camino y regresa cuando la bomba se detiene.",
  "run-air":
    "Si no regresa nada, la toma aspira aire {time} después de arrancar con el depósito lleno. Apáguela cuando la cascada corra delgada o la bomba suene distinto.",
  "run-intake": "Hojas y lodo delante de la toma adelgazan la cascada: mírela después de tormentas y mientras caen las hojas.",
  "run-lid": "Donde hay una tapa bajo la piedra hay agua debajo: nadie la pisa donde se levantó la piedra.",
  "run-dig": "Antes de excavar aquí: el plano y las distancias de este registro dicen dónde están tubo, uniones y cables.",
  "days-last": "Sin rellenar, su agua dura {days}.",
  "days-wait": "Cuánto dura su agua sin rellenar no está calculado. Para eso hace falta: {needs}.",
  "days-left": "Agua utilizable que queda en marcha: {left}.",
  "days-sun": "Calculado con {depth} de evaporación por día; los días de calor, secos o con viento piden más.",
  "top-valve": "La válvula de reposición rellena sola. Mire cada mes que cierre: una que corre todo el tiempo esconde una fuga.",
  "top-hand": "No hay válvula de reposición: se rellena a mano.",
  "top-hose":
    "La manguera termina por encima del agua, para que nada vuelva al agua potable. Una línea fija lleva protección contra reflujo, instalada y probada por quien puede hacerlo.",
  "top-note": "Anote el día y la cantidad. Si pide claramente más que otros días de un tiempo así, apáguela y llame a quien la construyó.",
  "winter-service": "{service}: a más tardar el {day} de cada año, como dicen las condiciones de la empresa.",
  "winter-leave": "{title}: {value}. Un depósito vacío en suelo mojado flota.",
  "winter-pump":
    "Antes de las heladas fuertes la bomba se saca, o sigue en marcha todo el invierno, lo que diga su propio papel. Primero se corta la corriente en el interruptor.",
  "winter-pipe": "Con la bomba fuera, el tubo se vacía donde se puede.",
  "winter-valve": "La válvula de retención guarda el agua del tubo por encima de ella: también se abre o se vacía.",
  "winter-ice": "El hielo sobre el depósito no sostiene a nadie, y los niños quedan lejos de él.",
  "spring-service": "{service}: a más tardar el {day} de cada año, como dicen las condiciones de la empresa.",
  "spring-look": "Antes de llenar mire la orilla de la membrana, el labio, la tapa y las piedras: la helada los mueve.",
  "spring-cord": "Quien puede hacerlo mira cable, enchufe y protección contra fuga a tierra antes de dar corriente.",
  "spring-run": "Llénela, enciéndala y compare el nivel del agua en reposo y en marcha con 'Arranque y pruebas de fuga'.",
  source:
    "Las cifras salen del diseño de este trabajo. Las demás frases son práctica común sin fuente publicada: primero van los papeles de las piezas, las condiciones de la empresa y el código local.",
};
