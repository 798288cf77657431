import type { AnswerSentence } from "./answers-en.ts";

/** The same in Spanish. */
export const answersEs: Readonly<Record<AnswerSentence, string>> = {
  "first-time-right.decides":
    "Qué paso enseñar este mes: el que sale mal más veces; otro ocuparía su lugar si su parte bien hecha bajara de la de este más de lo que permiten los intervalos.",
  "tape-study.decides":
    "Si vale la duda declarada de una lectura y si hay que ver cómo alguien sostiene la regla; un estudio con otra dispersión cambiaría qué límites se pueden decidir.",
  "instruments.decides": "Qué instrumento retirar y qué trabajos volver a mirar; una comprobación mala desde la última buena lo cambia.",
  "readings-that-carry-nothing.decides":
    "Qué paso pedir de otra manera, porque lo que se anota allí no dice nada; lecturas tan dispersas como su duda obliga lo cambiarían.",
  "second-look.decides":
    "Si las lecturas de las cuadrillas pueden seguir valiendo por sí solas; diferencias mayores que la duda declarada lo cambiarían.",
  "cost.decides":
    "Adónde va la próxima hora, al cuidado de antes o al arreglo de después; decide el mayor de los tres costos, y otro mayor lo cambiaría.",
  "worth-of-holds.decides": "Qué punto que retiene quitar de la hoja de tolerancias; un solo hallazgo suyo lo conservaría.",
  "came-back.decides": "Cuánta garantía dar y qué fabricante cambiar; una pieza que falle tan poco como las demás lo cambiaría.",
  "look-at-first.decides":
    "Qué trabajos ver primero en la visita de regreso; otro pasa adelante en cuanto algo suyo queda más cerca de su límite.",
  "foremen.decides": "A quién mandar con quién; una parte bien hecha que el azar solo pudiera dar lo cambiaría.",
  "taught.decides": "Si enseñar un paso otra vez igual; decide un intervalo de la diferencia que solo contenga mejora o pérdida.",
  "over-time.decides": "Cuándo mandar ajustar un instrumento; desviaciones en torno a su media y sin deriva lo cambiarían.",
  "changed-limit.decides": "Si cambiar un límite; decide lo que habría detectado y lo que volvió por debajo de él.",
  "sampling.decides": "Cuántas medir otra vez; decide el número que aún podría estar mal.",

  "counted.jobs": "Trabajos: {jobs}.",
  "counted.read-on":
    "Contado hasta el {until} con los registros como estaban el {read}: un veredicto que una entrada entre esos días cambió está aquí como es ahora.",
  "counted.readings-pictures": "Lecturas: {readings}; fotos: {pictures}.",
  "too-few.jobs": "Muy pocos para saberlo: {jobs} {jobs|trabajo|trabajos}; a partir de {wanted} se dice algo.",
  "too-few.study": "Aún no hay estudio de cinta: la duda de una lectura es la cifra propia del programa.",
  "too-few.checks": "No se ha anotado ninguna comprobación de un instrumento.",
  "too-few.pairs": "Muy pocas para saberlo: medido otra vez: {pairs}; a partir de {wanted} se dice algo.",
  "too-few.foremen":
    "Muy pocos para saberlo: {foremen} {foremen|encargado|encargados} con suficientes cubrimientos; a partir de {wanted} se comparan.",
  "too-few.taught":
    "Muy pocos para saberlo: de lo enseñado (veces: {taught}) nada tiene {wanted} {wanted|trabajo|trabajos} antes y {wanted} después.",
  "too-few.points": "Muy pocos para saberlo: ningún instrumento tiene {wanted} {wanted|trabajo|trabajos} con desviaciones de su diseño.",

  "first-time-right.all": "Bien a la primera: {right} de {n} {n|paso de un trabajo|pasos de trabajos} ({share} %).",
  "first-time-right.which": "Destaca un paso: las primeras líneas de la tabla.",
  "first-time-right.none": "{steps|El único paso no|Ninguno de los {steps} pasos} sale mal más veces de lo que el azar solo hace parecer.",
  "first-time-right.worse": "{about}: bien a la primera en el {share} % de {n}; todos los demás, en el {others} %.",
  "first-time-right.counted":
    "Pedidos: {asked}; muy justos para decidir y contados aparte: {tooClose}; pedidos y sin nada anotado: {notEntered}.",

  "tape-study.newest":
    "Según el estudio más nuevo, una lectura queda dentro de ± {halfWidth:length} (semiancho de un rectángulo), con personas y repeticiones juntas.",
  "tape-study.undecided": "Límites que con él ya no se pueden decidir: {limits}.",
  "tape-study.decided": "Con él todos los límites se pueden decidir todavía.",
  "tape-study.differently":
    "{about} sostiene la regla de otra manera: {offset:length} de la media de todos, más de lo que explican las repeticiones.",
  "tape-study.counted": "Estudios: {studies}; completos: {complete}.",

  "instruments.some":
    "De {checks} {checks|comprobación|comprobaciones}, {bad} {bad|mostró|mostraron} un instrumento desviado más de lo permitido.",
  "instruments.none": "De {checks} {checks|comprobación|comprobaciones}, ninguna mostró un instrumento desviado más de lo permitido.",
  "instruments.off":
    "{about} se halló desviado: {readings} {readings|lectura|lecturas} en {jobs} {jobs|trabajo|trabajos} desde su comprobación anterior {readings|queda|quedan} en duda.",

  "carry.some":
    "Lo que destaca: {signals}. Merece una mirada y no prueba nada: lo que se coloca puede ajustarse hasta que la cinta marque lo nominal.",
  "carry.none": "Nada destaca: las lecturas se dispersan por lo menos como su duda obliga.",
  "carry.nominal":
    "{about}: {hits} de {n} {n|lectura|lecturas} {hits|está|están} exactamente en lo nominal ({share} %); su duda permite como mucho el {most} %.",
  "carry.equal": "{about}: en {equal} de {n} {n|borde|bordes} todos los lugares leen lo mismo; su duda permite unos {most}.",
  "carry.same-set": "{about}: series de lecturas iguales en varios trabajos: {sets} (en trabajos: {jobs}).",
  "carry.picture": "{about}: fotos que están en más de un trabajo: {pictures} (en trabajos: {jobs}).",
  "carry.seconds": "{about}: {hits} de {n} {n|lectura|lecturas} {hits|siguió|siguieron} a otro lugar en segundos ({share} %).",
  "carry.after": "{about}: {hits} de {n} {n|lectura|lecturas} se {hits|anotó|anotaron} después de cubrir ({share} %).",

  "second-look.all": "Medido otra vez por otra persona, a ciegas: {pairs}; más apartado que su duda: {off}.",
  "second-look.differs":
    "{about}: {off} de {n} {n|segunda mirada|segundas miradas} {off|queda más apartada|quedan más apartadas} que su duda; juntas se dispersan más de lo declarado.",

  "cost.line":
    "Prevención: veces que se enseñó: {taught}. Comprobación: {phone} {phone|minuto|minutos} de teléfono por trabajo. Lo que salió mal: {rework} {rework|minuto|minutos} de rehacer y {callback} {callback|minuto|minutos} de llamadas por trabajo.",
  "cost.money": "Piezas de {callbacks} {callbacks|llamada|llamadas} menos lo recuperado: {parts}, en la moneda de la empresa.",

  "worth.all":
    "{holds} {holds|punto que retiene dijo|puntos que retienen dijeron} todavía no {notYet} {notYet|vez|veces}, {holds|halló|hallaron} algo {found} {found|vez|veces} e {holds|hizo|hicieron} esperar {hours} {hours|hora|horas}.",
  "worth.thin": "Puntos que retienen y nunca hallan nada: {holds}.",
  "worth.keep": "Ningún punto que retiene se ha pedido lo bastante para decir que nunca halla nada.",
  "worth.never":
    "{about}: pedido en {asked} {asked|trabajo|trabajos} y nunca halló nada; los demás hallan algo en el {others} % de los suyos.",

  "came-back.year": "Llamadas dentro de 12 meses: {share} % ({low} a {high} %), de trabajos hasta donde se han seguido.",
  "came-back.parts": "Una pieza se descompone más que las demás: las primeras líneas de su tabla.",
  "came-back.no-part":
    "{parts|La única pieza no|Ninguna de las {parts} piezas} se descompone más veces de lo que el azar solo hace parecer.",
  "came-back.part": "{about}: {failed} de {n} se {failed|descompuso|descompusieron}, más y antes que las demás.",
  "came-back.winter":
    "{about}: {inWinter} de {failed} se {inWinter|descompuso|descompusieron} en invierno, que es el {share} % del tiempo que se siguió.",
  "came-back.counted": "Instalados: {jobs}; con llamada: {events}; seguidos un año entero: {whole}.",

  "look-at-first.some":
    "{jobs} {jobs|trabajo tiene|trabajos tienen} algo cerca de un límite o más allá; {listed|se lista el más cercano|se listan los {listed} más cercanos}.",
  "look-at-first.none": "Ningún trabajo instalado tiene nada cerca de un límite.",

  "foremen.off": "Las personas se comparan solo donde el dueño de la empresa lo pide, en la página de esta pregunta.",
  "foremen.some": "De {foremen} {foremen|encargado|encargados}, a algunos les sale mal más veces de lo que el azar solo hace parecer.",
  "foremen.none":
    "{foremen|Un encargado solo no se compara con nadie|{foremen} encargados no se distinguen por lo que han hecho hasta ahora}.",
  "foremen.worse":
    "{about}: todos los cubrimientos bien a la primera en el {share} % de {n} {n|trabajo|trabajos}; los demás, en el {others} %.",
  "foremen.counted": "Encargados: {foremen}; cubrimientos: {coverings}.",

  "taught.all": "Enseñado: {taught}; con suficientes trabajos antes y después: {judged}.",
  "taught.changed": "Enseñar cambió algo: lo que sobresale dice cuánto.",
  "taught.same": "Antes y después no se distinguen todavía: el azar solo podría traer la diferencia.",
  "taught.mark": "enseñado",
  "taught.differ": "{about}: bien a la primera en el {before} % antes y en el {after} % después.",

  "over-time.breaks":
    "Puntos que rompen una regla (más allá de 3 sigma; {run} seguidos de un lado): {breaks}. Por puro azar se esperarían {expected}.",
  "over-time.drifts": "{about} deriva: {slope:length} por año.",
  "over-time.checked": "comprobado",
  "over-time.capability": "La capacidad de lo medido con un instrumento estudiado está en su tabla, con intervalos.",
  "over-time.no-study": "La capacidad se dice después de un estudio de cinta: antes nadie sabe cuánta dispersión es de la cinta.",

  "changed-limit.ask": "Elija una comprobación y escriba cuál sería su límite.",
  "changed-limit.would":
    "De {n} {n|primer valor|primeros valores}, {now} {now|quedaba|quedaban} fuera del límite de ahora; el otro habría detectado {asked} ({share} %), {more} de ellos {more|nuevo|nuevos}.",
  "changed-limit.back": "Llamadas confirmadas entre estos trabajos: {confirmed}; lo que volvió está en la segunda tabla.",
  "changed-limit.back-too-few":
    "No se dice lo que volvió: {confirmed} {confirmed|llamada confirmada|llamadas confirmadas}; se diría a partir de {wanted}. Lo que queda fuera se rehace antes de que pueda volver.",

  "sampling.could": "Midió otra vez {looked} de {lot} y halló mal {off}; en total podrían estar mal hasta {most} ({sure} %).",
  "sampling.none": "No se ha medido otra vez ninguna de {lot}: podrían estar mal todas.",
  "sampling.not-a-sample": "Estos números no son una muestra: enteros, mal como mucho los mirados, mirados como mucho todos.",
};
