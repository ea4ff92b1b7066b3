/** The sentences of `study/` in Spanish, by their English text. */
export const SPANISH_STUDY: Readonly<Record<string, string>> = {
  "Purpose and scope": "Objeto y alcance",
  "Materials and sampling": "Materiales y toma de muestras",
  Methods: "Métodos",
  "Grading of the materials": "Granulometría de los materiales",
  "A model of the soil's grading": "Un modelo de la granulometría del suelo",
  "How sure the curve is, and the soil's classes": "Seguridad de la curva y clases del suelo",
  "Consistency and shrinkage": "Consistencia y retracción",
  Compaction: "Compactación",
  "Against published guidance": "Frente a recomendaciones publicadas",
  Blend: "Combinación",
  "Strength and cement": "Resistencia y cemento",
  "Specified mix": "Mezcla especificada",
  Tolerances: "Tolerancias",
  "Quality control": "Control de calidad",
  "Cement beside an all-concrete element": "Cemento frente a un elemento todo de hormigón",
  "Limits of validity": "Límites de validez",
  Decisions: "Decisiones",
  "Clause checklist": "Lista de cláusulas",
  Review: "Revisión",
  "Annex: analyses of the sheets": "Anexo: análisis de las hojas",
  "Annex: readings as given": "Anexo: lecturas tal como se dieron",
  "Annex: inputs and versions": "Anexo: archivos de entrada y versiones",
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
  "Clay of the blend": "Arcilla de la combinación",
  "Silt of the blend": "Limo de la combinación",
  "Fines of the blend": "Finos de la combinación",
  "Optimum moisture": "Humedad óptima",
  "Maximum dry density": "Densidad seca máxima",
  "Dry density, rammed": "Densidad seca, apisonada",
  "Least cement, not rounded": "Cemento mínimo, sin redondear",
  "Cement, as specified": "Cemento, según lo especificado",
  "Strength bound at that": "Cota de resistencia con eso",
  "Fitted strength at that": "Resistencia ajustada con eso",
  "Scatter about the curve": "Dispersión en torno a la curva",
  "Rammed volume to make": "Volumen apisonado por preparar",
  "Cement for the element": "Cemento para el elemento",
  "Bags of cement, at most": "Sacos de cemento, como máximo",
  "Cost, low": "Coste, mínimo",
  "Cost, high": "Coste, máximo",
  "Carbon (CO₂e), low": "Carbono (CO₂e), mínimo",
  "Carbon (CO₂e), high": "Carbono (CO₂e), máximo",
  "Warnings of the checks": "Advertencias de las comprobaciones",
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
  "a share of at least {0} % of the dry mass: less cannot be weighed on site":
    "una proporción de al menos el {0} % de la masa seca: menos no puede pesarse en obra",
  "{0} is not used: the best blend has none of it, or less than can be weighed.":
    "{0} no se usa: la mejor combinación no lleva nada de ese material, o menos de lo que puede pesarse.",
  "Leave it out of the study, or give it a smallest share if it is to be used.":
    "Déjese fuera del estudio, o désele una proporción mínima si ha de usarse.",
  "The study asks for hardly any {0}.": "El estudio apenas pide {0}.",
  "The limits or the band cannot do without {0}, though hardly any of it is needed.":
    "Los límites o el huso no pueden prescindir de {0}, aunque apenas hace falta.",
  "Loosen what asks for it, or give it a larger smallest share.":
    "Aflójese lo que lo pide, o désele una proporción mínima mayor.",
  "your own, and no mark of invented data, as the study says “invented: false”":
    "lo propio, y ninguna marca de datos inventados, pues el estudio dice “invented: false”",
  "This sheet is marked as invented.": "Esta hoja está marcada como inventada.",
  "Put your own readings in its place, without this remark, or set “invented: true”.":
    "Pónganse en su lugar las lecturas propias, sin esta nota, o escríbase “invented: true”.",
  "What follows is marked as invented.": "Lo que sigue está marcado como inventado.",
  "This entry is marked as invented.": "Esta entrada está marcada como inventada.",
  "Write your own and take away the remark “{0}”, or set “invented: true”.":
    "Escríbase lo propio y quítese la nota “{0}”, o escríbase “invented: true”.",
  "This is the text that a new study begins with.":
    "Este es el texto con el que empieza un estudio nuevo.",
  "Write what holds for your wall, or set “invented: true”.":
    "Escríbase lo que vale para el muro propio, o póngase “invented: true”.",
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
  "No block of a lot is crushed at the age of the requirement.":
    "Ninguna probeta de un lote se rompe a la edad del requisito.",
  "{0} d among the ages": "{0} d entre las edades",
  "Add the age to quality.ages; lots are judged at it.":
    "Añádase la edad a quality.ages; los lotes se juzgan con ella.",
  "shares and risks that a rule can keep": "proporciones y riesgos que una regla pueda cumplir",
  "Take shares farther apart, or larger risks.":
    "Tómense proporciones más separadas, o riesgos mayores.",
  "The acceptance rule asks for less than the requirement of the study.":
    "La regla de aceptación pide menos que el requisito del estudio.",
  "at least {0} MPa": "{0} MPa como mínimo",
  "Raise the strength of the rule, or say in quality.basis why it may be lower.":
    "Súbase la resistencia de la regla, o dígase en quality.basis por qué puede ser menor.",
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
  "This key does not belong to this kind of element.":
    "Esta clave no corresponde a esta clase de elemento.",
  "for this kind: {0}": "para esta clase: {0}",
  "Block {0} names no batch, so it belongs to no lot.":
    "La probeta {0} no nombra amasada, así que no pertenece a ningún lote.",
  "the lot in the column batch": "el lote en la columna batch",
  "Add it from the making log.": "Añádase según el registro de ejecución.",
  "Block {0} holds {1} % cement; the specified mix holds {2} %.":
    "La probeta {0} contiene {1} % de cemento; la mezcla especificada contiene {2} %.",
  "blocks of the specified mix": "probetas de la mezcla especificada",
  "Correct the sheet, or find out why the mix was another.":
    "Corríjase la hoja, o averígüese por qué la mezcla fue otra.",
  "The sheet of site blocks holds no lot at {0} days.":
    "La hoja de probetas de obra no tiene ningún lote a {0} días.",
  "blocks crushed at the age of the requirement": "probetas rotas a la edad del requisito",
  "Add them when they are crushed.": "Añádanse cuando se rompan.",
  "Lot {0}: {1}": "Lote {0}: {1}",
  "Tell the responsible person, who decides; the order of steps stands with the lot.":
    "Avísese a la persona responsable, que decide; el orden de los pasos figura con el lote.",
  "lots inside the limits of the chart, on both sides of its centre":
    "lotes dentro de los límites del gráfico, a ambos lados de su centro",
  "Look at batching, moisture, ramming and testing of these lots. A signal does not reject a lot.":
    "Mírense el amasado, la humedad, el apisonado y el ensayo de estos lotes. Una señal no rechaza un lote.",
  "This limit limits nothing.": "Este límite no limita nada.",
  "min, max or both": "min, max o ambos",
  "The smallest value is above the largest.": "El valor menor está por encima del mayor.",
  "min at most max": "min no mayor que max",
  "The smallest share is above the largest.": "La proporción menor está por encima de la mayor.",
  "An id is lower-case letters, digits and hyphens.":
    "Un id tiene letras minúsculas, cifras y guiones.",
  "This material has a hydrometer and a pipette sheet.":
    "Este material tiene hoja de hidrómetro y hoja de pipeta.",
  "one of the two, so that the fine end of the curve has one source":
    "una de las dos, para que el extremo fino de la curva tenga una sola fuente",
  "mean dry density of {0} blocks of {1} days": "densidad seca media de {0} probetas de {1} días",
  "maximum dry density of the compaction test": "densidad seca máxima del ensayo de compactación",
  "This is not valid YAML: {0}.": "Esto no es YAML válido: {0}.",
  "lines of “key: value”, indented by spaces": "líneas de “clave: valor”, sangradas con espacios",
  "Put texts that hold : # { [ or quotes between single quotes.":
    "Pónganse entre comillas simples los textos que contengan : # { [ o comillas.",
  "The key “{0}” is not known here.": "La clave “{0}” no se conoce aquí.",
  "This key is missing.": "Falta esta clave.",
  "Add the key to study.yaml.": "Añádase la clave a study.yaml.",
  "Correct its spelling, or take it out.": "Corríjase la escritura, o quítese.",
  "Write “{0}” if that was meant; otherwise take it out.":
    "Escríbase “{0}” si se quería decir eso; si no, quítese.",
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
  "The weakest block is asked for more than the mean.":
    "A la probeta más débil se le pide más que a la media.",
  "least at most mean": "least no mayor que mean",
  "A good lot has no fewer blocks below the strength than a poor one.":
    "Un lote bueno no tiene menos probetas por debajo de la resistencia que uno malo.",
  "good-below less than poor-below": "good-below menor que poor-below",
  "This field is empty.": "Este campo está vacío.",
  "This is not a number with a unit.": "Esto no es un número con unidad.",
  "for example “{0}” (units: {1})": "por ejemplo “{0}” (unidades: {1})",
  "This value is outside the allowed range.": "Este valor queda fuera del intervalo admitido.",
  "{0} in {1}, for example “{2}”": "{0} en {1}, por ejemplo “{2}”",
  "The study file cannot be read ({0}).": "El archivo del estudio no puede leerse ({0}).",
  "a folder that holds {0}": "una carpeta que contenga {0}",
  "Give the study's folder, or create one with “loambook new <folder>”.":
    "Dese la carpeta del estudio, o créese una con “loambook new <carpeta>”.",
  "This file lies outside the study folder.": "Este archivo está fuera de la carpeta del estudio.",
  "a path below the study folder, such as sheets/sand.csv":
    "una ruta dentro de la carpeta del estudio, como sheets/sand.csv",
  "Copy the sheet into the study folder and name it there.":
    "Cópiese la hoja en la carpeta del estudio y nómbrese allí.",
  "This file is not there.": "Este archivo no está.",
  "a CSV or XLSX file": "un archivo CSV o XLSX",
  "Name the sheet itself.": "Nómbrese la propia hoja.",
  "This kind of file is not read.": "Esta clase de archivo no se lee.",
  "a file ending in .csv or .xlsx": "un archivo terminado en .csv o .xlsx",
  "Save the sheet as CSV or as an Excel workbook (.xlsx).":
    "Guárdese la hoja como CSV o como libro de Excel (.xlsx).",
  "Write {0} if that sheet is meant; otherwise add the sheet. Capital letters count.":
    "Escríbase {0} si se quería esa hoja; si no, añádase la hoja. Las mayúsculas cuentan.",
  "Add the sheet; there is none in the study folder yet.":
    "Añádase la hoja; aún no hay ninguna en la carpeta del estudio.",
  "Add the sheet, or name one that is there: {0}.":
    "Añádase la hoja, o nómbrese una de las que están: {0}.",
  "A colour stands in quotes, for example '#1f5f8b': without them the # begins a comment.":
    "Un color va entre comillas, por ejemplo '#1f5f8b': sin ellas el # empieza un comentario.",
  "No section of the appendix has this key; “{0}” may be meant.":
    "Ningún apartado del anejo tiene esta clave; quizá se quería decir “{0}”.",
  "No section of the appendix has this key.": "Ningún apartado del anejo tiene esta clave.",
  "Correct the key, or give a section of your own notebook the tag section-{0}.":
    "Corríjase la clave, o dese a un apartado del propio cuaderno la etiqueta section-{0}.",
  "No material has this id.": "Ningún material tiene este id.",
  "Correct the id in study.yaml.": "Corríjase el id en study.yaml.",
  "A date is written year-month-day, for example 2026-05-18.":
    "Una fecha se escribe año-mes-día, por ejemplo 2026-05-18.",
  "This text is empty.": "Este texto está vacío.",
  "A batch cannot be sized both by the mixer and by the lift.":
    "Una amasada no puede dimensionarse a la vez por la amasadora y por la tongada.",
  "mixer or batch-fills, not both": "mixer o batch-fills, no ambos",
  "This is not a grain size.": "Esto no es un tamaño de grano.",
  "1 mm to 100 mm, for example “20 mm” or “3/4 in”":
    "de 1 mm a 100 mm, por ejemplo “20 mm” o “3/4 in”",
  "The study has errors.\n\n{0}": "El estudio tiene errores.\n\n{0}",
  "en or es, or one of them with a country such as es-MX.":
    "en o es, o uno de ellos con un país, como es-MX.",
  "This is neither a value nor a range.": "Esto no es ni un valor ni un intervalo.",
  "0.05 to 1, for example “0.25” or “0.2 to 0.35”":
    "de 0.05 a 1, por ejemplo “0.25” o “0.2 to 0.35”",
  "1 mm to 100 mm, for example “20 mm”, “3/4 in” or “16 mm to 20 mm”":
    "de 1 mm a 100 mm, por ejemplo “20 mm”, “3/4 in” o “16 mm to 20 mm”",
  "With its tolerance the cement may fall to {0}, below the {1} at which the blocks meet the requirement.":
    "Con su tolerancia el cemento puede bajar a {0}, por debajo del {1} con el que las probetas cumplen el requisito.",
  "a cement content that meets the requirement at the low end of its tolerance":
    "un contenido de cemento que cumpla el requisito en el extremo bajo de su tolerancia",
  "Narrow the tolerance, or specify more cement: strength.round-up-to rounds to larger steps.":
    "Estréchese la tolerancia, o especifíquese más cemento: strength.round-up-to redondea a escalones mayores.",
  "The moisture may go from {0} to {1}; the compaction test keeps {2} % of its greatest dry density from {3} to {4} only.":
    "La humedad puede ir de {0} a {1}; el ensayo de compactación conserva el {2} % de su densidad seca máxima solo de {3} a {4}.",
  "a tolerance inside the window of the compaction test":
    "una tolerancia dentro de la ventana del ensayo de compactación",
  "Narrow the tolerance, or test compaction at more moistures where the window ends with the test.":
    "Estréchese la tolerancia, o ensáyese la compactación con más humedades donde la ventana acaba con el ensayo.",
  "A wall of {0} would be accepted; the lightest block that the strengths rest on has {1}.":
    "Se aceptaría un muro de {0}; la probeta más ligera en que se apoyan las resistencias tiene {1}.",
  "a least density that was tested for strength": "una densidad mínima cuya resistencia se ensayó",
  "Raise the least density, or crush blocks that are rammed less.":
    "Súbase la densidad mínima, o rómpanse probetas menos apisonadas.",
  "The least density asked for, {0}, is more than that of any block, {1} at most.":
    "La densidad mínima pedida, {0}, es más que la de cualquier probeta, {1} como máximo.",
  "a least density that the blocks reached": "una densidad mínima que las probetas alcanzaron",
  "Lower it, or see why the blocks are lighter than the compaction test.":
    "Bájese, o averígüese por qué las probetas son más ligeras que el ensayo de compactación.",
  "A percentage of the maximum dry density is asked for, and no compaction test gives one.":
    "Se pide un porcentaje de la densidad seca máxima, y ningún ensayo de compactación la da.",
  "a compaction sheet whose points show a top":
    "una hoja de compactación cuyos puntos muestren un máximo",
  "Add the compaction sheet, or leave the key out.":
    "Añádase la hoja de compactación, o quítese la clave.",
  "The tolerance of a lift is as large as the lift itself.":
    "La tolerancia de una tongada es tan grande como la propia tongada.",
  "less than {0}": "menos de {0}",
  "No least density is stated, and no block was weighed that would give one.":
    "No se indica densidad mínima, y no se pesó ninguna probeta que la diera.",
  "tolerances.density, percent of the maximum dry density":
    "tolerances.density, porcentaje de la densidad seca máxima",
  "Let the responsible person state it.": "Que la indique la persona responsable.",
};
