/** The sentences of `grading/` in Spanish, by their English text. */
export const SPANISH_GRADING: Readonly<Record<string, string>> = {
  "about −5 to 60 (g/L)": "cerca de −5 a 60 (g/L)",
  "about 0.995 to 1.038": "cerca de 0.995 a 1.038",
  "about −5 to 35 (thousandths above 1)": "cerca de −5 a 35 (milésimas por encima de 1)",
  "The reading lies below the control: less than nothing is in suspension.":
    "La lectura queda por debajo del control: habría menos que nada en suspensión.",
  "Check the dry mass, the control reading and the meniscus correction.":
    "Compruébense la masa seca, la lectura de control y la corrección de menisco.",
  "Check both readings, the control and the temperature.":
    "Compruébense ambas lecturas, el control y la temperatura.",
  "{0} readings lie outside the calibrated marks; their depth was taken on along the scale.":
    "{0} lecturas quedan fuera de las marcas calibradas; su profundidad se prolongó por la escala.",
  "readings from {0} to {1}, meniscus added": "lecturas de {0} a {1}, con el menisco sumado",
  "Measure the depth at a mark beyond these readings.":
    "Mídase la profundidad en una marca más allá de estas lecturas.",
  "This reading is not on the scale of a {0}.": "Esta lectura no está en la escala de un {0}.",
  "Check the reading and the type of hydrometer.":
    "Compruébense la lectura y el tipo de hidrómetro.",
  "Layer heights are not masses: clay settles loose and looks like more than it is, and flocculated clay settles with the silt. The test is a first guide only.":
    "Las alturas de las capas no son masas: la arcilla se asienta suelta y parece más de la que hay, y la arcilla floculada se asienta con el limo. El ensayo es solo una primera guía.",
  "sieving and a hydrometer or pipette before a mix is decided":
    "tamizado e hidrómetro o pipeta antes de decidir una mezcla",
  "Use the shares to choose which soils go to the laboratory.":
    "Úsense las proporciones para elegir qué suelos van al laboratorio.",
  "The sheet gives no temperature: 20 °C was taken for the settling times.":
    "La hoja no da temperatura: para los tiempos de asiento se tomaron 20 °C.",
  "“temperature (C)” above the table": "“temperature (C)” encima de la tabla",
  "Nothing to do, unless the water was cold: at 10 °C it takes 30 % longer.":
    "No hay que hacer nada, salvo que el agua estuviera fría: con 10 °C tarda un 30 % más.",
  "The viscosity of water is not tabulated at this temperature: no sizes can be told.":
    "La viscosidad del agua no está tabulada a esta temperatura: no puede decirse ningún tamaño.",
  "10 to 30 °C": "de 10 a 30 °C",
  "Repeat the test at room temperature.": "Repítase el ensayo a temperatura ambiente.",
  "After this time grains down to {0} mm had settled from the surface, so part of the {1}.":
    "Tras este tiempo se habían asentado desde la superficie granos de hasta {0} mm, así que parte de {1}.",
  "{0} counts with the layer above it": "{0} cuenta con la capa de encima",
  "{0} counts with the {1}": "{0} cuenta con {1}",
  "a reading when grains of {0} mm have settled, in this water after about {1} min":
    "una lectura cuando se han asentado granos de {0} mm, en esta agua tras unos {1} min",
  "Read the top at that time, or take the boundary at the size told here.":
    "Léase la altura a ese tiempo, o tómese el límite en el tamaño que se dice aquí.",
  "The last reading was taken before a day had passed: clay still in suspension is not counted.":
    "La última lectura se tomó antes de que pasara un día: la arcilla aún en suspensión no se cuenta.",
  "{0} min or more, with clear water": "{0} min o más, con el agua clara",
  "Let the jar stand and read the top again.":
    "Déjese reposar el frasco y léase otra vez la altura.",
  "The sample holds less than its share of the dispersant.":
    "La muestra contiene menos que su parte de dispersante.",
  "Check the dry mass, the two volumes and the mass of dispersant.":
    "Compruébense la masa seca, los dos volúmenes y la masa de dispersante.",
  "Check both weighings, times and depths.":
    "Compruébense ambas pesadas, los tiempos y las profundidades.",
  sample: "muestra",
  "split subsample": "submuestra del cuarteo",
  "The sieves retain more than the {0} that was put on them.":
    "Los tamices retienen más que la {0} que se puso en ellos.",
  "at most {0} g on all sieves of this set together":
    "{0} g como máximo en todos los tamices de este juego",
  "Check the dry masses and whether the masses are per sieve, not cumulative; check that rows below a split were weighed on the subsample.":
    "Compruébense las masas secas y si las masas son por tamiz, no acumuladas; compruébese que las filas por debajo de un cuarteo se pesaron en la submuestra.",
  "{0} mass was found after sieving than was put in: {1} g of {2} g of the {3}, washed-out fines counted.":
    "Tras el tamizado se halló {0} masa de la que se puso: {1} g de {2} g de la {3}, contando los finos lavados.",
  More: "más",
  Less: "menos",
  "a difference within {0} % of the dry mass (University of Waterloo CIVE 153, 2013, for 2 %)":
    "una diferencia dentro del {0} % de la masa seca (University of Waterloo CIVE 153, 2013, para el 2 %)",
  "Check the masses for a slip of the pen; if none is found, sieve a fresh sample.":
    "Búsquese un error de escritura en las masas; si no lo hay, tamícese una muestra nueva.",
  "Check the masses; the result stands, with this remark.":
    "Compruébense las masas; el resultado vale, con esta observación.",
  "The sample is small for grains of {0}: a few grains more or less would move the coarse end.":
    "La muestra es pequeña para granos de {0}: unos pocos granos de más o de menos moverían el extremo grueso.",
  "at least {0} kg (AASHTO T 27 as adopted by WSDOT, by nominal maximum size)":
    "{0} kg como mínimo (AASHTO T 27 según lo adopta WSDOT, por tamaño máximo nominal)",
  "Sieve a larger sample of the coarse part, or take the coarse points with care.":
    "Tamícese una muestra mayor de la parte gruesa, o tómense con cautela los puntos gruesos.",
  "Material stayed on the coarsest sieve ({0}), so the largest grain is not known.":
    "Quedó material en el tamiz más grueso ({0}), así que no se conoce el grano mayor.",
  "nothing retained on the coarsest sieve": "nada retenido en el tamiz más grueso",
  "Add the next coarser sieve through which everything passes, with 0 retained.":
    "Añádase el tamiz superior siguiente, por el que pase todo, con 0 retenido.",
  "{0} points; at least {1} are needed to judge it.":
    "{0} puntos; hacen falta {1} como mínimo para juzgarlo.",
  "At {0} mm the sieve gives {1} % passing and the sedimentation {2} %.":
    "En {0} mm el tamizado da {1} % que pasa y la sedimentación {2} %.",
  "a difference within {0} points": "una diferencia dentro de {0} puntos",
  "Check the dispersed mass, the separating sieve, the particle density and the control readings. {0}":
    "Compruébense la masa dispersada, el tamiz de separación, la densidad de partículas y las lecturas de control. {0}",
  "More in the sedimentation may also mean fines that clung to coarse grains on the sieves: wash the sample.":
    "Más en la sedimentación puede significar también finos pegados a los granos gruesos en los tamices: lávese la muestra.",
  "Less in the sedimentation may also mean flocs that were not dispersed: check dispersant and stirring.":
    "Menos en la sedimentación puede significar también flóculos sin dispersar: compruébense el dispersante y la agitación.",
  "{0} mm from {1} to {2} %": "{0} mm de {1} a {2} %",
  "{0} points at most": "{0} puntos como máximo",
  "The measured curve falls somewhere as size grows; points were moved: {0}.":
    "La curva medida baja en algún sitio al crecer el tamaño; se movieron puntos: {0}.",
  "percentages that never fall as size grows": "porcentajes que nunca bajen al crecer el tamaño",
  "Check the readings at these sizes; the moved curve is the nearest possible one.":
    "Compruébense las lecturas en estos tamaños; la curva movida es la más cercana posible.",
  "The fit did not come to rest: {0}": "El ajuste no llegó a estabilizarse: {0}",
  "{0} sits on its {1} bound: the points do not fix it, and the other errors hold it for known.":
    "{0} está en su límite {1}: los puntos no lo fijan, y los demás errores lo dan por conocido.",
  lower: "inferior",
  upper: "superior",
  "{0} never left its start: its value is the guess.":
    "{0} no se movió de su valor inicial: su valor es la suposición.",
  "The points do not settle {0}: no error can be given.":
    "Los puntos no determinan {0}: no puede darse error.",
  "Points exceed parameters by only {0}: the errors are hardly known.":
    "Los puntos superan a los parámetros en solo {0}: los errores apenas se conocen.",
  "The jar allows {0} to {1} % of {2} by mass, the laboratory measured {3} %.":
    "El frasco admite de {0} a {1} % de {2} en masa; el laboratorio midió {3} %.",
  "the laboratory's share within what the height of the layer allows":
    "la parte del laboratorio dentro de lo que admite la altura de la capa",
  "The laboratory's curve stands. Check that both had the same soil, put through the same sieve, and that the jar was read at the right times.":
    "Vale la curva del laboratorio. Compruébese que ambos tuvieran el mismo suelo, pasado por el mismo tamiz, y que el frasco se leyera a los tiempos debidos.",
  "Bimodal lognormal": "Lognormal bimodal",
  "Bimodal lognormal: Buchan et al. (named there, read); equation from memory":
    "Lognormal bimodal: Buchan et al. (allí nombrado, leído); ecuación de memoria",
  "Fredlund unimodal": "Fredlund unimodal",
  "Fredlund et al. 2000; five-parameter unimodal form named in its abstract (read), equation from memory":
    "Fredlund et al. 2000; forma unimodal de cinco parámetros nombrada en su resumen (leído), ecuación de memoria",
  "Fredlund two-mode": "Fredlund de dos modas",
  "Fredlund et al. 2000: a bimodal form is named in its abstract (read); equation from memory":
    "Fredlund et al. 2000: su resumen nombra una forma bimodal (leído); ecuación de memoria",
  "Haverkamp–Parlange": "Haverkamp–Parlange",
  "Haverkamp and Parlange 1986, from memory": "Haverkamp y Parlange 1986, de memoria",
  Lognormal: "Lognormal",
  "Buchan et al. (in its list of forms, read); equation from memory":
    "Buchan et al. (en su lista de formas, leído); ecuación de memoria",
  "Power curve (Talbot)": "Curva potencial (Talbot)",
  "Equation with n from 0.3 to 0.6: Das, Fundamentals of Geotechnical Engineering, 5th ed., problem 2.15 (read); Talbot and Richart 1923, from memory":
    "Ecuación con n de 0,3 a 0,6: Das, Fundamentals of Geotechnical Engineering, 5.ª ed., problema 2.15 (leído); Talbot y Richart 1923, de memoria",
  Skaggs: "Skaggs",
  "Skaggs et al. 2001 (abstract read, with its limit of 70 % silt); equation from memory, fitted to all points here":
    "Skaggs et al. 2001 (resumen leído, con su límite del 70 % de limo); ecuación de memoria, ajustada aquí a todos los puntos",
  "Weibull (Rosin–Rammler)": "Weibull (Rosin–Rammler)",
  "R = exp(−(d/k)^n): codecogs (read); regression form: Doll 2017 (read)":
    "R = exp(−(d/k)^n): codecogs (leído); forma de regresión: Doll 2017 (leído)",
  "The viscosity of water is not tabulated at this temperature.":
    "La viscosidad del agua no está tabulada a esta temperatura.",
  "Check the reading and its unit; repeat the test in a room or bath within that range.":
    "Compruébense la lectura y su unidad; repítase el ensayo en una sala o un baño dentro de ese intervalo.",
  "More is in suspension than was put in.": "Hay en suspensión más de lo que se puso.",
  "0 to 100 % of the dispersed mass (within {0} it is taken as the limit)":
    "de 0 a 100 % de la masa dispersada (dentro de {0} se toma como el límite)",
  "The percentage in suspension rises by {0} points since the {1} before, which settling cannot do.":
    "El porcentaje en suspensión sube {0} puntos desde {1} anterior, cosa que el asiento no puede hacer.",
  "percentages that fall or stay with time": "porcentajes que bajen o se mantengan con el tiempo",
  "The dispersed soil was treated before; the mass lost by it is not given.":
    "El suelo dispersado se trató antes; no se da la masa que perdió con ello.",
  "The dispersed soil was treated before and lost {0} % of its dry mass by it; nothing was reckoned back.":
    "El suelo dispersado se trató antes y perdió con ello el {0} % de su masa seca; nada se recalculó.",
  "a dispersed dry mass that was taken after the treatment, as percentages are of it":
    "una masa seca dispersada tomada después del tratamiento, pues los porcentajes son de ella",
  "Check that the dry mass of the sheet was weighed after the treatment; the sieved sample was not treated.":
    "Compruébese que la masa seca de la hoja se pesó después del tratamiento; la muestra tamizada no se trató.",
  "ISO 14688-1": "ISO 14688-1",
  "ISO 14688-1 as tabulated by the Auroville Earth Institute (read)":
    "ISO 14688-1 según la tabla del Auroville Earth Institute (leído)",
  "BS 5930": "BS 5930",
  "BS 5930, from memory; 0.063 mm read": "BS 5930, de memoria; 0,063 mm leído",
  "ASTM D2487 sieves, clay at 0.002 mm": "Tamices de ASTM D2487, arcilla en 0,002 mm",
  "ASTM D2487, from memory: it tells silt from clay by plasticity, not by size. ASTM D422 set clay at 0.005 mm, from memory; 0.002 mm is used here":
    "ASTM D2487, de memoria: separa limo y arcilla por plasticidad, no por tamaño. ASTM D422 ponía la arcilla en 0,005 mm, de memoria; aquí se usa 0,002 mm",
  USDA: "USDA",
  "USDA texture system, from memory": "Sistema de texturas USDA, de memoria",
};
