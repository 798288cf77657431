import type { MessageText } from "./messages-en.ts";

/** What the company writes to others, in Spanish. */
export const messagesEs: Readonly<Record<MessageText, string>> = {
  "greeting-named": "Hola {name}:",
  greeting: "Hola:",
  "released-subject": "{job}: el registro de lo construido y enterrado",
  "released-1":
    "El registro de {job} está listo: qué se construyó, qué quedó enterrado y dónde, cómo manejarlo y cómo comprobar que no se cambió nada.",
  "released-2": "Se abre aquí sin registrarse, hasta que cerremos el enlace:",
  "released-3": "Guarde por favor el PDF al que lleva, y entréguelo a quien sea dueño del lugar después de usted.",
  "others-subject": "{job}: su papel para {what}",
  "others-1": "En {job} necesitamos su papel para {what}, con su nombre y lo que hizo.",
  "others-2": "Este enlace es solo para usted. No hay que registrarse, y termina cuando lo haya usado:",
  "warranty-subject": "{job}: días de servicio y de garantía",
  "warranty-1": "Estos son los días de {job} que faltan por venir, al {day}:",
  "warranty-none": "De {job} no falta ningún día por venir, al {day}.",
  "warranty-2": "También están en el archivo de calendario que va con este mensaje. Lo que vale es el texto de nuestras condiciones.",
  "notice-subject": "Garantías: lo que viene hasta el {day}",
  "notice-1": "Según lo apuntado hasta hoy, estos días llegan en los próximos {days} días:",
  "notice-2": "Lo que ya pasó está en el registro de garantías.",
};
