import type { studyEn } from "./study-en.ts";

/** Words of `study-en.ts` in Spanish. */
export const studyEs: Readonly<Record<keyof typeof studyEn, string>> = {
  "study-title": "Estudio de la cinta",
  "study-how":
    "Veinte minutos. Haga {marks} marcas y numérelas. Dos o tres personas leen cada una dos veces; el teléfono dice quién lee cuál. Nadie mira lo que se leyó antes.",
  "study-people": "Quién participa: dos o tres",
  "study-instrument": "Con qué",
  "study-placing": "Sobre qué se apoya",
  "study-begin": "Empezar",
  "study-progress": "{done} de {all} lecturas tomadas.",
  "study-mark": "lee la marca {mark}",
  "study-enter": "Anotarlo",
  "study-not-read": "Esto no es una longitud. Escríbala como la da la cinta, por ejemplo 14 3/8, en {unit}.",
  "study-stop": "Abandonar este estudio",
  "study-stop-sure": "Abandonarlo: sus lecturas se pierden",
  "study-sent": "La oficina lo tiene, como entrada {number} del registro de la empresa.",
  "study-kept": "Guardado en este teléfono. Se manda cuando haya señal.",
  "study-send": "Mandar ahora ({count})",
  "study-drop": "Quitar de este teléfono lo que fue rechazado",
  "check-title": "Comprobar un instrumento",
  "check-way": "Cómo",
  "check-level": "Nivel volteado de punta a punta",
  "check-level-how":
    "Ponga el nivel sobre una regla, calce el extremo bajo hasta que la burbuja quede en medio y anote las calzas. Voltéelo de punta a punta y haga lo mismo en el mismo extremo de la regla.",
  "check-level-first": "Calzas como estaba, {unit}; bajo el otro extremo: menos",
  "check-level-second": "Calzas tras voltearlo, {unit}; bajo el otro extremo: menos",
  "check-level-over": "Largo del nivel, {unit}",
  "check-laser": "Láser leído de dos maneras",
  "check-laser-how":
    "Ponga la regla en una marca lejana y léala. Gire el láser media vuelta en su trípode, deje que se asiente y lea otra vez la misma marca.",
  "check-laser-first": "Primera lectura, {unit}",
  "check-laser-second": "Lectura tras girarlo, {unit}",
  "check-laser-over": "Distancia a la marca, {unit}",
  "check-hook": "Gancho de la cinta, tirado y empujado",
  "check-hook-how": "Lea una misma cosa con el gancho tirado sobre su borde y luego con el gancho empujado contra él.",
  "check-hook-first": "Tirado, {unit}",
  "check-hook-second": "Empujado, {unit}",
};
