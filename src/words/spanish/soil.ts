/** The sentences of `soil/` in Spanish, by their English text. */
export const SPANISH_SOIL: Readonly<Record<string, string>> = {
  "The fines are non-plastic: M.": "Los finos no son plásticos: M.",
  "The fines cannot be named without liquid limit and plasticity index.":
    "Los finos no pueden nombrarse sin límite líquido e índice de plasticidad.",
  "PI {0} lies {1} the A-line ({2}): {3}; LL {4}: {5} plasticity, {6}.":
    "IP {0} queda {1} la línea A ({2}): {3}; LL {4}: plasticidad {5}, {6}.",
  "on or above": "sobre o por encima de",
  "This point was left out of the fit: it": "Este punto quedó fuera del ajuste: el punto",
  "This point": "Este punto",
  "The fitted top ({0})": "El máximo ajustado ({0})",
  "{0} kg/m³ at {1} %": "{0} kg/m³ con {1} %",
  "{0} is denser than the soil can be without any air left in it.":
    "{0} es más denso de lo que el suelo puede ser sin nada de aire dentro.",
  "at most {0} kg/m³ for particles of {1} kg/m³":
    "{0} kg/m³ como máximo para partículas de {1} kg/m³",
  "Check the water content, the mould volume and the particle density.":
    "Compruébense la humedad, el volumen del molde y la densidad de partículas.",
  "The points show no highest dry density between the driest and the wettest.":
    "Los puntos no muestran una densidad seca máxima entre el más seco y el más húmedo.",
  "at least three points that rise and then fall":
    "tres puntos como mínimo que suban y luego bajen",
  "Compact more points on the side where the density still rises.":
    "Compáctense más puntos del lado en que la densidad aún sube.",
  drier: "más seco",
  wetter: "más húmedo",
  "Fewer than two points lie on the {0} side of the optimum.":
    "Menos de dos puntos quedan del lado {0} del óptimo.",
  dry: "seco",
  wet: "húmedo",
  "at least two points on either side (common practice, no source)":
    "dos puntos como mínimo a cada lado (práctica común, sin fuente)",
  "Compact another point that is {0}.": "Compáctese otro punto {0}.",
  "The {0} gives another top than the {1} ({2} %, {3} kg/m³).":
    "Con {0} sale otro máximo que con {1} ({2} %, {3} kg/m³).",
  "tops within {0} points of water and {1} % of density of each other":
    "máximos que difieran menos de {0} puntos de agua y {1} % de densidad",
  "Compact another point near the optimum; take the optimum as a range until then.":
    "Compáctese otro punto cerca del óptimo; hasta entonces tómese el óptimo como un intervalo.",
  "The soil is reported as non-plastic, yet a plastic limit is given.":
    "El suelo consta como no plástico y, sin embargo, se da un límite plástico.",
  "either one or the other": "lo uno o lo otro",
  "Keep the one that is right; non-plastic was taken here.":
    "Déjese lo que sea correcto; aquí se tomó no plástico.",
  "The plastic limits of the threads lie far apart.":
    "Los límites plásticos de los rollitos quedan muy separados.",
  "within 2 points of water (common practice, no source)":
    "dentro de 2 puntos de agua (práctica común, sin fuente)",
  "Roll more threads; the mean stands until then.":
    "Ruédense más rollitos; hasta entonces vale la media.",
  "LL {0}, PI {1}": "LL {0}, IP {1}",
  "The plastic limit lies above the liquid limit.":
    "El límite plástico queda por encima del límite líquido.",
  "a plastic limit below the liquid limit": "un límite plástico menor que el límite líquido",
  "Check the water contents; a soil that cannot be rolled is non-plastic.":
    "Compruébense las humedades; un suelo con el que no pueden hacerse rollitos es no plástico.",
  "The point lies above the U-line, where natural soils are hardly ever found.":
    "El punto queda por encima de la línea U, donde casi nunca se encuentran suelos naturales.",
  "a plasticity index up to {0} at this liquid limit (ASTM D2487, from memory)":
    "un índice de plasticidad de hasta {0} con este límite líquido (ASTM D2487, de memoria)",
  "Check both limits before relying on them.":
    "Compruébense ambos límites antes de fiarse de ellos.",
  "The shrinkage bar is longer dry than wet.":
    "La barra de retracción es más larga seca que húmeda.",
  "a dry length up to the wet length": "una longitud seca que no supere la húmeda",
  "Check whether the two lengths were exchanged.":
    "Compruébese si se cambiaron las dos longitudes.",
  blows: "golpes",
  "mm of penetration": "mm de penetración",
  "The liquid limit rests on one point and a slope of the flow line taken for known.":
    "El límite líquido se apoya en un solo punto y en una pendiente de la línea de flujo tomada por conocida.",
  "at least 3 points": "3 puntos como mínimo",
  "Take more points at other water contents; until then the limit has no interval.":
    "Tómense más puntos con otras humedades; hasta entonces el límite no tiene intervalo.",
  "This point lies far from the limit at {0} {1}.": "Este punto queda lejos del límite de {0} {1}.",
  "{0} to {1} {2}": "de {0} a {1} {2}",
  "Dry or wet the soil a little and take another point nearer to the limit.":
    "Séquese o humedézcase un poco el suelo y tómese otro punto más cerca del límite.",
  "All points lie on one side of the limit: it is read off the line's prolongation.":
    "Todos los puntos quedan de un lado del límite: se lee en la prolongación de la línea.",
  "points on both sides of {0} {1}": "puntos a ambos lados de {0} {1}",
  "Take a point on the other side.": "Tómese un punto del otro lado.",
  "The flow line has too few points to show whether it is straight.":
    "La línea de flujo tiene demasiado pocos puntos para ver si es recta.",
  "Take more points at other water contents.": "Tómense más puntos con otras humedades.",
  "The flow line leans the wrong way: wetter soil should need fewer blows, or let the cone deeper in.":
    "La línea de flujo se inclina al revés: un suelo más húmedo debería necesitar menos golpes o dejar entrar más el cono.",
  "The points do not make a line: all have the same measure.":
    "Los puntos no forman una línea: todos tienen la misma medida.",
  "points at different water contents that follow one falling (cup) or rising (cone) line":
    "puntos con humedades distintas que sigan una línea que baje (cuchara) o suba (cono)",
  "Check the points for exchanged columns or slips of the pen.":
    "Compruébese si hay columnas cambiadas o errores de escritura.",
  "Passing 2 mm {0} %, 0.425 mm {1} %, 0.075 mm {2} %.":
    "Pasa por 2 mm {0} %, por 0,425 mm {1} %, por 0,075 mm {2} %.",
  "Without liquid limit and plasticity index no group can be told.":
    "Sin límite líquido e índice de plasticidad no puede decirse ningún grupo.",
  "Non-plastic.": "No plástico.",
  "LL {0}, PI {1}.": "LL {0}, IP {1}.",
  "LL {0} and PI {1}": "LL {0} e IP {1}",
  "up to 40": "hasta 40",
  "41 or more": "41 o más",
  "up to 10": "hasta 10",
  "11 or more": "11 o más",
  "First group from the left whose limits are all met: {0}.":
    "Primer grupo desde la izquierda cuyos límites se cumplen todos: {0}.",
  "Not A-1 or A-3, at most 35 % fines, {0}: {1}.":
    "Ni A-1 ni A-3, 35 % de finos como máximo, {0}: {1}.",
  "36 % fines or more, {0}{1}: {2}.": "36 % de finos o más, {0}{1}: {2}.",
  ", PI {0} LL − 30": ", IP {0} LL − 30",
  "Group index 0 by rule.": "Índice de grupo 0 por regla.",
  "Group index {0}, rounded {1}, by the present formula without caps.":
    "Índice de grupo {0}, redondeado {1}, con la fórmula actual sin topes.",
  "The older form, still in print, caps its terms and would give {0}.":
    "La forma antigua, aún impresa, pone topes a sus términos y daría {0}.",
  "BS 5930 letters, from memory; 35 % fines, 0.063 mm, the A-line and the letters G S M C F read in Smith, Elements of Soil Mechanics. For W the limits of ASTM D2487 are taken (Cu 4 for gravel, 6 for sand, Cc 1 to 3).":
    "Letras de BS 5930, de memoria; 35 % de finos, 0,063 mm, la línea A y las letras G S M C F leídas en Smith, Elements of Soil Mechanics. Para W se toman los límites de ASTM D2487 (Cu 4 para grava, 6 para arena, Cc de 1 a 3).",
  "liquid limit and plasticity index": "límite líquido e índice de plasticidad",
  "{0} fines, 35 % or more: fine soil.": "{0} de finos, 35 % o más: suelo fino.",
  "Fines below 65 %: {0}.": "Finos por debajo del 65 %: {0}.",
  "Organic: O.": "Orgánico: O.",
  "{0} fines, below 35 %: coarse soil.": "{0} de finos, menos del 35 %: suelo grueso.",
  "{0} gravel {1} {2} sand: {3}.": "{0} de grava {1} {2} de arena: {3}.",
  exceeds: "supera a",
  "does not exceed": "no supera a",
  "Fines of 15 to 35 %: named by the fines. {0}":
    "Finos del 15 al 35 %: se nombra por los finos. {0}",
  "D10, D30 and D60": "D10, D30 y D60",
  "Fines below 5 %: clean.": "Finos por debajo del 5 %: limpio.",
  "Fines of 5 to 15 %: both. {0}": "Finos del 5 al 15 %: ambos. {0}",
  "Well or poorly graded cannot be told without D10, D30 and D60.":
    "Sin D10, D30 y D60 no puede decirse si está bien o mal graduado.",
  "Cu {0}, Cc {1}": "Cu {0}, Cc {1}",
  "{0}: well-graded, W.": "{0}: bien graduado, W.",
  "{0}: uniform, Pu.": "{0}: uniforme, Pu.",
  "{0}: a gap in the grading, Pg.": "{0}: un hueco en la granulometría, Pg.",
  "The measured curve does not reach the sizes that this system asks for.":
    "La curva medida no alcanza los tamaños que pide este sistema.",
  "ISO 14688-2:2004, its guide table of composite soils and its grading terms, from memory; the boundary 0.063 mm and symbols such as saGr read. Later editions rest more on behaviour by hand: confirm before citing.":
    "ISO 14688-2:2004, su tabla orientativa de suelos compuestos y sus términos de granulometría, de memoria; el límite 0,063 mm y símbolos como saGr, leídos. Las ediciones posteriores se apoyan más en el comportamiento a mano: confírmese antes de citar.",
  "{0} gravel, {1} sand, {2} fines.": "{0} de grava, {1} de arena, {2} de finos.",
  "Fines of 5 % or more: without the clay content silt and clay cannot be told apart.":
    "Finos del 5 % o más: sin el contenido de arcilla no pueden separarse limo y arcilla.",
  "clay content": "contenido de arcilla",
  "Fines of 40 % or more, clay {0} of them.": "Finos del 40 % o más, de ellos {0} de arcilla.",
  "Fines below 40 %; {0}.": "Finos por debajo del 40 %; {0}.",
  "gravel exceeds sand": "la grava supera a la arena",
  "sand is not exceeded by gravel": "la grava no supera a la arena",
  "Clay is {0} of the fines: {1}{2}.": "La arcilla es {0} de los finos: {1}{2}.",
  "Without D10, D30 and D60 the grading cannot be told.":
    "Sin D10, D30 y D60 no puede decirse la graduación.",
  "{0} fines, 50 % or more: fine-grained.": "{0} de finos, 50 % o más: de grano fino.",
  "{0} fines, less than 50 %: coarse-grained.": "{0} de finos, menos del 50 %: de grano grueso.",
  "Fines above 12 %: named by the fines. {0}":
    "Finos por encima del 12 %: se nombra por los finos. {0}",
  "Fines from 5 to 12 %: dual symbol. {0}": "Finos del 5 al 12 %: símbolo doble. {0}",
  "{0}: Cu {1} or more and Cc 1 to 3, well-graded.":
    "{0}: Cu {1} o más y Cc de 1 a 3, bien graduado.",
  "{0}: not both Cu {1} or more and Cc 1 to 3, poorly graded.":
    "{0}: no a la vez Cu {1} o más y Cc de 1 a 3, mal graduado.",
  "{0}: no line of the table fits both; {1} by Cu alone.":
    "{0}: ninguna línea de la tabla encaja con ambos; {1} solo por Cu.",
  "Nyagah, block contractor's page, Kenya, table":
    "Nyagah, página de un constructor de bloques, Kenia, tabla",
  "Adam and Agib (UNESCO) 2001, after Webb and Lockwood, from memory":
    "Adam y Agib (UNESCO) 2001, según Webb y Lockwood, de memoria",
  "Field test for pressed blocks: not the linear shrinkage of the laboratory bar, and no design of a rammed wall. The content of cement follows from crushed blocks of the mix.":
    "Ensayo de campo para bloques prensados: no es la retracción lineal de la barra de laboratorio ni el cálculo de un muro apisonado. El contenido de cemento resulta de probetas de la mezcla rotas en prensa.",
  "The fines are non-plastic: silt, ML.": "Los finos no son plásticos: limo, ML.",
  "LL {0} is {1}; PI {2} lies {3} the A-line ({4})":
    "LL {0} es {1}; IP {2} queda {3} la línea A ({4})",
  "50 or more": "50 o más",
  "below 50": "menor que 50",
  " and the fines are organic": " y los finos son orgánicos",
  " and is above 7": " y es mayor que 7",
  " and is 4 to 7": " y está entre 4 y 7",
  " and is below 4": " y es menor que 4",
  "Correct this row of the file.": "Corríjase esta fila del archivo.",
  "id, 0.002, 0.063, 2 … : an id and at least three sieves":
    "id, 0.002, 0.063, 2 … : un id y tres tamices como mínimo",
  "CSV in UTF-8, one grading a row": "CSV en UTF-8, una granulometría por fila",
  "The file has no rows.": "El archivo no tiene filas.",
  "a header and one grading a row": "un encabezado y una granulometría por fila",
  "“{0}” is neither a known column nor a sieve.":
    "“{0}” no es ni una columna conocida ni un tamiz.",
  "A column stands twice.": "Una columna figura dos veces.",
  "The column “id” is missing.": "Falta la columna “id”.",
  "The header names fewer than three sieves.": "El encabezado nombra menos de tres tamices.",
  "a number with a decimal point": "un número con punto decimal",
  "0 to {0}": "de 0 a {0}",
  "Correct the row; the other rows stand without it.":
    "Corríjase la fila; las demás filas valen sin ella.",
  "The passing falls as size grows.": "El porcentaje que pasa baja al crecer el tamaño.",
  "a rising curve": "una curva ascendente",
  "The row has too few points that tell for this model.":
    "La fila tiene demasiado pocos puntos que informen para este modelo.",
  "at least {0} from the last 0 % to the first 100 %":
    "{0} como mínimo desde el último 0 % hasta el primer 100 %",
  "silt + 1.5 clay below 15": "limo + 1,5 arcilla menor que 15",
  "silt 80 or more, clay below 12": "limo 80 o más, arcilla menor que 12",
  "silt 50 or more, clay below 27": "limo 50 o más, arcilla menor que 27",
  "clay below 7, or clay below 20 and sand above 52":
    "arcilla menor que 7, o arcilla menor que 20 y arena mayor que 52",
  "clay below 27, silt 28 or more, sand up to 52":
    "arcilla menor que 27, limo 28 o más, arena hasta 52",
  "clay 20 to 35, silt below 28, sand above 45":
    "arcilla de 20 a 35, limo menor que 28, arena mayor que 45",
  "clay 35 or more, sand above 45": "arcilla 35 o más, arena mayor que 45",
  "clay 27 to 40, sand up to 20": "arcilla de 27 a 40, arena hasta 20",
  "clay 27 to 40, sand 20 to 45": "arcilla de 27 a 40, arena de 20 a 45",
  "clay 40 or more, silt 40 or more": "arcilla 40 o más, limo 40 o más",
  "clay 40 or more, silt below 40, sand up to 45":
    "arcilla 40 o más, limo menor que 40, arena hasta 45",
  "Of the part under 2 mm: {0} % sand, {1} % silt, {2} % clay.":
    "De la parte menor que 2 mm: {0} % de arena, {1} % de limo, {2} % de arcilla.",
  "First rule that fits: {0}: {1}.": "Primera regla que encaja: {0}: {1}.",
  "{0} % of the whole is coarser than 2 mm: {1}.": "El {0} % del total es mayor que 2 mm: {1}.",
};
