import type { companyEn } from "./company-en.ts";

/** Words of the page of the company's settings, in Spanish. */
export const companyEs: Readonly<Record<keyof typeof companyEn, string>> = {
  "company-title": "Ajustes de la empresa",
  "company-open": "Ajustes de la empresa",
  "company-how":
    "Van en cada registro desde ahora y en las páginas de todos aquí. Cada trabajo conserva las condiciones que tomó; nombre, dirección y papel van con los ajustes que tomó el trabajo, la marca y los colores son siempre los de hoy.",
  "company-name": "Nombre de la empresa",
  "company-lines": "Debajo del nombre en el registro, una línea cada cosa: dirección, teléfono, número de licencia",
  "company-telephone": "Teléfono de la oficina, para los teléfonos de la cuadrilla",
  "company-zone": "Zona horaria",
  "company-units": "Unidades",
  "company-units-inch": "Pies y pulgadas",
  "company-units-metric": "Metros",
  "company-language": "Idioma",
  "company-paper": "Papel",
  "company-paper-letter": "Carta",
  "company-paper-a4": "Hoja A4",
  "company-names": "Nombres de la cuadrilla completos en el registro del cliente; si no, función e iniciales",
  "company-look": "Marca y colores",
  "company-mark": "La marca de la empresa: PNG, JPEG o SVG, de 2 MB como mucho",
  "company-mark-how": "Solo se guarda su imagen: se dibuja de nuevo y nada más del archivo sigue adelante.",
  "company-mark-now": "La marca de la empresa como está ahora",
  "company-mark-drop": "Quitar la marca",
  "company-colours": "Colores propios en el registro",
  "company-colour-lines": "Color de las líneas",
  "company-colour-words": "Color de las palabras",
  "company-colours-on": "{contrast} : 1 sobre blanco. Se imprime.",
  "company-lines-pale": "{contrast} : 1 sobre blanco, menos de 3 : 1. Se imprime, y muchos apenas lo verán.",
  "company-words-pale":
    "{contrast} : 1 sobre blanco, menos de 4.5 : 1. Las palabras quedan en negro: en este color muchos no podrían leerlas.",
  "company-save": "Guardar los ajustes",
  "company-saved": "Guardado. El próximo registro los lleva.",
  "company-keys": "La clave de los sellos de la empresa",
  "company-keys-how":
    "Cada registro se sella con la clave propia de la empresa. Su mitad pública está publicada, para que cualquiera pueda ver que un registro es de la empresa y sigue igual.",
  "company-key": "Clave {key}, hecha {made}, en uso",
  "company-key-old": "Clave {key}, hecha {made}, retirada {retired}: lo que selló se puede seguir comprobando",
  "company-keys-none": "Todavía no se ha sellado ningún registro. El primero hace la clave.",
  "company-keys-new": "Hacer una clave nueva",
  "company-keys-why":
    "Haga una nueva cuando se haya ido alguien que podía llegar a la vieja, o cuando tema que la copiaron. Desde entonces los registros se sellan con la nueva. Lo sellado antes se puede seguir comprobando; un registro con fecha posterior a hoy y sellado con la vieja se señala como incorrecto. Nada devuelve la clave vieja al uso.",
  "company-keys-sure": "Sí, retirar la clave vieja y hacer una nueva",
  "company-keys-keep": "Conservar la vieja",
  "company-keys-made": "Hecha. Desde ahora los registros se sellan con la clave {key}.",
  "company-keys-owner": "Solo el dueño de la empresa puede hacer una clave nueva.",
  "company-mail": "Dirección de correo de la oficina, desde la que escribe",
};
