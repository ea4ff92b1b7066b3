/** The sentences of `study/` in Spanish, by their English text. */
export const SPANISH_STUDY: Readonly<Record<string, string>> = {
  "a flooded height at most the damp one": "una altura inundada que no supere la húmeda",
  "a number or a range with its unit, for example “{0}”":
    "un número o un intervalo con su unidad, por ejemplo “{0}”",
  "This is not a range.": "Esto no es un intervalo.",
  "This number has no unit.": "Este número no tiene unidad.",
  "This range runs from its larger end to its smaller.":
    "Este intervalo va de su extremo mayor al menor.",
  "Haul, factor entered by the user": "Transporte, factor escrito por el usuario",
  "Concrete mix entered by the user": "Hormigón escrito por el usuario",
  "No material of the study has this id.": "Ningún material del estudio tiene este id.",
  "Correct the id, or add the material.": "Corríjase el id, o añádase el material.",
  "The shares do not sum to 100 %.": "Las proporciones no suman 100 %.",
  "shares that sum to 100 %": "proporciones que sumen 100 %",
  "The guidance that the study names limits no passing, so there is no band.":
    "La recomendación que nombra el estudio no limita lo que pasa, así que no hay banda.",
  "a guidance entry with limits of passing, or an envelope sheet":
    "una entrada de recomendaciones con límites de lo que pasa, o una hoja de huso",
  "Name another entry, bring an envelope, or give an exponent and a top size.":
    "Nómbrese otra entrada, tráigase un huso, o dese un exponente y un tamaño máximo.",
  "limits that some blend of these materials can keep":
    "límites que alguna combinación de estos materiales pueda cumplir",
  "Loosen a limit, or add a material with what is missing.":
    "Aflójese un límite, o añádase un material con lo que falta.",
  "Much of the blend's fines comes from materials without a hydrometer test.":
    "Muchos de los finos de la combinación vienen de materiales sin ensayo de hidrómetro.",
  "at most {0} % of the blend": "{0} % de la combinación como máximo",
  "Test the fines of the material that brings most of them.":
    "Ensáyense los finos del material que más aporta.",
  "The coarsest sieve, {0}, passes only {1} %: what is coarser was not measured.":
    "El tamiz más grueso, {0}, deja pasar solo el {1} %: lo más grueso no se midió.",
  "Add the next coarser sieve to the sheet, with 0 g retained.":
    "Añádase a la hoja el tamiz superior siguiente, con 0 g retenidos.",
  "There is no guidance entry of this name.":
    "No hay ninguna entrada de recomendaciones con este nombre.",
  "Correct the name in study.yaml.": "Corríjase el nombre en study.yaml.",
  Blend: "Combinación",
  "The sieve analysis does not reach the sieve that separated the dispersed material.":
    "El tamizado no alcanza el tamiz que separó el material dispersado.",
  "a sieve analysis of {0} that spans {1} mm": "un tamizado de {0} que abarque {1} mm",
  "Give the sieve through which the dispersed material was passed, or sieve to that size.":
    "Dese el tamiz por el que pasó el material dispersado, o tamícese hasta ese tamaño.",
  "No mix can be stated.": "No puede darse ninguna mezcla.",
  "an optimum water content from a compaction test, and a least cement content":
    "una humedad óptima de un ensayo de compactación y un contenido mínimo de cemento",
  "See the finding on the least cement content.":
    "Véase la observación sobre el contenido mínimo de cemento.",
  "Add a compaction sheet whose points show a top.":
    "Añádase una hoja de compactación cuyos puntos muestren un máximo.",
  "blocks that a curve can be fitted to": "probetas a las que pueda ajustarse una curva",
  "Make the missing blocks, or choose another form in study.yaml.":
    "Háganse las probetas que faltan, o elíjase otra forma en study.yaml.",
  "a requirement that is met between the lowest and the highest tested content":
    "un requisito que se cumpla entre el contenido ensayado más bajo y el más alto",
  "Make and crush the blocks that the message names, then compute again.":
    "Háganse y rómpanse las probetas que nombra el mensaje y calcúlese otra vez.",
  "batches of one content that differ no more than their blocks":
    "amasadas de un contenido que no difieran más que sus probetas",
  "Look for what changed between the batches; set strength.batches: block, or mix more batches.":
    "Búsquese qué cambió entre las amasadas; póngase strength.batches: block, o háganse más amasadas.",
  "This kind of element is not known.": "Esta clase de elemento no se conoce.",
  "This limit limits nothing.": "Este límite no limita nada.",
  "min, max or both": "min, max o ambos",
  "The smallest value is above the largest.": "El valor menor está por encima del mayor.",
  "min at most max": "min no mayor que max",
  "The smallest share is above the largest.": "La proporción menor está por encima de la mayor.",
  "An id is lower-case letters, digits and hyphens.":
    "Un id tiene letras minúsculas, cifras y guiones.",
  "mean dry density of {0} blocks of {1} days": "densidad seca media de {0} probetas de {1} días",
  "maximum dry density of the compaction test": "densidad seca máxima del ensayo de compactación",
  "This is not valid YAML: {0}.": "Esto no es YAML válido: {0}.",
  "lines of “key: value”, indented by spaces": "líneas de “clave: valor”, sangradas con espacios",
  "Put texts that hold : # { [ or quotes between single quotes.":
    "Pónganse entre comillas simples los textos que contengan : # { [ o comillas.",
  "The key “{0}” is not known here.": "La clave “{0}” no se conoce aquí.",
  "a key of the study format (see the README)":
    "una clave del formato de estudio (véase el README)",
  "Correct its spelling, or take it out.": "Corríjase la escritura, o quítese.",
  "This key is missing.": "Falta esta clave.",
  "Add the key to study.yaml.": "Añádase la clave a study.yaml.",
  "Correct the value in study.yaml.": "Corríjase el valor en study.yaml.",
  "a value of type {0}": "un valor de tipo {0}",
  "the form of {0}": "la forma de {0}",
  "a number with its unit": "un número con su unidad",
  "a value of the study format (see the README)":
    "un valor del formato de estudio (véase el README)",
  "Two materials have this id.": "Dos materiales tienen este id.",
  "each id once": "cada id una vez",
  "Rename one of them.": "Cámbiese el nombre de uno.",
  "a number or a range, “per”, and one of {0}; for example “{1}”":
    "un número o un intervalo, “per”, y uno de {0}; por ejemplo “{1}”",
  "This is not a price.": "Esto no es un precio.",
  "This price has no unit.": "Este precio no tiene unidad.",
  "This field is empty.": "Este campo está vacío.",
  "This is not a number with a unit.": "Esto no es un número con unidad.",
  "for example “{0}” (units: {1})": "por ejemplo “{0}” (unidades: {1})",
  "This value is outside the allowed range.": "Este valor queda fuera del intervalo admitido.",
  "{0} in {1}, for example “{2}”": "{0} en {1}, por ejemplo “{2}”",
  "The study file cannot be read ({0}).": "El archivo del estudio no puede leerse ({0}).",
  "unknown reason": "motivo desconocido",
  "a folder that holds {0}": "una carpeta que contenga {0}",
  "Give the study's folder, or create one with “loambook new <folder>”.":
    "Dese la carpeta del estudio, o créese una con “loambook new <carpeta>”.",
  "This file lies outside the study folder.": "Este archivo está fuera de la carpeta del estudio.",
  "a path below the study folder, such as sheets/sand.csv":
    "una ruta dentro de la carpeta del estudio, como sheets/sand.csv",
  "Copy the sheet into the study folder and name it there.":
    "Cópiese la hoja en la carpeta del estudio y nómbrese allí.",
  "This file is not there.": "Este archivo no está.",
  "a file in the study folder": "un archivo en la carpeta del estudio",
  "Add the sheet, or correct its name; capital letters count.":
    "Añádase la hoja, o corríjase su nombre; las mayúsculas cuentan.",
  "This is not a file.": "Esto no es un archivo.",
  "a CSV or XLSX file": "un archivo CSV o XLSX",
  "Name the sheet itself.": "Nómbrese la propia hoja.",
  "This kind of file is not read.": "Esta clase de archivo no se lee.",
  "a file ending in .csv or .xlsx": "un archivo terminado en .csv o .xlsx",
  "Save the sheet as CSV or as an Excel workbook (.xlsx).":
    "Guárdese la hoja como CSV o como libro de Excel (.xlsx).",
  "This text is empty.": "Este texto está vacío.",
  "A batch cannot be sized both by the mixer and by the lift.":
    "Una amasada no puede dimensionarse a la vez por la amasadora y por la tongada.",
  "mixer or batch-fills, not both": "mixer o batch-fills, no ambos",
  "This is not a grain size.": "Esto no es un tamaño de grano.",
  "1 mm to 100 mm, for example “20 mm” or “3/4 in”":
    "de 1 mm a 100 mm, por ejemplo “20 mm” o “3/4 in”",
  "The study has errors.\n\n{0}": "El estudio tiene errores.\n\n{0}",
  "A date is written year-month-day, for example 2026-05-18.":
    "Una fecha se escribe año-mes-día, por ejemplo 2026-05-18.",
  "en or es, or one of them with a country such as es-MX.":
    "en o es, o uno de ellos con un país, como es-MX.",
  "This is neither a value nor a range.": "Esto no es ni un valor ni un intervalo.",
  "0.05 to 1, for example “0.25” or “0.2 to 0.35”":
    "de 0.05 a 1, por ejemplo “0.25” o “0.2 to 0.35”",
  "1 mm to 100 mm, for example “20 mm”, “3/4 in” or “16 mm to 20 mm”":
    "de 1 mm a 100 mm, por ejemplo “20 mm”, “3/4 in” o “16 mm to 20 mm”",
};
