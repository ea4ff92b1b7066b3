/** The sentences of `blend/` in Spanish, by their English text. */
export const SPANISH_BLEND: Readonly<Record<string, string>> = {
  "The soil has {0} % {1}, the sand {2} %; the blend is to have {3} %.":
    "El suelo tiene {0} % de {1} y la arena {2} %; la combinación debe tener {3} %.",
  "The soil is on the target as it is.": "El suelo ya está en el objetivo tal como es.",
  "The soil already has less {0} than the target: sand would take it further away.":
    "El suelo ya tiene menos {0} que el objetivo: la arena lo alejaría más.",
  "This sand has as much {0} as the target or more: it cannot bring the soil down to it.":
    "Esta arena tiene tanto {0} como el objetivo o más: no puede bajar el suelo hasta él.",
  "{0} parts of sand to one part of soil, by dry mass.":
    "{0} partes de arena por una de suelo, en masa seca.",
  "One part of soil is {0} − {1} = {2} points above the target.":
    "Una parte de suelo está {0} − {1} = {2} puntos por encima del objetivo.",
  "One part of sand is {0} − {1} = {2} points below it.":
    "Una parte de arena está {0} − {1} = {2} puntos por debajo.",
  "So one part of soil needs {0} ÷ {1} = {2} parts of sand.":
    "Así que una parte de suelo necesita {0} ÷ {1} = {2} partes de arena.",
  "That is {0} % soil and {1} % sand of the dry mass, cement not counted.":
    "Es decir, {0} % de suelo y {1} % de arena de la masa seca, sin contar el cemento.",
  "Check: ({0} + {1} × {2}) ÷ (1 + {3}) = {4} %.":
    "Comprobación: ({0} + {1} × {2}) ÷ (1 + {3}) = {4} %.",
  "There is nothing to blend.": "No hay nada que combinar.",
  "at least one material": "un material como mínimo",
  "Name the soil and what may be added to it.": "Nómbrese el suelo y lo que puede añadírsele.",
  "The {0} allowed shares add up to {1} %, so no shares sum to 100 %.":
    "Las proporciones {0} permitidas suman {1} %, así que ninguna combinación suma 100 %.",
  "smallest shares of at most 100 % in all, largest of at least 100 %":
    "proporciones mínimas que sumen 100 % como máximo y máximas que sumen 100 % como mínimo",
  "Lower them by {0} points in all.": "Bájense {0} puntos en total.",
  "Raise them by {0} points in all, or add a material.":
    "Súbanse {0} puntos en total o añádase un material.",
  "Two materials are both called {0}.": "Dos materiales se llaman {0}.",
  "{0} has the same curve as {1}: how much of each cannot be told from the grading.":
    "{0} tiene la misma curva que {1}: la granulometría no puede decir cuánto hay de cada uno.",
  "each material once": "cada material una vez",
  "Give each its own id.": "Dese a cada uno su propio id.",
  "Leave one out, or limit its share by what there is.":
    "Omítase uno o limítese su proporción a lo que haya.",
  "{0} has no grading curve.": "{0} no tiene curva granulométrica.",
  "at least one size with its passing": "un tamaño como mínimo, con lo que pasa",
  "Add its sieve sheet.": "Añádase su hoja de tamizado.",
  "{0} has a point of {1} % at {2} mm.": "{0} tiene un punto de {1} % en {2} mm.",
  "sizes that grow, passing 0 to 100 that does not fall":
    "tamaños crecientes, con un porcentaje que pasa de 0 a 100 que no baje",
  "Correct the sheet.": "Corríjase la hoja.",
  "{0} may have a share of {1} to {2} %.": "{0} puede tener una proporción de {1} a {2} %.",
  "0 to 100, smallest first": "de 0 a 100, primero el menor",
  "Correct the shares.": "Corríjanse las proporciones.",
  "{0} was measured down to {1} mm, {2} times coarser than the {3} mm asked for; {4} % of it is finer than was measured.":
    "{0} se midió hasta {1} mm, {2} veces más grueso que los {3} mm pedidos; el {4} % es más fino que lo medido.",
  "at most {0} times, or at most {1} % finer than measured":
    "{0} veces como máximo, o el {1} % como máximo más fino que lo medido",
  "Add a hydrometer test, or leave the finest sizes out of the target and limits.":
    "Añádase un ensayo con hidrómetro o déjense fuera del objetivo y de los límites los tamaños más finos.",
  "The coarsest sieve of {0}, {1} mm, passes {2} %, and the blend is judged up to {3} mm, {4} times coarser.":
    "El tamiz más grueso de {0}, {1} mm, deja pasar el {2} %, y la combinación se juzga hasta {3} mm, {4} veces más grueso.",
  "a coarsest sieve that everything passes": "un tamiz superior por el que pase todo",
  "Add the next coarser sieve, with 0 g retained.":
    "Añádase el tamiz superior siguiente, con 0 g retenidos.",
  "a price": "un precio",
  "a carbon factor": "un factor de carbono",
  "a plasticity index (0 if it is not plastic)": "un índice de plasticidad (0 si no es plástico)",
  "a linear shrinkage (0 if it does not shrink)": "una retracción lineal (0 si no retrae)",
  "The limit of {0} is no range of numbers.": "El límite de {0} no es un intervalo de números.",
  "numbers from 0, smallest first": "números desde 0, primero el menor",
  "Correct the limit.": "Corríjase el límite.",
  "{0} lacks what a limit or aim asks for: {1}.":
    "A {0} le falta lo que pide un límite o un objetivo: {1}.",
  "Add it to the material, or leave the limit out.": "Añádase al material o retírese el límite.",
  "The target has no size, a value that is no number, or a range the wrong way round.":
    "El objetivo no tiene tamaños, o tiene un valor que no es un número o un intervalo al revés.",
  "sizes and top size above 0, exponent above 0 to 1, the lower value first":
    "tamaños y tamaño máximo mayores que 0, exponente mayor que 0 y hasta 1, primero el valor menor",
  "Correct the target.": "Corríjase el objetivo.",
  "the shares' own bounds": "los propios límites de las proporciones",
  "No blend of at most {0} materials keeps all limits, though one of more materials does: allow another material.":
    "Ninguna combinación de {0} materiales como máximo cumple todos los límites, aunque sí una de más materiales: admítase otro material.",
  "the number of materials": "el número de materiales",
  "Each of these limits can be met, but not all together: {0}. The blend that breaks them least misses {1}. Relax one of them, or add a material that by itself keeps all of them.":
    "Cada uno de estos límites puede cumplirse, pero no todos a la vez: {0}. La combinación que menos los incumple falla en {1}. Relájese uno de ellos o añádase un material que por sí solo los cumpla todos.",
  "{0} by {1}": "{0} en {1}",
  points: "puntos",
  " and ": " y ",
  "A further material must bring {0} than {1}, and take up more than {2} % of the blend.":
    "Otro material debe aportar {0} que {1} y ocupar más del {2} % de la combinación.",
  more: "más",
  less: "menos",
  "A further material that takes up {0} % of the blend must bring at {1} {2}.":
    "Otro material que ocupe el {0} % de la combinación debe aportar {1} {2}.",
  "No allowed blend of these materials has a {0} of {1} {2}: the nearest is {3}, {4} away. {5}":
    "Ninguna combinación permitida de estos materiales tiene {0} de {1} {2}: la más cercana es {3}, a {4}. {5}",
  "at least": "al menos",
  "at most": "como máximo",
  "The smallest allowed shares add up to {0} %: lower them by {1} points in all.":
    "Las proporciones mínimas permitidas suman {0} %: bájense {1} puntos en total.",
  "The largest allowed shares add up to {0} %: raise them by {1} points in all, or add a material.":
    "Las proporciones máximas permitidas suman {0} %: súbanse {1} puntos en total o añádase un material.",
  "{0} at {1} {2}": "{0} en {1} {2}",
  "passing {0} mm": "lo que pasa por {0} mm",
  "passing {0} mm (top size)": "lo que pasa por {0} mm (tamaño máximo)",
  "share of site soil": "proporción de suelo de la obra",
  "per t": "por t",
  "kg per t": "kg por t",
  "plasticity index": "índice de plasticidad",
  "linear shrinkage": "retracción lineal",
  "Parts by {0}, cement not included.": "Partes por {0}, sin contar el cemento.",
  "No ratio of whole parts up to {0} in all keeps the limits. Allow more parts, or weigh.":
    "Ninguna relación de partes enteras hasta {0} en total cumple los límites. Admítanse más partes o pésese.",
  "share of {0}": "proporción de {0}",
  "no move between two materials keeps the band more often":
    "ningún traspaso entre dos materiales mantiene la banda más a menudo",
};
