import type { CheckingCode, RefusalCode } from "../../outcome/index.ts";

/** The same in Spanish. */
export const refusalsEs: Readonly<Record<Exclude<RefusalCode, CheckingCode>, string>> = {
  "reading-empty": "No hay nada escrito. Escriba la lectura con su unidad, por ejemplo 3 1/2 pulg, o diga por qué no se pudo tomar.",
  "reading-not-understood":
    "El texto {found} no se entiende. Escriba solo un número y su unidad, por ejemplo 3 1/2 pulg, 12 mm o 1 h 30 min.",
  "reading-denominator":
    "Ninguna cinta tiene la marca {found}. Escriba medios, cuartos, octavos, dieciseisavos, treintaidosavos o sesentaicuatroavos; lo métrico va con decimales, por ejemplo 3.5 cm.",
  "reading-fraction":
    "La fracción {found} no va aquí. Escríbala menor que uno, con un espacio después de las pulgadas, por ejemplo 1 1/2; los pies y las piezas contadas van sin fracción.",
  "reading-comma-ambiguous": "El número {found} se puede leer de dos maneras por la coma. Escriba 1250 sin coma, o 1.25 con punto.",
  "reading-hyphen-ambiguous": "El texto {found} se puede leer con un menos o con un guion que une. Quite el guion: 4 3/8, o 5 pies 3 pulg.",
  "reading-two-readings":
    "Después del primer número viene otro {found}. Anote cada lectura por separado; escriba los miles sin espacio, y 1 m 23 cm como 1.23 m.",
  "reading-unit-unknown":
    "La unidad {found} no se conoce aquí. Escriba un largo en pies, pulg, mm, cm o m; lo demás, en la unidad que se muestra al lado.",
  "reading-unit-kind": "La unidad {found} mide otra cosa que la que se pide aquí. Escriba la lectura en la unidad que se muestra al lado.",
  "reading-inches-over-foot":
    "Junto a los pies, las pulgadas {found} tienen que ser menos de 12. Escriba 5 pies 13 pulg como 6 pies 1 pulg, o todo en pulgadas.",
  "reading-sign":
    "El signo {found} no va aquí. Escriba el número sin más ni menos; solo una lectura arriba o abajo de una marca lleva signo, y uno solo.",
  "reading-out-of-range":
    "El texto {found} se sale de lo que se puede tomar aquí. Vea si sobra una cifra o si es otra unidad; los minutos son menos de 60 y el día tiene que estar en el calendario.",

  "number-not-finite": "El dato {place} no es un número con el que se pueda calcular. Anótelo otra vez.",
  "number-not-positive": "El dato {place} es muy chico: no puede ser menos de cero, y una medida tampoco puede ser cero. Anótelo otra vez.",
  "limits-crossed":
    "Los límites de {place} se cruzan: el de abajo queda por encima del de arriba, o la meta fuera de los dos. Cambie uno, y deje la meta entre los dos.",
  "limits-missing": "La comprobación {place} no tiene límite ni por abajo ni por arriba. Póngale al menos uno.",
  "points-too-few": "Todavía no se han leído los {least} puntos que hacen falta. Lea los que faltan en la misma estación.",
  "points-too-many": "Los {taken} puntos leídos son más que los {most} puntos que lleva esta comprobación. Retire los que no son de ella.",
  "points-coincident": "Dos puntos están anotados en el mismo lugar. Lea cada punto por separado, o corrija el que está dos veces.",
  "points-collinear":
    "Todos los puntos están en una sola línea, y así no se sabe cómo está el nivel en el otro sentido. Lea un punto más fuera de esa línea.",

  "ties-too-few": "Un punto enterrado necesita las distancias a por lo menos {least} marcas. Mida a otra marca antes de taparlo.",
  "ties-mark-unknown":
    "La marca {mark} no está ubicada, y una distancia a ella no sirve. Anote primero a qué distancia está de otras dos marcas.",
  "ties-mark-twice": "La marca {mark} está dos veces. Deje una de las dos, o póngale a la otra su propio nombre.",
  "ties-rise-too-great":
    "El desnivel a lo largo de la cinta es tan largo como la cinta. Lea los dos otra vez, o mida a nivel desde una plomada.",
  "ties-cannot-meet":
    "Las distancias desde {first} y desde {second} no se pueden encontrar: les falta o les sobra {miss}. Mida las dos otra vez; un punto en línea con las dos marcas necesita una tercera marca hacia un lado.",
  "ties-in-line":
    "El punto está en línea con sus marcas, y las distancias no dicen qué tanto se sale de esa línea. Mida a otra marca hacia un lado.",
  "ties-not-settled": "Las distancias no llevan a un solo lugar. Mídalas otra vez, y también a otra marca hacia un lado.",
  "ties-side-missing":
    "Las distancias dejan dos lugares para {mark}. Diga si está a la izquierda o a la derecha de quien está en {first} y mira hacia {second}.",
  "drawing-does-not-fit":
    "El dibujo no cabe en el papel a ninguna escala usual. Vea si una distancia tiene una cifra de más, o elija un papel más grande.",

  "sheet-shape": "La hoja de tolerancias no se puede leer en {place}. Escriba ahí {wanted} y guarde otra vez.",
  "sheet-unknown-name":
    "La hoja de tolerancias nombra {name} en {place}, pero eso no está en ella o no puede ir ahí. Agréguelo, o elija un nombre que sí vaya.",
  "sheet-duplicate-name": "El nombre {name} está dos veces en la hoja de tolerancias, en {place}. Póngale otro nombre a uno de los dos.",
  "sheet-limit-without-aim":
    "El límite de {place} puede detener un tapado pero no tiene meta. Ponga la meta a la que llega un buen trabajo, o deje que solo se pregunte.",
  "sheet-limit-undecidable":
    "Un buen trabajo no se podría distinguir del límite de {place}: el margen {room} entre meta y límite es menos que el margen {needed} que pide el instrumento. Amplíe el límite o nombre un instrumento más fino.",
  "sheet-limit-on-nominal":
    "El límite de {place} cae en la medida {size} en que se compra el material, y una pieza tal como se vende quedaría demasiado justa. Mueva el límite de esa medida.",
  "sheet-words-missing": "A la hoja de tolerancias le falta el texto de {place} en uno de sus idiomas. Escríbalo y guarde otra vez.",

  "entry-shape":
    "Esta entrada no se puede leer en {place}. Actualice el programa del teléfono y mande la entrada otra vez; el teléfono la guarda.",
  "entry-id-used":
    "El identificador de esta entrada ya es de la entrada {number} con otro contenido. Anótela otra vez como entrada nueva; el teléfono guarda esta.",
  "entry-unknown-item":
    "El nombre {item} no está en la hoja de tolerancias de este trabajo. Deje que el teléfono baje el trabajo otra vez y anótelo de nuevo; si sigue igual, llame a la oficina.",
  "entry-unknown-tag":
    "La etiqueta {tag} no va aquí. Nómbrela primero, con el tapado que la esconde; un paso que no se repite no lleva etiqueta.",
  "entry-unknown-covering": "El tapado {covering} no se puede nombrar aquí. Elija uno de la hoja de tolerancias de este trabajo.",
  "entry-unknown-entry": "Esta entrada se refiere a otra que no ha llegado a este trabajo. Mande primero aquella y después esta otra vez.",
  "entry-unknown-setup":
    "Esta lectura es de una estación, y no se nombra ninguna con ella. Anote la estación, lea la marca de altura y después tome la lectura.",
  "entry-unknown-version":
    "Este trabajo no ha tomado la versión que esta entrada necesita de una hoja de tolerancias, ficha de pieza o ajuste. Pida a la oficina que la tome y mande la entrada otra vez.",
  "version-unknown": "La empresa no tiene nada de este tipo con este nombre. Lea otra vez la lista y elija de ella.",
  "version-not-newest":
    "Alguien guardó otra versión mientras tanto. Lo que usted escribió sigue aquí: vea qué cambió allá, páselo a mano y guarde otra vez.",
  "version-held": "Este trabajo ya se juzga por esta misma versión. No hay nada que cambiar.",
  "entry-digest-differs":
    "Esta entrada cambió en el camino: su contenido no es el que selló el teléfono. Mándela otra vez desde el teléfono.",
  "entry-answered": "A esta palabra por teléfono ya se respondió. Lea otra vez el trabajo y vea cómo.",
  "entry-customer-word":
    "Según la hoja de tolerancias esto solo lo acepta el cliente como quedó. Anote lo que dijo el cliente, palabra por palabra.",
  "entry-role": "Las entradas de esta clase las hace otra persona de la empresa. Pida a la oficina que la anote.",
  "entry-author":
    "Esta entrada nombra a una persona por la que este teléfono no puede hablar. Que entre esa persona, o anótela otra vez a nombre de alguien de la cuadrilla.",
  "entry-clock":
    "La hora de esta entrada no se puede tomar. Deje que el teléfono ponga solo su fecha y hora, y anótela otra vez; el teléfono guarda esta.",
  "entry-not-applicable":
    "Las entradas de este tipo hablan solo de su propio trabajo y se quedan en él. Deje esta fuera y mueva las demás.",
  "entry-body-size": "Esta entrada trae más de lo que cabe en una. Acorte el texto o hágalo en dos; las fotos van aparte.",
  "batch-shape":
    "Lo que se mandó no se puede leer como lista de entradas. Actualice el programa del teléfono y mande otra vez; el teléfono las guarda.",
  "batch-size": "Se mandó demasiado de una vez. Mándelo en tandas más chicas; el teléfono guarda lo que espera.",
  "job-unknown": "La empresa no tiene ese trabajo. Búsquelo entre los trabajos de la empresa y ábralo desde ahí.",
  "own-number-used":
    "El número {number} ya es de otro trabajo de la empresa. Busque ese trabajo y siga con él, o dele a este un número propio.",
  "site-unknown": "La empresa no tiene ese sitio. Elija uno de sus sitios, o anote el sitio de nuevo.",
  "table-unreadable":
    "El archivo no se lee como tabla desde su línea {line}. Guárdelo otra vez como CSV desde la hoja de cálculo, y busque unas comillas que no se cierran.",
  "table-empty":
    "El archivo no tiene líneas bajo los nombres de sus columnas. Guarde la tabla con su primera línea de nombres y los trabajos debajo.",
  "table-column-missing": "Falta una columna necesaria en la primera línea del archivo: {column} no está. Nómbrela allí.",
  "table-column-twice": "La columna {column} está dos veces, con un nombre o con dos. Quite una de las dos.",
  "table-too-long":
    "La tabla tiene más líneas que las {most} que se toman de una vez. Divídala y tome una parte tras otra: nada se duplica.",
  "table-cell-long": "La columna {place} tiene más signos que los {most} que caben. Acórtela.",
  "table-cell-signs": "La columna {place} tiene signos que no son texto. Escríbala de nuevo, o guarde el archivo como CSV en UTF-8.",
  "table-cells-more":
    "La línea tiene más celdas que columnas tiene el archivo. Ponga entre comillas el texto que contiene el separador, o deje que la hoja de cálculo lo guarde.",
  "table-number-missing": "La línea no tiene número propio, así que el trabajo no se distingue de otros. Dele uno.",
  "table-number-twice": "Una línea anterior tiene el mismo número propio, la línea {line}. Quite una de las dos, o corrija su número.",
  "table-title-missing": "La línea abre un trabajo y no dice cómo se llama. Escriba el título.",
  "table-name-unknown":
    "La empresa no tiene a nadie ni nada llamado {found} para la columna {place}. Escriba el nombre como lo tiene la empresa, o agréguelo antes.",
  "table-lines-bad":
    "No todas las líneas de la tabla se pueden tomar; la primera que no se puede es la línea {line}. Corríjalas en el archivo: se toma todo o nada.",
  "archive-unreadable": "El archivo no es el de un trabajo que este programa lea. Sáquelo otra vez donde está el trabajo.",
  "archive-part-missing": "Al archivo le falta la parte {place} que su lista nombra. Sáquelo otra vez donde está el trabajo.",
  "archive-part-differs":
    "La parte {place} del archivo no es lo que dice su lista: fue cambiada o cortada. Sáquelo otra vez donde está el trabajo.",
  "archive-part-unexpected": "El archivo contiene la parte {place} que su lista no nombra. Sáquelo otra vez donde está el trabajo.",
  "archive-job-differs": "Esta empresa ya tiene ese trabajo, y su libro es otro. No se cambió nada; compare los dos antes que nada.",
  "job-exists": "Este trabajo ya está abierto. Siga con él, o abra el nuevo como trabajo aparte.",

  "ledger-format": "El libro o la entrada está en un formato {found} que este programa no lee. Use una versión más nueva del programa.",
  "ledger-number":
    "La entrada número {found} está fuera de orden: una falta, está doble o se movió. Pida otra vez el libro a la empresa y compare.",
  "ledger-link":
    "La entrada {number} no lleva el hash de la anterior, así que una de las dos se cambió. Pida otra vez el libro a la empresa y compare.",
  "ledger-hash":
    "La última entrada {number} no tiene el hash que está en la cabeza, así que una de las dos cosas se cambió. Pida otra vez el libro a la empresa y compare.",
  "ledger-part-digest":
    "La parte en {place} no es aquella de la que se sacó su resumen, así que se cambió. Mándela otra vez desde el teléfono, o pida otra vez el libro a la empresa.",
  "ledger-part-missing":
    "La parte en {place} se anunció y no está. Mande la entrada completa desde el teléfono, o pida otra vez el libro a la empresa.",
  "ledger-duplicate-id":
    "La entrada {number} tiene el mismo identificador que la entrada anterior {earlier}, así que una de las dos se metió después. Pida otra vez el libro a la empresa y compare.",
  "ledger-head":
    "Las {found} entradas de este libro no son las {expected} entradas que nombra su cabeza: al final faltan o sobran. Pida otra vez el libro a la empresa.",
  "ledger-withheld-reason":
    "La parte en {place} se retiene por una razón que el programa nunca da. Pida otra vez el libro a la empresa y compare.",
  "ledger-job": "La entrada {number} es de otro trabajo. Póngala en el trabajo para el que se hizo.",
  "ledger-shape":
    "Lo que está en {place} no es lo que un libro lleva ahí. Actualice el programa y mándelo otra vez, o pida otra vez el libro a la empresa.",
  "ledger-salt": "La sal en {place} no son 32 bytes nuevos al azar. Deje que el programa saque otra y mande otra vez.",
  "ledger-part-unexpected":
    "La parte en {place} nunca se anunció. Mande la entrada otra vez desde el teléfono, o pida otra vez el libro a la empresa.",
  "ledger-version-digest":
    "La versión adjunta {version} no es aquella de la que se sacó su resumen, así que se cambió. Pida otra vez el libro a la empresa y compare.",
  "ledger-not-json":
    "Lo que está en {place} no se puede guardar en un libro. Use solo texto, números, sí o no, listas y campos con nombre.",
  "ledger-text-surrogate":
    "El texto en {place} trae medio carácter, como un dibujito cortado en dos. Borre el último signo y escríbalo otra vez.",
  "ledger-too-deep": "Lo que está en {place} va más adentro que el nivel {deepest} que admite un libro. Mándelo con menos niveles.",

  "photo-hash-differs": "La foto que llegó no es la que se anunció. Mándela otra vez; el teléfono guarda la original.",
  "photo-too-large": "El archivo de la foto pasa de 25 MB. Tómela otra vez con el ajuste normal de la cámara, no como archivo RAW.",
  "photo-empty": "El archivo de la foto está vacío. Tome la foto otra vez mientras todavía se pueda ver.",
  "photo-type":
    "Este archivo no es una foto que se pueda leer aquí. Mande el archivo propio de la cámara: JPEG, HEIC, AVIF, PNG, WebP o GIF.",
  "photo-is-film":
    "Este archivo es un video, y el registro lleva fotos. Detenga el video donde se ve la cosa, guarde ese cuadro como foto y mande la foto.",
  "photo-length-required": "La foto se mandó sin su tamaño. Actualice el programa del teléfono y mándela otra vez; el teléfono la guarda.",
  "photo-length-differs": "La foto no llegó completa. Mándela otra vez donde haya mejor señal; el teléfono la guarda.",
  "paper-type": "Este archivo no es un PDF. Mande el papel como PDF, o tómele una foto.",
  "mark-type": "Este archivo no es PNG, JPEG ni SVG. Guarde la marca de la empresa en uno de ellos y elíjalo otra vez.",
  "mark-too-large": "La marca de la empresa pasa de 2 MB o de 40 millones de píxeles. Guárdela más pequeña y elíjala otra vez.",
  "mark-more-than-picture":
    "Este archivo lleva más que una imagen: hay algo detrás de su final, o trae un programa o apunta a otro sitio. Guarde solo la imagen y elíjala.",
  "mark-unreadable": "De este archivo no sale ninguna imagen. Ábralo, guárdelo otra vez como PNG y elíjalo.",
  "mark-unknown": "La marca de la empresa no ha llegado. Elija el archivo otra vez.",
  "paper-unreadable": "Este PDF no se puede abrir. Imprímalo otra vez como PDF y mande ese.",
  "paper-locked": "Este PDF tiene contraseña o está cifrado. Guárdelo sin ella y mande ese.",
  "paper-too-heavy":
    "Los dibujos de este PDF ocupan más de 32 millones de bytes al abrirse, más de lo que se puede anexar. Guárdelo con menos detalle, o imprímalo en un PDF nuevo, y mande ese.",
  "paper-too-long": "Este PDF tiene más de 60 páginas. Mande las que importan, o por partes.",
  "paper-unknown": "Este papel no ha llegado. Mándelo otra vez.",
  "others-link-ended":
    "Este enlace no sirve: ya se usó, se acabaron sus días, se retiró, o ya recibió tantos archivos como recibe un enlace. Pida uno nuevo a quien lo mandó.",
  "others-paper-missing": "Todavía no hay papel. Agregue una foto o un PDF.",
  "question-unknown": "No hay tal pregunta ni tabla. Ábrala desde la página del dueño de la empresa.",
  "photo-unknown": "Esta foto no ha llegado. Abra el programa en el teléfono que la tomó y deje que la mande.",
  "photo-unreadable":
    "El archivo de la foto no se abre como imagen. Mande otra vez el archivo propio de la cámara, o tómela de nuevo mientras todavía se pueda ver.",
  "photo-not-whole":
    "El archivo de la foto no está completo: se puede leer el {percent} % de sus filas. Mándela otra vez desde el teléfono que la tomó, o tómela de nuevo mientras todavía se pueda ver.",
  "photo-too-many-pixels": "La foto tiene más de 60 millones de píxeles. Tómela otra vez con el ajuste normal de la cámara.",
  "photo-not-read-yet": "La foto ya llegó y espera a que se lea. Pruebe otra vez en un minuto.",

  "seal-key-missing":
    "El servidor de la oficina no tiene un secreto con el que guardar la clave de la empresa, así que no se puede sellar nada. Quien opera el servidor define SEAL_SECRET.",
  "seal-key-unreadable":
    "La clave de la empresa se guardó con otro secreto que el que el servidor tiene ahora. Quien opera el servidor repone el SEAL_SECRET anterior o hace una clave nueva.",
  "session-missing": "Aquí no ha entrado nadie. Entre, o use un código o un enlace de la oficina; lo que tiene el teléfono se queda en él.",
  "session-ended": "Esta sesión ya terminó. Entre otra vez, o pida a la oficina un código nuevo; lo que tiene el teléfono se queda en él.",
  "link-unknown": "Este enlace ya se usó, ya terminó o nunca se dio. Pida uno nuevo a la oficina.",
  "link-passkeys":
    "Esta persona entra con una llave de acceso. Si la perdió, un dueño de la empresa la retira y da otra entrada, en la página de la gente.",
  "join-code-unknown":
    "No hay un código así que espere todavía: ya se usó, se retiró o venció, o algún dígito es otro. Mírelo otra vez o pida uno nuevo a la oficina.",
  "join-code-crew":
    "Los códigos son para los teléfonos de la cuadrilla. La oficina y el dueño reciben un enlace y con él hacen una llave de acceso.",
  "passkey-unknown": "Esa llave de acceso ya no está. Actualice la página y elija otra.",
  "passkey-not-made":
    "La llave de acceso no llegó, o tardó más de cinco minutos. Pruebe otra vez en esta página y confirme con el dedo, la cara o el código que lo desbloquea.",
  "passkey-there": "Este aparato ya tiene una llave de acceso suya. Entre con esa.",
  "passkey-last": "Es su única llave de acceso. Haga primero otra, en este aparato o en otro; después quite esta.",
  "passkeys-many": "Ya tiene diez llaves de acceso. Quite una que no use; después haga la nueva.",
  "passkeys-not-set":
    "Este servidor no dice en qué dirección se encuentra, así que no se puede hacer ninguna llave de acceso. Quien lo opera define ORIGIN.",
  "sign-in-unknown":
    "Con eso no se pudo entrar: la llave de acceso no se conoce aquí o se quitó, o tardó más de cinco minutos. Pruebe otra vez; si la perdió, pida otra entrada a un dueño de la empresa.",
  "session-unknown": "En ese aparato ya no hay nadie adentro. Actualice la página.",
  "too-many-tries": "Hubo muchos intentos desde aquí. Espere {minutes} min y pruebe otra vez.",
  "role-not-allowed": "Esto le toca a otra persona de la empresa. Pregunte en la oficina o al dueño de la empresa.",
  "request-shape": "La parte {place} de lo que se mandó falta o no es lo que va ahí. Actualice el programa y mándelo otra vez.",
  "request-type": "Lo que se mandó no es de una clase que se reciba aquí. Actualice el programa y mándelo otra vez, como JSON.",
  "request-origin": "Esto vino de otra página que no es la del programa. Abra el programa en su propia dirección y hágalo ahí.",
  "route-unknown": "En esta dirección no hay nada. Revise cómo está escrita, o empiece desde la primera página del programa.",
  "company-unknown": "Aquí no hay esa empresa. Abra el enlace que le dio la oficina de la empresa.",
  "person-unknown": "Esta persona no está en la empresa, o ya salió de ella. Elija a otra, o que la oficina la agregue.",
  "person-request-unknown": "Aquí no hay esa solicitud. Mire la lista de quienes pidieron sus datos.",
  "person-request-answered": "Esta solicitud ya se respondió. Si hay que buscar o retirar algo nuevo, anote otra solicitud.",
  "person-request-held": "Esta solicitud está en espera hasta el {until}. Respóndala después de ese día, o diga hasta cuándo espera ahora.",
  "person-covered":
    "Una garantía de la instalación de esta persona corre hasta el {until}: lo registrado puede hacer falta hasta entonces. Ponga la solicitud en espera y diga hasta cuándo.",
  "person-still-here": "Esta persona todavía trabaja en la empresa. Diga primero que salió; después se puede retirar su nombre.",
  "release-ended": "Este enlace a un registro ya terminó o nunca se dio. Pida uno nuevo a la empresa que lo construyó.",
  "release-company-edition":
    "Esta es la edición de la empresa, con todos los nombres y posiciones. Emita la edición del cliente y entregue esa.",
  "record-unknown": "Todavía no hay ese registro. Emítalo primero, o elija otra versión.",
  "record-unreadable": "Lo guardado de este registro no se puede leer. Su PDF está como se emitió; ábralo, o emita el registro otra vez.",

  "service-token":
    "Dos partes del programa no se reconocieron. Pruebe otra vez; si sigue igual, quien administra el programa les da la misma clave y pone sus relojes en hora.",
  "store-unavailable":
    "El almacén de fotos y registros no responde. Pruebe otra vez en unos minutos; lo que tiene el teléfono se queda en él.",
  "media-unavailable":
    "La parte que lee las fotos no responde. Las fotos que llegaron están guardadas y se leerán cuando vuelva; no hay que mandar nada dos veces.",
  "print-unavailable": "La parte que imprime los registros no responde. No se pierde nada; emita el registro otra vez en unos minutos.",
  "print-failed":
    "El registro no se pudo imprimir. No se pierde nada; emítalo otra vez, y avise a quien administra el programa si vuelve a pasar.",
  "mail-not-set":
    "En esta instalación no hay ningún servicio de correo. Guarde el mensaje como archivo y mándelo desde su propio programa de correo.",
  "mail-sender-missing": "Falta la dirección de correo de la empresa. Póngala en los ajustes de la empresa.",
  "mail-not-sent":
    "El servicio de correo no aceptó el mensaje. Guárdelo como archivo y mándelo desde su propio programa de correo, o inténtelo más tarde.",
  "database-busy": "Otros escribieron en este trabajo al mismo momento. Mándelo otra vez en un minuto; el teléfono lo guarda.",
  "company-moving":
    "Los datos de esta empresa se están cambiando de lugar en este momento. Mándelo otra vez en unos segundos; el teléfono lo guarda.",
  "shard-unknown": "No hay ninguna base de datos con este nombre. Nombre una que esté: DB, DB_2 y así sucesivamente.",
  "move-other":
    "Otro traslado de esta empresa no ha terminado, u otro comando tomó este. Deje que termine, y haga quitar las filas que dejó atrás.",
  "move-differs":
    "La tabla copiada {what} no es igual a la de antes, así que la empresa sigue donde estaba. Repita el traslado; si lo dice otra vez, no traslade la empresa.",

  "pipe-size-unknown":
    "Ninguna tabla de aquí trae la medida de tubo en {place}. Elija una medida como se vende, de 1/2 a 4 pulg, u otra tabla.",
  "pipe-kind-unknown": "La clase de tubo en {place} no se conoce aquí. Escriba rígido, flexible o corrugado.",
  "fitting-length-unknown":
    "Ninguna tabla de aquí da la pérdida de esa pieza en esa medida. Tome su largo equivalente de su propio papel y súmelo al del tubo.",
  "count-not-whole": "Lo que se cuenta en {place} va en piezas enteras. Anote un número entero.",
  "pipe-part-longer": "El tramo de la línea en {place} es más largo que toda la línea. Mida los dos desde la bomba a lo largo del tubo.",
  "pump-curve-text":
    "El punto {place} de la curva de la bomba no se puede leer. Escriba cada uno como caudal y carga con sus unidades, como 20 gpm 21 ft, y sepárelos con punto y coma.",
  "pump-curve-too-few":
    "Con un solo punto no se sabe por dónde va la curva de la bomba. Copie al menos dos puntos de su papel, mejor todos.",
  "pump-curve-point-twice":
    "El punto {place} de la curva de la bomba está dos veces. Borre uno de los dos, o corríjalo según el papel de la bomba.",
  "pump-curve-rises":
    "Según sus puntos, esta bomba no da menos carga con su mayor caudal que con el menor. Vea si se cambiaron caudal y carga.",
  "pump-beyond-curve":
    "El papel de la bomba no da ningún punto con ese caudal, así que ahí no se conoce su carga. Agregue los puntos que faltan a su ficha, o pregunte al fabricante.",
  "flow-bin-too-fast":
    "El recipiente se llena demasiado rápido para medirlo a mano: tarda menos de 20 s. Use uno más grande, o mida con la bajada del propio depósito.",
  "cure-time-unknown":
    "Ninguna tabla publicada cubre las uniones de este tubo. Escriba los tiempos de fraguado y de curado que da la lata.",
  "cure-temperature-outside":
    "La temperatura más fría queda fuera de la tabla de curado elegida. Léala de nuevo, elija otra tabla, o escriba los tiempos que da la lata.",
  "cure-pressure-outside": "La tabla de curado elegida no llega a esa presión. Elija otra tabla, o escriba los tiempos que da la lata.",
  "cure-before-set":
    "El tiempo de curado en {place} es más corto que el de fraguado. Lea los dos otra vez en la lata; el agua viene después de mover la unión.",
  "socket-mark-beyond":
    "La marca testigo no puede estar tan lejos del casquillo: el tubo no estaría adentro. Mida de la cara del casquillo a la marca.",
  "wire-size-unknown":
    "La resistencia de ese cable no está en la tabla de aquí. Elija otro calibre u otro tipo de hilo, o pregunte al electricista.",
};

/** What a tolerance sheet's shape asks for (figure `wanted`), in Spanish; whatever is not here is a name and stays as it is. */
export const wantedEs: Readonly<Record<string, string>> = {
  text: "texto",
  "a whole number": "un número entero",
  "a whole number from 0": "un número entero desde 0",
  "true or false": "true o false",
  "a list": "una lista",
  "an object": "un objeto",
  something: "algo",
  "one of the shapes that this can have": "una de las formas que esto puede tener",
  "nothing: this name is not known here": "nada, porque este nombre no se conoce en ese lugar",
};
