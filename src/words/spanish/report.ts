/** The sentences of `report/` in Spanish, by their English text. */
export const SPANISH_REPORT: Readonly<Record<string, string>> = {
  file: "archivo",
  caption: "título de tabla",
  "notes or text alternative": "notas o texto alternativo",
  entry: "entrada",
  value: "valor",
  "Findings of the checks": "Observaciones de las comprobaciones",
  severity: "gravedad",
  code: "código",
  row: "fila",
  column: "columna",
  finding: "observación",
  expected: "se espera",
  "way out": "qué hacer",
  clause: "cláusula",
  requirement: "requisito",
  section: "apartado",
  remark: "nota",
  Cautions: "Precauciones",
  caution: "precaución",
  text: "texto",
  source: "fuente",
  References: "Referencias",
  mark: "marca",
  number: "número",
  table: "tabla",
  sheet: "hoja",
  Contents: "Índice",
  "Expected: {0}": "Se espera: {0}",
  "What to do: {0}": "Qué hacer: {0}",
  Formula: "Fórmula",
  "Code of cell {0}": "Código de la celda {0}",
  "Cell {0} wrote to its error stream:": "La celda {0} escribió en su salida de errores:",
  "Source: {0}": "Fuente: {0}",
  "Table {0}": "Tabla {0}",
  open: "abierto",
  "{0}: not in this report": "{0}: no está en este informe",
  "Figure {0}": "Figura {0}",
  "Show the still figure {0}": "Mostrar la figura {0} fija",
  "Make figure {0} interactive": "Hacer interactiva la figura {0}",
  "Annex: files read": "Anexo: archivos leídos",
  "Files read": "Archivos leídos",
  File: "Archivo",
  "SHA-256 digest": "Resumen SHA-256",
  "Annex: the computation": "Anexo: el cálculo",
  "Skip to the sheet": "Ir a la hoja",
  "Skip to the report": "Ir al informe",
  "Made with {0}.": "Hecho con {0}.",
  Table: "Tabla",
  "Table in the text": "Tabla en el texto",
  "The laboratory data in this report are invented for demonstration. Do not build from it.":
    "Los datos de laboratorio de este informe están inventados para demostración. No se debe construir con él.",
  "Invented demonstration data: do not build from this report.":
    "Datos de demostración inventados: no se debe construir con este informe.",
  "Clause {0} is said to be answered in a section that this report does not have.":
    "Se dice que la cláusula {0} se responde en un apartado que este informe no tiene.",
  "Correct answered-by in the study, or give the section's cell the tag section-{0}.":
    "Corríjase answered-by en el estudio, o dese a la celda del apartado la etiqueta section-{0}.",
  "cell {0}": "celda {0}",
  "The figure of cell {0} is not a well-formed SVG and was left out.":
    "La figura de la celda {0} no es un SVG bien formado y se omitió.",
  "an SVG document": "un documento SVG",
  "run the notebook again": "ejecútese el cuaderno otra vez",
  "The figure of cell {0} has no text alternative.":
    "La figura de la celda {0} no tiene texto alternativo.",
  "a text alternative in the output's metadata":
    "un texto alternativo en los metadatos de la salida",
  "show the figure with loambook's own “show”, or give it an alt text":
    "muéstrese la figura con el propio “show” de loambook, o désele un texto alternativo",
  Figure: "Figura",
  "Cell {0} wrote to its error stream.": "La celda {0} escribió en su salida de errores.",
  "no text on stderr": "ningún texto en stderr",
  "read the text and mend its cause": "léase el texto y corríjase su causa",
  "Cell {0} failed: {1}: {2}": "La celda {0} falló: {1}: {2}",
  "a cell that runs to its end": "una celda que llegue a su fin",
  "mend the cell and run again": "corríjase la celda y ejecútese otra vez",
  "Cell {0} shows a report block that cannot be read ({1}).":
    "La celda {0} muestra un bloque de informe que no puede leerse ({1}).",
  "a block made by loambook": "un bloque hecho por loambook",
  nothing: "nada",
  "Cell {0} shows something a report cannot hold ({1}).":
    "La celda {0} muestra algo que un informe no puede contener ({1}).",
  "a figure, a table, markdown or text": "una figura, una tabla, markdown o texto",
  "show it with loambook's own “show”": "muéstrese con el propio “show” de loambook",
  "page {0} of {1}": "página {0} de {1}",
  Report: "Informe",
  "Made with {0}": "Hecho con {0}",
  "A formula could not be set in the PDF and is shown as TeX.":
    "Una fórmula no pudo componerse en el PDF y se muestra como TeX.",
  "plain TeX maths": "fórmulas TeX sencillas",
  "write it with common TeX commands only": "escríbase solo con órdenes habituales de TeX",
  "The PDF's fonts have no glyph for {0}; each is shown by its code, like ‹U+4E2D›.":
    "Las fuentes del PDF no tienen signo para {0}; cada uno se muestra con su código, como ‹U+4E2D›.",
  "text in Latin, Greek or Cyrillic letters, or fonts for other scripts":
    "texto en letras latinas, griegas o cirílicas, o fuentes para otras escrituras",
  "Put a font that has these signs into a folder of the study and name the folder under “report: fonts”; the HTML file shows them as they are.":
    "Póngase una fuente que tenga estos signos en una carpeta del estudio y nómbrese la carpeta en “report: fonts”; el archivo HTML los muestra tal como son.",
  "Put a font with these letters (for example {0}) into a folder of the study and name the folder under “report: fonts”; the HTML file shows them as they are.":
    "Póngase una fuente con estas letras (por ejemplo {0}) en una carpeta del estudio y nómbrese la carpeta en “report: fonts”; el archivo HTML las muestra tal como son.",
  "The typesetter does not know this font by its family name “{0}”; it is not used.":
    "El compositor no conoce esta fuente por su nombre de familia “{0}”; no se usa.",
  "a font whose family name is plain": "una fuente con un nombre de familia sencillo",
  "Take another cut or file of the font.": "Tómese otro corte u otro archivo de la fuente.",
  "The study's own Typst file does not work, so the PDF was made without it: {0}":
    "El archivo Typst propio del estudio no funciona, así que el PDF se hizo sin él: {0}",
  "a file that Typst can compile, for the PDF standard asked for":
    "un archivo que Typst pueda compilar, para la norma de PDF pedida",
  "Mend the file and make the report again.": "Corríjase el archivo y hágase el informe otra vez.",
  Page: "Página",
  "The result of the study at full precision": "El resultado del estudio con toda su precisión",
  "File of the study: {0}": "Archivo del estudio: {0}",
  "Line {0} of this style sheet holds “{1}”, which reaches outside the page.":
    "La línea {0} de esta hoja de estilo contiene “{1}”, que sale de la página.",
  "a style sheet without @import, outside url(…), addresses or markup":
    "una hoja de estilo sin @import, url(…) exterior, direcciones ni marcado",
  "Take it out; a small picture can stand in it as a data: address.":
    "Quítese; una imagen pequeña puede figurar en ella como dirección data:.",
  "Line {0} of this file holds the word “{1}”, which in Typst can reach other files or packages.":
    "La línea {0} de este archivo contiene la palabra “{1}”, que en Typst puede alcanzar otros archivos o paquetes.",
  "a file that stands alone: the report's data come to it as doc":
    "un archivo que se basta solo: los datos del informe le llegan como doc",
  "Write it without this word, in comments and texts too.":
    "Escríbase sin esa palabra, también en comentarios y textos.",
  "This file defines none of the parts of a report, so it changes nothing.":
    "Este archivo no define ninguna de las partes de un informe, así que no cambia nada.",
  "Define a part with #let, or take the entry out.":
    "Defínase una parte con #let, o quítese la entrada.",
  Logo: "Logotipo",
  "This is not an opaque colour.": "Esto no es un color opaco.",
  "a colour as CSS writes it, such as '#1f5f8b' or teal":
    "un color como lo escribe CSS, por ejemplo '#1f5f8b' o teal",
  "Correct the value in study.yaml.": "Corríjase el valor en study.yaml.",
  "The accent colour has a contrast of {0} : 1 on the page: headings and rules are hard to see.":
    "El color de acento tiene un contraste de {0} : 1 sobre la página: los títulos y filetes se ven mal.",
  "The accent colour has a contrast of {0} : 1 on the page: enough for headings, too little for small type.":
    "El color de acento tiene un contraste de {0} : 1 sobre la página: bastante para títulos, demasiado poco para letra pequeña.",
  "at least {0} : 1, for small type 4.5 : 1": "al menos {0} : 1, para letra pequeña 4,5 : 1",
  "at least 4.5 : 1 for small type": "al menos 4,5 : 1 para letra pequeña",
  "Take a darker shade of it.": "Tómese un tono más oscuro.",
  "it names no family": "no nombra ninguna familia",
  "This font cannot be read ({0}).": "Esta fuente no puede leerse ({0}).",
  "a TTF or OTF font": "una fuente TTF u OTF",
  "Get the font again, or take it out of the folder.":
    "Consígase la fuente otra vez, o quítese de la carpeta.",
  "This folder holds no font.": "Esta carpeta no contiene fuentes.",
  "files ending in .ttf or .otf": "archivos terminados en .ttf u .otf",
  "Put the fonts into it; a web font (.woff2) has to be converted first.":
    "Pónganse las fuentes en ella; una fuente web (.woff2) ha de convertirse antes.",
  "This is not a PNG picture.": "Esto no es una imagen PNG.",
  "The picture has {0} by {1} dots.": "La imagen tiene {0} por {1} puntos.",
  "The picture is only {0} dots high and will look coarse in print.":
    "La imagen tiene solo {0} puntos de alto y se verá basta impresa.",
  "at least {0} dots, or an SVG drawing": "{0} puntos como mínimo, o un dibujo SVG",
  "Save it larger, or as SVG.": "Guárdese más grande, o como SVG.",
  "a well-formed SVG with a size, or a PNG of at most {0} dots a side and {1} MB":
    "un SVG bien formado con tamaño, o un PNG de {0} puntos por lado y {1} MB como máximo",
  "Save the logo again in one of these forms.":
    "Guárdese el logotipo otra vez en una de estas formas.",
  "The file has {0} kB.": "El archivo tiene {0} kB.",
  "This kind of picture is not read.": "Esta clase de imagen no se lee.",
  "This is not a well-formed SVG drawing.": "Esto no es un dibujo SVG bien formado.",
  "The drawing states no size.": "El dibujo no declara tamaño.",
  "Parts of the drawing that could run or fetch something, or that style it from a sheet, were taken out: {0}.":
    "Se quitaron partes del dibujo que podían ejecutar o traer algo, o que le dan estilo desde una hoja: {0}.",
  "an SVG of plain shapes with their colours as attributes":
    "un SVG de formas sencillas con sus colores como atributos",
  "Look at the logo in the report; where it changed, save it as plain SVG with presentation attributes.":
    "Mírese el logotipo en el informe; si cambió, guárdese como SVG sencillo con atributos de presentación.",
  "This lies outside the study folder.": "Esto está fuera de la carpeta del estudio.",
  "a path below the study folder, such as brand/logo.svg":
    "una ruta dentro de la carpeta del estudio, como brand/logo.svg",
  "Copy it into the study folder and name it there.":
    "Cópiese en la carpeta del estudio y nómbrese allí.",
  "unknown reason": "motivo desconocido",
  "This cannot be found or opened ({0}).": "Esto no puede encontrarse o abrirse ({0}).",
  "a file in the study folder": "un archivo en la carpeta del estudio",
  "a folder in the study folder": "una carpeta dentro de la carpeta del estudio",
  "Add it, or correct its name; capital letters count.":
    "Añádase, o corríjase su nombre; las mayúsculas cuentan.",
  "This is not a file.": "Esto no es un archivo.",
  "This is not a folder.": "Esto no es una carpeta.",
  "Correct the entry in study.yaml.": "Corríjase la entrada en study.yaml.",
  "This file is too large to stand in a report ({0} MB).":
    "Este archivo es demasiado grande para un informe ({0} MB).",
  "at most {0} MB": "{0} MB como máximo",
  "Make it smaller.": "Hágase más pequeño.",
};
