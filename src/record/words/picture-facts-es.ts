import type { PictureSentence } from "./picture-facts-en.ts";

/** Lo que habla a favor y en contra de una foto, en español. */
export const pictureFactsEs: Readonly<Record<PictureSentence, string>> = {
  "photo.received-otherwise": "Recibida de otra manera: {how}.",
  "photo.blurred-in-part": "Una parte está difuminada en lo que se muestra y se imprime; el original se conserva.",
  "photo.card-step": "Una tarjeta en la foto nombra este trabajo y este paso.",
  "photo.card-job": "Una tarjeta en la foto nombra este trabajo, para cualquier paso.",
  "photo.card-other-step": "La tarjeta en la foto nombra otro paso de este trabajo: {step}. ¿Pertenece la foto a ese paso?",
  "photo.card-other-job": "La tarjeta en la foto nombra otro trabajo de la empresa. ¿Pertenece la foto a ese trabajo?",
  "photo.card-several": "En la foto hay tarjetas distintas: {count}. ¿Cuál de ellas vale?",
  "photo.card-tells-nothing":
    "Una tarjeta en la foto no es de las que esta empresa imprimió para un trabajo, o fue alterada: no dice nada.",
  "photo.app-moment": "La aplicación la recibió a las {takenInstant} ± {takenDoubtDuration}.",
  "photo.no-app-moment": "La aplicación no anotó un momento propio; se ingresó a las {madeInstant}.",
  "photo.clock-off": "El reloj del teléfono difería {offDuration} del de la oficina; las horas están corregidas por eso.",
  "photo.clock-not-compared": "El reloj del teléfono todavía no se ha comparado con el de la oficina.",
  "photo.not-read-yet": "Su archivo todavía no se ha leído.",
  "photo.camera-agrees": "El reloj de la cámara, {wallClock}, concuerda con el momento de la aplicación.",
  "photo.camera-earlier":
    "El reloj de la cámara, {wallClock}, está {apartDuration} o más antes del momento de la aplicación: una foto anterior, o un reloj desajustado.",
  "photo.camera-later":
    "El reloj de la cámara, {wallClock}, es posterior a su ingreso a las {enteredInstant}: ese reloj está desajustado y su hora no cuenta.",
  "photo.zone-by-tag": "El reloj de la cámara marcaba {wallClock} a {offset} de UTC, según su propia nota.",
  "photo.zone-by-satellite": "El reloj de la cámara marcaba {wallClock} a {offset} de UTC, según la hora de los satélites.",
  "photo.zone-unknown": "El reloj de la cámara marcaba {wallClock}; no dice en qué zona. Según el reloj del lugar es {firstInstant}.",
  "photo.zone-unknown-twice":
    "El reloj de la cámara marcaba {wallClock}; no dice en qué zona. Según el reloj del lugar esa hora ocurrió dos veces: {firstInstant} y {secondInstant}.",
  "photo.satellite-differs": "La hora de los satélites en el archivo, {satelliteInstant}, no es la del reloj de la cámara, {wallClock}.",
  "photo.time-missing": "La cámara no anotó la hora, lo cual es común.",
  "photo.time-zeros": "La hora de la cámara son puros ceros.",
  "photo.time-impossible": "La hora de la cámara no es una fecha que exista.",
  "photo.metadata-missing": "El archivo no tiene notas de su cámara, lo cual es común.",
  "photo.metadata-broken": "Las notas de la cámara en el archivo no se pueden leer.",
  "photo.metadata-cut-off": "El archivo termina dentro de las notas de su cámara.",
  "photo.metadata-not-read": "En este tipo de archivo no se pudo llegar a las notas de la cámara.",
  "photo.among-its-step": "Su hora cae entre las demás entradas de su paso: {count}, de {firstInstant} a {lastInstant}.",
  "photo.apart-from-its-step":
    "Su hora está a {apartDuration} de las demás entradas de su paso: {count}, de {firstInstant} a {lastInstant}.",
  "photo.before-covering":
    "Tomada {takenInstant} ± {takenDoubtDuration}, antes de que se cubriera a las {coveredInstant} ± {coveredDoubtDuration}.",
  "photo.after-covering":
    "Según sus horas, tomada {takenInstant} ± {takenDoubtDuration}, después de que se cubriera a las {coveredInstant} ± {coveredDoubtDuration}. Puede que un reloj esté desajustado o que se haya dicho cubierto antes de tiempo.",
  "photo.covering-undecided": "Se cubrió a las {coveredInstant} ± {coveredDoubtDuration}: no se puede saber si la foto es anterior.",
  "photo.covering-inferred":
    "Nadie dijo cuándo se cubrió, solo que no fue después de {coveredInstant}: no se puede saber si la foto es anterior.",
  "photo.covering-received": "Recibida de otra manera: no dice nada de si fue antes o después de cubrirse.",
  "photo.app-place-at-site":
    "El teléfono estaba a {awayDistance} ± {doubtDistance} del centro del lugar, que llega hasta {reachDistance}: en el lugar.",
  "photo.app-place-off-site":
    "El teléfono estaba a {awayDistance} ± {doubtDistance} del centro del lugar, que llega hasta {reachDistance}: fuera de él.",
  "photo.app-place-undecided":
    "El teléfono estaba a {awayDistance} ± {doubtDistance} del centro del lugar, que llega hasta {reachDistance}: demasiado justo para decidir.",
  "photo.app-place-old": "La posición del teléfono tenía {ageDuration} cuando se tomó la foto.",
  "photo.camera-place-at-site":
    "La cámara anotó una posición a {awayDistance} ± {doubtDistance} del centro del lugar, que llega hasta {reachDistance}: en el lugar.",
  "photo.camera-place-off-site":
    "La cámara anotó una posición a {awayDistance} ± {doubtDistance} del centro del lugar, que llega hasta {reachDistance}: fuera de él.",
  "photo.camera-place-undecided":
    "La cámara anotó una posición a {awayDistance} ± {doubtDistance} del centro del lugar, que llega hasta {reachDistance}: demasiado justo para decidir.",
  "photo.places-agree": "La posición del teléfono y la de la cámara distan {awayDistance} ± {doubtDistance}: concuerdan.",
  "photo.places-differ": "La posición del teléfono y la de la cámara distan {awayDistance} ± {doubtDistance}: no concuerdan.",
  "photo.site-not-located": "No se ha ingresado la posición del lugar, así que la de la foto no se compara con nada.",
  "photo.no-app-place": "El teléfono no dio posición.",
  "photo.place-taken-out": "Su posición se ha quitado de esta edición.",
  "photo.position-missing": "La cámara no anotó posición, lo cual es común.",
  "photo.position-withheld": "El teléfono retuvo la posición de la cámara.",
  "photo.position-zero": "La posición de la cámara son puros ceros: ninguna posición.",
  "photo.position-broken": "La posición de la cámara no se puede leer.",
  "photo.position-unsigned": "A la posición de la cámara le falta norte o sur, este u oeste: ninguna posición.",
  "photo.same-photo": "La misma foto está puesta en otras fotos de este trabajo: {count}.",
  "photo.cannot-be-read": "Su archivo no se puede leer.",
  "photo.too-poor-on-phone": "El teléfono la encontró demasiado pobre para leerse.",
  "photo.nobody-looked": "Nadie la ha mirado todavía.",
  "photo.looked-shows": "Mirada por {name}, {lookedInstant}: lo muestra.",
  "photo.looked-cannot-tell": "Mirada por {name}, {lookedInstant}; no pudo saberlo.",
  "photo.looked-does-not": "Mirada por {name}, {lookedInstant}: no lo muestra.",
  "speaks.for": "habla a favor",
  "speaks.against": "habla en contra",
  "speaks.neither": "no dice ni sí ni no",
};
