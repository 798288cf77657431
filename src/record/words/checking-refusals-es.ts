import type { CheckingCode } from "../../outcome/index.ts";

/** The same in Spanish. */
export const checkingRefusalsEs: Readonly<Record<CheckingCode, string>> = {
  "pdf-not-read": "Este archivo no se puede leer como PDF. Tome el registro tal como se entregó, no una foto ni una copia impresa.",
  "seal-missing":
    "El archivo no lleva sello. O no es un registro sellado, o un programa que lo guardó quitó lo adjunto; pida el archivo tal como se emitió.",
  "seal-not-understood":
    "El sello no está escrito como un sello, en {place}. Se cambió, o lo hizo un programa más nuevo; pida el archivo tal como se emitió.",
  "seal-signature": "La firma no corresponde al sello: uno de los dos se cambió. Pida el archivo tal como se emitió.",
  "seal-company":
    "La clave {key} está en la lista de {name}, pero el sello nombra a otra empresa. Pregunte a ambas de quién es el registro.",
  "seal-key-retired":
    "La clave {key} se retiró antes de la fecha en que el registro dice haberse sellado. Pregunte a la empresa si el registro es suyo.",
  "seal-file-missing": "Falta el archivo adjunto {file}. Pida el archivo tal como se emitió.",
  "seal-file-changed": "El archivo adjunto {file} no es lo que se selló. Lo que se cambió en él está abajo, donde se puede decir.",
  "seal-file-not-json": "El texto de {file} está roto aquí y no se puede leer. Pida el archivo tal como se emitió.",
  "seal-file-unexpected": "El archivo {file} se adjuntó después: el sello no lo nombra. No lo tome como parte del registro.",
  "seal-differs": "El sello y los archivos adjuntos no dicen lo mismo sobre {what}. Pida a la empresa su propia copia.",
  "seal-text-not-shown": "Los datos del registro dicen «{text}» y ninguna página lo muestra. Compare la página con la copia de la empresa.",
  "seal-pages": "El sello nombra {was} páginas y el archivo tiene {now} de ellas. Pida el archivo tal como se emitió.",
  "seal-page-words": "La página {page} se selló como «{was}» y ahora dice «{now}». Guíese por lo sellado y pregunte quién lo cambió.",
  "seal-picture-missing":
    "La imagen de la foto {photo} falta en el archivo, o no es la que se imprimió. Pida el archivo tal como se emitió.",
  "seal-picture-unknown": "El archivo lleva una imagen que no se imprimió en él. No la tome como parte del registro.",
  "seal-finding":
    "Las anotaciones adjuntas no dan lo que se selló para {title}. Guíese por las anotaciones sin cambios y pregunte a la empresa.",
  "seal-not-judged":
    "Los resultados no se pudieron calcular de nuevo: aquello en que se apoyan no se puede leer. Pida el archivo tal como se emitió.",
  "rules-unknown":
    "Las reglas {version}, con las que se juzgó este registro, no están aquí. Tome una versión más nueva de este programa para calcular de nuevo los resultados.",
  "rules-differ":
    "El archivo de las reglas {version} de aquí no es aquel con el que se juzgó este registro. Tome el que vino con el programa.",
  "key-list-shape": "Esto no es una lista de claves que diga de quién son, en {place}. Tome la lista de la dirección que da la empresa.",
};
