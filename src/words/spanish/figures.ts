/** The sentences of `figures/` in Spanish, by their English text. */
export const SPANISH_FIGURES: Readonly<Record<string, string>> = {
  "no air left (zero air voids)": "sin aire (cero vacíos)",
  "no air": "sin aire",
  "5 % air": "5 % de aire",
  "10 % air": "10 % de aire",
  target: "objetivo",
  "D{0} {1} mm": "D{0} {1} mm",
  "{0}, characteristic sizes": "{0}, tamaños característicos",
  "fitted curve": "curva ajustada",
  "Water content (% of dry mass)": "Humedad (% de la masa seca)",
  "Dry density ({0})": "Densidad seca ({0})",
  "water that keeps {0} % of the maximum: {1} to {2} %":
    "agua que conserva el {0} % del máximo: de {1} a {2} %",
  "optimum with 95 % intervals": "óptimo con intervalos del 95 %",
  optimum: "óptimo",
  "{0}. {1} points from {2} to {3} % water.": "{0}. {1} puntos de {2} a {3} % de agua.",
  "The fitted curve peaks at {0} % water with a dry density of {1}.":
    "La curva ajustada tiene su máximo con {0} % de agua y una densidad seca de {1}.",
  "The points show no top.": "Los puntos no muestran un máximo.",
  "95 % interval of the optimum: {0} to {1} %.": "Intervalo del 95 % del óptimo: de {0} a {1} %.",
  "Between {0} and {1} % water the curve keeps {2} % of the maximum.":
    "Entre {0} y {1} % de agua la curva conserva el {2} % del máximo.",
  "The point at {0} % is denser than without any air and was left out of the fit.":
    "El punto con {0} % es más denso que sin aire y quedó fuera del ajuste.",
  "The point at {0} % is denser than without any air.":
    "El punto con {0} % es más denso que sin aire.",
  test: "ensayo",
  "test, denser than without air": "ensayo, más denso que sin aire",
  "test, denser than without air: left out of the fit":
    "ensayo, más denso que sin aire: fuera del ajuste",
  "at {0} the difference is {1} points ({2})": "con {0} la diferencia es de {1} puntos ({2})",
  "{0}. {1} against the root mean square difference from the target: {2}.":
    "{0}. {1} frente a la diferencia cuadrática media con el objetivo: {2}.",
  "no blend keeps the limits": "ninguna combinación cumple los límites",
  "best blend": "mejor combinación",
  "Difference from the target (points, rms)":
    "Diferencia con el objetivo (puntos, cuadrática media)",
  "Passing (% of dry mass)": "Pasa (% de la masa seca)",
  "{0}. Percent passing against grain size on a logarithmic axis, fine at the left; fractions by {1}.":
    "{0}. Porcentaje que pasa frente al tamaño de grano en eje logarítmico, fino a la izquierda; fracciones según {1}.",
  "{0}. Percent passing against grain size on a logarithmic axis, coarse at the left; fractions by {1}.":
    "{0}. Porcentaje que pasa frente al tamaño de grano en eje logarítmico, grueso a la izquierda; fracciones según {1}.",
  "{0} % at {1} mm": "{0} % en {1} mm",
  "{0}: passing {1}; {2}.": "{0}: pasa {1}; {2}.",
  "{0}: passing {1}.": "{0}: pasa {1}.",
  "{0}: widest at {1} mm, {2} to {3} %.": "{0}: más ancha en {1} mm, de {2} a {3} %.",
  "{0} to {1} % at {2} mm": "de {0} a {1} % en {2} mm",
  "Band ({0}): {1}.": "Banda ({0}): {1}.",
  "{0}. Measured less fitted passing against grain size on a logarithmic axis. {1}":
    "{0}. Medido menos ajustado, porcentaje que pasa frente al tamaño de grano en eje logarítmico. {1}",
  "Measured − fitted (% passing)": "Medido − ajustado (% que pasa)",
  "{0}: {1} points, largest residual {2} points at {3} mm, {4} changes of sign.":
    "{0}: {1} puntos, residuo mayor {2} puntos en {3} mm, {4} cambios de signo.",
  "the study's own": "del propio estudio",
  "derived by us": "derivado por nosotros",
  "as published": "como se publicó",
  read: "leído",
  "from memory": "de memoria",
  "lower limit": "límite inferior",
  "upper limit": "límite superior",
  "Control chart of {0} lots ({1}). Centre {2}, limits {3} and {4}. {5}":
    "Gráfico de control de {0} lotes ({1}). Centro {2}, límites {3} y {4}. {5}",
  "lots with a signal": "lotes con señal",
  "Lot, in order of making": "Lote, por orden de ejecución",
  "Strength ({0})": "Resistencia ({0})",
  "{0}: {1} % of its resampled fits": "{0}: {1} % de sus ajustes remuestreados",
  measured: "medido",
  "Chance of acceptance against the true mean of a lot whose blocks scatter by {0}. {1}{2}":
    "Probabilidad de aceptación frente a la media verdadera de un lote cuyas probetas se dispersan {0}. {1}{2}",
  " Half of the lots pass at about {0}.": " La mitad de los lotes pasa cerca de {0}.",
  "chance of acceptance": "probabilidad de aceptación",
  "poor lot and good lot": "lote malo y lote bueno",
  poor: "malo",
  good: "bueno",
  "True mean of the lot ({0})": "Media verdadera del lote ({0})",
  "Accepted (% of lots)": "Aceptados (% de los lotes)",
  "{0}. Plasticity index against liquid limit, with the A-line. {1}":
    "{0}. Índice de plasticidad frente a límite líquido, con la línea A. {1}",
  "A-line": "línea A",
  "U-line (from memory)": "línea U (de memoria)",
  "Liquid limit (%)": "Límite líquido (%)",
  "Plasticity index (%)": "Índice de plasticidad (%)",
  "{0}: liquid limit {1} %, plasticity index {2} %, group {3}, {4} points {5} the A-line.":
    "{0}: límite líquido {1} %, índice de plasticidad {2} %, grupo {3}, {4} puntos {5} la línea A.",
  above: "por encima de",
  below: "por debajo de",
  "Studentised residuals of {0} blocks of {1} days against fitted strength. {2} lie beyond plus or minus {3}{4}. The largest is {5}, of block {6} at a fitted {7}.":
    "Residuos estudentizados de {0} probetas de {1} días frente a la resistencia ajustada. {2} quedan más allá de más o menos {3}{4}. El mayor es {5}, de la probeta {6} con {7} ajustados.",
  "No studentised residuals: the blocks are too few, or lie exactly on the curve.":
    "Sin residuos estudentizados: las probetas son demasiado pocas o caen exactamente sobre la curva.",
  blocks: "probetas",
  "Fitted strength ({0})": "Resistencia ajustada ({0})",
  "Studentised residual": "Residuo estudentizado",
  "{0}. {1} of {2} drawn blends stay inside the band at every size; the worst size is {3} mm. {4}":
    "{0}. {1} de {2} combinaciones sorteadas quedan dentro de la banda en todos los tamaños; el peor tamaño es {3} mm. {4}",
  "At {0}: nine in ten between {1} and {2} %, allowed {3} to {4} %, inside in {5}.":
    "En {0}: nueve de cada diez entre {1} y {2} %, permitido de {3} a {4} %, dentro en {5}.",
  allowed: "permitido",
  "middle and nine in ten of the blends": "mediana y nueve de cada diez combinaciones",
  "Grain size": "Tamaño de grano",
  share: "proporción",
  "allowed range": "intervalo permitido",
  "{0}: {1} % (allowed {2} to {3} %)": "{0}: {1} % (permitido de {2} a {3} %)",
  "Share of the dry mass of soil and aggregate (%)":
    "Proporción de la masa seca de suelo y áridos (%)",
  "Grain size (mm)": "Tamaño de grano (mm)",
  clay: "arcilla",
  silt: "limo",
  sand: "arena",
  gravel: "grava",
  cobbles: "bolos",
  "lower bound of the mean": "cota inferior de la media",
  "lower bound of one further block": "cota inferior de una probeta más",
  "bound that 95 % of blocks exceed": "cota que supera el 95 % de las probetas",
  "{0}, excluded: {1}": "{0}, excluida: {1}",
  "band of the mean": "banda de la media",
  "{0} at {1} d": "{0} a {1} d",
  "Cement (% of the dry mass of soil and aggregate)":
    "Cemento (% de la masa seca de suelo y áridos)",
  "Compressive strength ({0})": "Resistencia a compresión ({0})",
  "required {0}": "requerido {0}",
  "Within the tested contents no least cement content is found.":
    "Dentro de los contenidos ensayados no se encuentra un contenido mínimo de cemento.",
  "The bound meets the requirement from {0} % cement.":
    "La cota cumple el requisito desde el {0} % de cemento.",
  "{0}. {1} blocks.": "{0}. {1} probetas.",
  "The fitted {0} at {1} days goes from {2} at {3} % to {4} at {5} % cement;":
    "La curva {0} ajustada a {1} días va de {2} con {3} % a {4} con {5} % de cemento;",
  "the {0} from {1} to {2}.": "la {0} va de {1} a {2}.",
  "Required: {0}. {1}": "Requerido: {0}. {1}",
  "{0} points": "{0} puntos",
  "breaks a limit": "incumple un límite",
  "more than {0}": "más de {0}",
  "up to {0}": "hasta {0}",
  "{0}. Map of all blends of {1}: {2} of {3} blends in even steps keep all limits. {4}":
    "{0}. Mapa de todas las combinaciones de {1}: {2} de {3} combinaciones en pasos iguales cumplen todos los límites. {4}",
  "The best, {0}, differs from the target by {1} points; {2} blends differ by no more than {3}.":
    "La mejor, {0}, difiere del objetivo en {1} puntos; {2} combinaciones difieren en {3} como máximo.",
  "No blend keeps all limits.": "Ninguna combinación cumple todos los límites.",
  "{0}. Triangle of sand, silt and clay under 2 mm. {1}":
    "{0}. Triángulo de arena, limo y arcilla menores que 2 mm. {1}",
  "{0}: sand {1} %, silt {2} %, clay {3} %: {4}.":
    "{0}: arena {1} %, limo {2} %, arcilla {3} %: {4}.",
  "{0} Within its reading errors: {1}.": "{0} Dentro de sus errores de lectura: {1}.",
  "{0}, within its reading errors": "{0}, dentro de sus errores de lectura",
  "{0} (small dots: within its reading errors)":
    "{0} (puntos pequeños: dentro de sus errores de lectura)",
  "clay (%)": "arcilla (%)",
  "silt (%)": "limo (%)",
  "sand (%), growing to the left": "arena (%), creciente hacia la izquierda",
  "{0}: 95 % within the reading errors": "{0}: 95 % dentro de los errores de lectura",
};
