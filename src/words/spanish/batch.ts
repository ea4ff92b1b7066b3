/** The sentences of `batch/` in Spanish, by their English text. */
export const SPANISH_BATCH: Readonly<Record<string, string>> = {
  "US portland cement, portland-limestone to plain":
    "Cemento Portland de EE. UU., de Portland con caliza a puro",
  "Portland Cement Association industry declaration 2021: 922 kg/t read; portland-limestone 8.2 % lower read, 846 kg/t by own arithmetic":
    "Declaración sectorial de la Portland Cement Association 2021: 922 kg/t leído; con caliza 8,2 % menos leído, 846 kg/t por cálculo propio",
  "UK average cement to CEM I": "Del cemento medio del Reino Unido al CEM I",
  "ICE database V3.0, 2019, from memory; that edition has been replaced":
    "Base de datos ICE V3.0, 2019, de memoria; esa edición ha sido sustituida",
  "Ready-mixed concrete of about 21 MPa (3000 psi)": "Hormigón preparado de unos 21 MPa (3000 psi)",
  "US practice, 470 to 520 lb/yd³, from memory":
    "Práctica de EE. UU., de 470 a 520 lb/yd³, de memoria",
  "The earth element holds {0} to {1} % of the cement of a concrete element of {2} m³ (cement against cement, {3}).":
    "El elemento de tierra contiene del {0} al {1} % del cemento de un elemento de hormigón de {2} m³ (cemento contra cemento, {3}).",
  "Materials and their haul, waste included; labour and forms are not in it.":
    "Materiales y su transporte, mermas incluidas; mano de obra y encofrados no entran.",
  "Not whole: {0} prices are missing or cannot be used.":
    "Incompleto: faltan o no sirven {0} precios.",
  "Dug soil, lumps broken, damp": "Suelo excavado, terrones deshechos, húmedo",
  "from memory: order of magnitude of earthwork tables":
    "de memoria: orden de magnitud de tablas de movimiento de tierras",
  "Damp sand, loose": "Arena húmeda, suelta",
  "from memory: order of magnitude of aggregate tables":
    "de memoria: orden de magnitud de tablas de áridos",
  "Gravel, loose": "Grava, suelta",
  "Portland cement, poured loosely": "Cemento Portland, vertido suelto",
  "range read on several pages (loose 830 to 1650; a full US bag is 94 lb in 1 ft³, 1506 kg/m³); the value within it from memory":
    "intervalo leído en varias páginas (suelto de 830 a 1650; un saco lleno de EE. UU. son 94 lb en 1 ft³, 1506 kg/m³); el valor dentro de él, de memoria",
  "The cement": "El cemento",
  "a loose bulk density measured on this material":
    "una densidad aparente suelta medida en este material",
  "Fill a bucket of known volume loosely, weigh it, and take off the water.":
    "Llénese suelto un cubo de volumen conocido, pésese y descuéntese el agua.",
  "{0} has no loose bulk density, so its volume is not known.":
    "{0} no tiene densidad aparente suelta, así que no se conoce su volumen.",
  "{0}: the loose bulk density is a general value; volumes may be off by a fifth or more.":
    "{0}: la densidad aparente suelta es un valor general; los volúmenes pueden errar un quinto o más.",
  "Correct the measure in the study.": "Corríjase la medida en el estudio.",
  "This measure is not above zero: {0}.": "Esta medida no es mayor que cero: {0}.",
  "above 0 m": "mayor que 0 m",
  "The waste is below zero.": "La merma es menor que cero.",
  "0 % or above": "0 % o más",
  "The count of piers is not a whole number above zero.":
    "El número de pilares no es un entero mayor que cero.",
  "1 or more": "1 o más",
  "A lift is deeper than the element is high.": "Una tongada es más alta que el elemento.",
  "at most {0} m": "{0} m como máximo",
  "The ring's walls meet in the middle: nothing is left inside.":
    "Los muros del anillo se tocan en el centro: dentro no queda nada.",
  "below {0} m": "menos de {0} m",
  "An opening has a measure or count not above zero.":
    "Un hueco tiene una medida o un número que no es mayor que cero.",
  "above 0": "mayor que 0",
  "An opening of {0} m by {1} m does not fit the element.":
    "Un hueco de {0} m por {1} m no cabe en el elemento.",
  "at most {0} m by {1} m": "{0} m por {1} m como máximo",
  "The openings together are as large as the face or larger.":
    "Los huecos juntos son tan grandes como la cara o más.",
  "below {0} m²": "menos de {0} m²",
  "The element's measures do not hold together, so there are no quantities.":
    "Las medidas del elemento no concuerdan, así que no hay cantidades.",
  "{0} m³ rammed, {1} m³ to make with {2} % waste.":
    "{0} m³ apisonados, {1} m³ por preparar con {2} % de merma.",
  "Ball and drop: moisture of the mix": "Bola y caída: humedad de la mezcla",
  "Is the mix moist enough, and not too moist, to ram?":
    "¿Está la mezcla bastante húmeda, y no demasiado, para apisonar?",
  "A hand in a glove, a hard clean floor": "Una mano con guante, un suelo duro y limpio",
  "Take a handful of the mix as it will be rammed and squeeze it hard into a ball.":
    "Tome un puñado de la mezcla tal como se va a apisonar y apriételo fuerte hasta formar una bola.",
  "Look at the glove: is there water on it?": "Mire el guante: ¿hay agua?",
  "Hold the ball at shoulder height and let it fall on the floor.":
    "Sostenga la bola a la altura del hombro y déjela caer al suelo.",
  Batch: "Amasada",
  "Water on the glove?": "¿Agua en el guante?",
  "Height of fall": "Altura de caída",
  "One lump, a few pieces, or crumbs": "Un solo trozo, unos pocos o migas",
  "No water, and it just breaks up": "Sin agua, y apenas se parte",
  "Right: ram": "Bien: apisonar",
  "Water on the glove": "Agua en el guante",
  "Too wet": "Demasiado húmeda",
  "It stays one flattened lump": "Queda un solo trozo aplastado",
  "No ball, or it bursts into crumbs": "No forma bola, o estalla en migas",
  "Too dry": "Demasiado seca",
  "The moisture in percent, or the best moisture of another soil or rammer; clayey and sandy mixes break differently at their optimum.":
    "La humedad en porcentaje, ni la mejor humedad de otro suelo u otro pisón; las mezclas arcillosas y las arenosas se parten de modo distinto en su óptimo.",
  "Oven drying of a sample (moisture), and a compaction test with the effort of the work (optimum)":
    "Secado en estufa de una muestra (humedad) y un ensayo de compactación con la energía de la obra (óptimo)",
  "the dropped ball of plastic soil, 200 g from 2 m, which asks how well the clay binds":
    "la bola de suelo plástico que se deja caer, 200 g desde 2 m, que pregunta cuánto liga la arcilla",
  "Intermediate Technology Development Group, How to make stabilised soil blocks, Technical Advice Note 2: shoulder height, should just break up, no water when squeezed (read); about 1.5 m and a few pieces in NZS 4298 and SAZS 724 (from memory)":
    "Intermediate Technology Development Group, How to make stabilised soil blocks, Technical Advice Note 2: altura del hombro, debe apenas partirse, sin agua al apretar (leído); unos 1,5 m y unos pocos trozos en NZS 4298 y SAZS 724 (de memoria)",
  Jar: "Frasco",
  "Is there mostly sand, or mostly fines?": "¿Hay sobre todo arena o sobre todo finos?",
  "Straight clear jar with a lid, ruler, clean water, a pinch of salt, a watch":
    "Frasco transparente y recto con tapa, regla, agua limpia, una pizca de sal, un reloj",
  "Break the lumps, take out stones, fill a third of the jar with soil.":
    "Deshaga los terrones, quite las piedras y llene un tercio del frasco con suelo.",
  "Fill up with water, add the salt, leave an hour, shake hard for two minutes.":
    "Llénelo de agua, añada la sal, déjelo una hora y agítelo fuerte dos minutos.",
  "Set down and do not move. Mark the top of the settled layer after 1 minute, 30 to 60 minutes, 24 hours.":
    "Déjelo quieto. Marque la parte superior de lo asentado a 1 minuto, a los 30 a 60 minutos y a las 24 horas.",
  "Height after 1 minute: sand and coarser": "Altura a 1 minuto: arena y más grueso",
  "Height after ____ minutes: and silt": "Altura a los ____ minutos: más el limo",
  "Height after 24 hours: and clay": "Altura a las 24 horas: más la arcilla",
  "Water still cloudy?": "¿Agua aún turbia?",
  "Nearly all settles in the first minute": "Casi todo se asienta en el primer minuto",
  "Few fines: it will not hold together without more binder":
    "Pocos finos: no se mantendrá unido sin más conglomerante",
  "Little settles in the first minute": "Poco se asienta en el primer minuto",
  "Rich in fines: expect shrinkage; sand may have to be added":
    "Rico en finos: espere retracción; quizá haya que añadir arena",
  "The true percentages. Fine layers hold more water, so clay looks like more than it is: one text shows a loam of about 14 % clay that reads near 45 % in the jar (from memory). No measured correction was found; apply none.":
    "Los porcentajes verdaderos. Las capas finas retienen más agua, así que la arcilla parece más de la que hay: un texto muestra un suelo franco con cerca del 14 % de arcilla que en el frasco marca cerca del 45 % (de memoria). No se encontró ninguna corrección medida; no aplique ninguna.",
  "Wet sieving and a sedimentation test (hydrometer or pipette)":
    "Tamizado con lavado y un ensayo de sedimentación (hidrómetro o pipeta)",
  "Times: 1 min, 30 min to 1 h, 24 h on two web pages of builders (read); both warn, as a council guide does, that it is inaccurate (read)":
    "Tiempos: 1 min, de 30 min a 1 h y 24 h en dos páginas web de constructores (leído); ambas advierten, como una guía municipal, que es inexacto (leído)",
  "Dropped plastic ball: binding of the soil": "Bola plástica que cae: cohesión del suelo",
  "Does the clay of this soil bind at all, or very strongly?":
    "¿Liga algo la arcilla de este suelo, o liga mucho?",
  "Scale, ruler, tape, a flat hard floor, water":
    "Balanza, regla, cinta métrica, un suelo plano y duro, agua",
  "Sieve out stones, add water and knead until the soil is stiff and plastic; no cement.":
    "Quite las piedras con una criba, añada agua y amase hasta que el suelo esté firme y plástico; sin cemento.",
  "Form a smooth ball of 200 g.": "Forme una bola lisa de 200 g.",
  "Let it fall from 2 m on the floor and measure the flattened width.":
    "Déjela caer desde 2 m al suelo y mida el ancho aplastado.",
  "Mass of the ball": "Masa de la bola",
  "Flattened width": "Ancho aplastado",
  "Cracks: none, few, many, fell apart": "Grietas: ninguna, pocas, muchas, se deshizo",
  "Flattened to less than 50 mm": "Aplastada menos de 50 mm",
  "As stiff as this test is made for: the cracks may be compared with other soils":
    "Tan firme como pide este ensayo: las grietas pueden compararse con las de otros suelos",
  "It falls apart": "Se deshace",
  "Little clay, weak binding": "Poca arcilla, liga débil",
  "A small ball of it, 20 to 30 mm, is crushed only with much force":
    "Una bola pequeña, de 20 a 30 mm, solo se aplasta con mucha fuerza",
  "Rich in clay: sand may have to be added": "Rico en arcilla: quizá haya que añadir arena",
  "Whether a mix is moist enough to ram, or how much clay there is in percent.":
    "Si una mezcla está bastante húmeda para apisonar, o cuánta arcilla hay en porcentaje.",
  "Liquid and plastic limit, and a sedimentation test; binding force where it is asked for":
    "Límites líquido y plástico, y un ensayo de sedimentación; la fuerza de cohesión donde se pida",
  "the ball and drop of the moist mix, from shoulder height, which asks about its moisture":
    "la bola y caída de la mezcla húmeda, desde la altura del hombro, que pregunta por su humedad",
  "Berge, The Ecology of Building Materials, after DIN 18952: 200 g, 2 m, 50 mm (read); Minke, Building with Earth, figures 2.8 and 2.9 (read, photographs not seen)":
    "Berge, The Ecology of Building Materials, según DIN 18952: 200 g, 2 m, 50 mm (leído); Minke, Building with Earth, figuras 2.8 y 2.9 (leído, fotografías no vistas)",
  Ribbon: "Cinta",
  "How well does the plastic soil hold together?": "¿Cuánto se mantiene unido el suelo plástico?",
  "Smooth board, ruler, water": "Tabla lisa, regla, agua",
  "Take out all that is coarser than sand; knead with water until it does not stick to the hand.":
    "Quite todo lo más grueso que la arena; amase con agua hasta que no se pegue a la mano.",
  "Roll to the thickness of a finger, press flat, and push it slowly over the edge of the board.":
    "Forme un rollo del grosor de un dedo, aplástelo y empújelo despacio sobre el borde de la tabla.",
  "Measure the piece that breaks off. Do it five times.":
    "Mida el trozo que se rompe. Hágalo cinco veces.",
  "Thickness of the ribbon": "Grosor de la cinta",
  "Lengths that broke off, five times": "Longitudes que se rompieron, cinco veces",
  Mean: "Media",
  "Did it stick to the hand?": "¿Se pegó a la mano?",
  "80 to 120 mm": "de 80 a 120 mm",
  "Clay in the range often wanted": "Arcilla en el intervalo deseado a menudo",
  "50 to 150 mm (2 to 6 in)": "de 50 a 150 mm (2 a 6 in)",
  "Taken as usable by one builder": "Un constructor lo da por utilizable",
  "Over 200 mm": "Más de 200 mm",
  "Binds strongly: expect shrinkage": "Liga mucho: espere retracción",
  "Breaks at once": "Se rompe enseguida",
  "Little clay, or too dry: knead again": "Poca arcilla, o demasiado seco: amase otra vez",
  "The clay content. Thickness, moisture and the hand change the length; the limits of different texts do not agree.":
    "El contenido de arcilla. El grosor, la humedad y la mano cambian la longitud; los límites de los distintos textos no coinciden.",
  "Liquid and plastic limit": "Límites líquido y plástico",
  "the thread rolled to 3 mm, which is the plastic limit's own procedure without a scale":
    "el rollito de 3 mm, que es el procedimiento del propio límite plástico sin balanza",
  "80 to 120 mm: SAZS 724 and the code of practice behind it (from memory); 2 to 6 in: a builder's web page (read); over 20 cm: Minke, Building with Earth, on a garbled mirror (read)":
    "de 80 a 120 mm: SAZS 724 y el código de práctica en que se basa (de memoria); de 2 a 6 in: página web de un constructor (leído); más de 20 cm: Minke, Building with Earth, en una copia defectuosa (leído)",
  "Long shrinkage box": "Caja larga de retracción",
  "How much does the soil shrink when it dries from very wet?":
    "¿Cuánto retrae el suelo al secarse desde muy húmedo?",
  "Smooth box 600 × 40 × 40 mm inside, oil, ruler, shade":
    "Caja lisa de 600 × 40 × 40 mm por dentro, aceite, regla, sombra",
  "Sieve at 5 to 6 mm; add water until a groove in it just closes on ten taps.":
    "Tamice por 5 a 6 mm; añada agua hasta que un surco apenas se cierre con diez golpes.",
  "Oil the box, fill it without gaps, strike level.":
    "Aceite la caja, llénela sin huecos y enrásela.",
  "Dry in shade for 10 days, or in sun for 5. Push all pieces to one end.":
    "Seque a la sombra 10 días, o al sol 5. Empuje todos los trozos hacia un extremo.",
  "Measure the gap at the other end.": "Mida el hueco en el otro extremo.",
  "Length of the box inside": "Longitud interior de la caja",
  "Gap after drying": "Hueco tras el secado",
  "Gap in percent of the length": "Hueco en porcentaje de la longitud",
  "Humped, cracked across, or whole?": "¿Combado, agrietado a lo ancho o entero?",
  "Gap of 0 to 12 mm in 600 mm": "Hueco de 0 a 12 mm en 600 mm",
  "For pressed blocks, one maker's table has 1 cement to 18 soil by loose volume":
    "Para bloques prensados, la tabla de un fabricante da 1 de cemento por 18 de suelo en volumen suelto",
  "12 to 24 mm": "de 12 a 24 mm",
  "The same table: 1 to 16": "La misma tabla: 1 por 16",
  "25 to 39 mm": "de 25 a 39 mm",
  "The same table: 1 to 14": "La misma tabla: 1 por 14",
  "40 to 50 mm": "de 40 a 50 mm",
  "The same table: 1 to 12": "La misma tabla: 1 por 12",
  "More than 50 mm": "Más de 50 mm",
  "Outside that table: add sand and test again":
    "Fuera de esa tabla: añada arena y repita el ensayo",
  "The cement of a rammed wall: the table is for pressed blocks, and an older table breaks at 15, 30, 45 and 60 mm (from memory). Nor is this gap the linear shrinkage of the laboratory, or the drying shrinkage of rammed material: never hold one against another's limit.":
    "El cemento de un muro apisonado: la tabla es para bloques prensados, y una tabla más antigua corta en 15, 30, 45 y 60 mm (de memoria). Tampoco es este hueco la retracción lineal de laboratorio, ni la retracción de secado del material apisonado: nunca se juzgue una con el límite de otra.",
  "Linear shrinkage in the standard mould, and block strengths for the cement":
    "Retracción lineal en el molde normalizado, y resistencias de probetas para el cemento",
  "the laboratory bar of linear shrinkage, 140 mm long":
    "la barra de laboratorio de la retracción lineal, de 140 mm",
  "Nyagah, How to test your soil when making construction blocks (read); steps and days: Intermediate Technology Development Group, Technical Advice Note 2 (read)":
    "Nyagah, How to test your soil when making construction blocks (leído); pasos y días: Intermediate Technology Development Group, Technical Advice Note 2 (leído)",
  "Wash and smell": "Lavado y olor",
  "Are the fines clay or silt, and is there humus in it?":
    "¿Son los finos arcilla o limo, y hay humus?",
  "Bare hands without a cut, no cement on them; water; a fresh damp sample":
    "Manos desnudas sin cortes ni cemento; agua; una muestra fresca y húmeda",
  "Smell the fresh sample; warm it in the hand and smell again.":
    "Huela la muestra fresca; caliéntela en la mano y huela otra vez.",
  "Rub it wet between the hands, then rinse.": "Frótela mojada entre las manos y aclare después.",
  "Smell: none, musty, like a wood's floor": "Olor: ninguno, a moho, como el suelo de un bosque",
  "Colour; roots or leaves seen?": "Color; ¿se ven raíces u hojas?",
  "Rinses off: at once, with rubbing, hardly": "Se aclara: enseguida, frotando, apenas",
  "Musty, dark, with roots": "A moho, oscuro, con raíces",
  "Humus: do not use; it hinders the setting of cement":
    "Humus: no usar; estorba el fraguado del cemento",
  "Topsoil, above about 0.4 m": "Tierra vegetal, por encima de unos 0,4 m",
  "To be avoided": "Ha de evitarse",
  "Gritty, rinses off at once": "Áspero, se aclara enseguida",
  Sandy: "Arenoso",
  "Floury, comes off with rubbing": "Harinoso, sale frotando",
  Silty: "Limoso",
  "Soapy, sticks, hardly comes off": "Jabonoso, pegajoso, apenas sale",
  Clayey: "Arcilloso",
  "Amounts, salts or sulphate: those neither smell nor feel.":
    "Las cantidades, ni sales o sulfatos: esos ni huelen ni se notan.",
  "Organic content and sulphate by a laboratory; liquid and plastic limit for the fines":
    "Materia orgánica y sulfatos en laboratorio; límites líquido y plástico para los finos",
  "common practice, no source; topsoil above 40 cm and pH below 6 to be avoided: Minke, Building with Earth (read)":
    "práctica común, sin fuente; evítense la tierra vegetal por encima de 40 cm y un pH menor que 6: Minke, Building with Earth (leído)",
  "{0} settings of {1} days each, {2} days in all, stripped after {3} h as entered; local rules and curing govern.":
    "{0} puestas de {1} días cada una, {2} días en total, con desencofrado a las {3} h como se indicó; mandan las reglas locales y el curado.",
  "Soil dug on site, by hand to by machine": "Suelo excavado en la obra, de a mano a con máquina",
  "0 by definition for hand work; upper end the rammed-soil entry of ICE V2.0, 2011, from memory":
    "0 por definición en trabajo a mano; extremo superior: la entrada de suelo apisonado de ICE V2.0, 2011, de memoria",
  "Sand and gravel from a pit or quarry": "Arena y grava de foso o cantera",
  "ICE V2.0, 2011, and V3.0, 2019, from memory; both editions have been replaced":
    "ICE V2.0, 2011, y V3.0, 2019, de memoria; ambas ediciones han sido sustituidas",
  "Lorry, part empty on the way back": "Camión, en parte vacío a la vuelta",
  "order of magnitude of freight emission tables, from memory":
    "orden de magnitud de tablas de emisiones del transporte, de memoria",
  "{0} to {1} kg CO2e for making and haul of the materials.":
    "De {0} a {1} kg CO2e por fabricación y transporte de los materiales.",
  "No factor for {0}: not in the total.": "Sin factor para {0}: no está en el total.",
  "{0} per m3": "{0} por m3",
  "{0} is priced by volume, but its loose bulk density is missing.":
    "{0} tiene precio por volumen, pero falta su densidad aparente suelta.",
  "a loose bulk density, or a price per tonne":
    "una densidad aparente suelta, o un precio por tonelada",
  "Measure the loose bulk density.": "Mídase la densidad aparente suelta.",
  "Materials only, tonnes taken {0}.": "Solo materiales, toneladas tomadas {0}.",
  "Materials only, without {0} of {1} that have no usable price.":
    "Solo materiales, sin {0} de {1} que no tienen un precio utilizable.",
  "This mix costs less at all prices given.":
    "Esta mezcla cuesta menos con todos los precios dados.",
  "This mix costs more at all prices given.": "Esta mezcla cuesta más con todos los precios dados.",
  "Which mix costs less depends on the prices within their ranges.":
    "Qué mezcla cuesta menos depende de los precios dentro de sus intervalos.",
  "{0}: the loose heap is as dense as its grains or denser.":
    "{0}: el montón suelto es tan denso como sus granos o más.",
  "below {0} kg/m³, the density of the grains": "menos de {0} kg/m³, la densidad de los granos",
  "Check both densities and their units.": "Compruébense ambas densidades y sus unidades.",
  "{0}: all pores of the loose heap are full at {1} % of the dry mass, so it cannot hold {2} %.":
    "{0}: todos los poros del montón suelto están llenos con el {1} % de la masa seca, así que no puede contener {2} %.",
  "at most {0} %": "{0} % como máximo",
  "Check that the moisture is a percentage of the dry mass, and measure it again on a drained sample.":
    "Compruébese que la humedad sea un porcentaje de la masa seca y mídase otra vez en una muestra escurrida.",
  "{0} has no price, so it is not in the total.":
    "{0} no tiene precio, así que no está en el total.",
  "a price with its unit, 0 where it costs nothing":
    "un precio con su unidad, 0 donde no cuesta nada",
  "Add the price to the study.": "Añádase el precio al estudio.",
  "{0} to {1}": "de {0} a {1}",
  "{0}: the {1} has no unit, so nobody knows what it is for.":
    "{0}: {1} sin unidad, así que nadie sabe para qué es.",
  "per t, per m3, per bag, or per load for haul":
    "per t, per m3, per bag, o per load para el transporte",
  "Write the unit beside the {0}.": "Escríbase la unidad junto a {0}.",
  "the mass": "la masa",
  "a loose bulk density": "una densidad aparente suelta",
  "the mass of a bag": "la masa de un saco",
  "what a lorry takes": "lo que lleva un camión",
  "{0} per {1}": "{0} por {1}",
  "{0}: the {1} is per {2}, but {3} is missing.": "{0}: {1} es por {2}, pero falta {3}.",
  "Give {0}, or a {1} per tonne.": "Dese {0}, o {1} por tonelada.",
  Cement: "Cemento",
  "The materials bring more water than the mix may have: {0} kg too much in this batch.":
    "Los materiales traen más agua de la que la mezcla puede tener: {0} kg de más en esta amasada.",
  "at most {0} % moisture": "{0} % de humedad como máximo",
  "Dry the soil before mixing, cover the heaps, and measure the moisture again.":
    "Séquese el suelo antes de amasar, cúbranse los montones y mídase otra vez la humedad.",
  "The materials are wetter than the mix may be: dry the soil.":
    "Los materiales están más húmedos de lo que puede estar la mezcla: séquese el suelo.",
  "A loose bulk density is missing, so volumes are not given.{0}":
    "Falta una densidad aparente suelta, así que no se dan volúmenes.{0}",
  " The mixer's volume cannot be used; masses are for {0} kg of dry soil and aggregate.":
    " El volumen de la amasadora no puede usarse; las masas son para {0} kg de suelo y áridos secos.",
  "Cement {0} % of the dry mass of soil and aggregate, cement not counted in that mass.":
    "Cemento {0} % de la masa seca de suelo y áridos, sin contar el cemento en esa masa.",
  "The flooded sand stands higher than the damp: read both heights again.":
    "La arena inundada queda más alta que la húmeda: léanse otra vez ambas alturas.",
  "A bucket of this damp sand holds {0} % less dry sand than a bucket of it dry.":
    "Un cubo de esta arena húmeda contiene {0} % menos arena seca que un cubo de ella seca.",
  "{0} kg of cement stand where {1} kg of concrete would have stood. To call that {2} % less cement sets cement against stone: the concrete would have held {3} to {4} kg of cement, so the saving is {5} to {6} %.":
    "{0} kg de cemento están donde habrían estado {1} kg de hormigón. Llamar a eso {2} % menos cemento es comparar cemento con piedra: el hormigón habría llevado de {3} a {4} kg de cemento, así que el ahorro es del {5} al {6} %.",
  "A loose bulk density is missing, so there are no parts by volume.":
    "Falta una densidad aparente suelta, así que no hay partes por volumen.",
  "No ratio of whole parts up to {0} in all keeps the cement content. Allow more parts, or weigh the cement.":
    "Ninguna relación de partes enteras hasta {0} en total mantiene el contenido de cemento. Admítanse más partes o pésese el cemento.",
  "These parts hold {0} % cement by dry mass of soil and aggregate; the recipe asks for {1} %.":
    "Estas partes contienen {0} % de cemento sobre la masa seca de suelo y áridos; la dosificación pide {1} %.",
  "Parts without cement.": "Partes sin cemento.",
  "The wall's {0} is not above zero.": "La medida {0} del muro no es mayor que cero.",
  "A lift is deeper than the wall is high.": "Una tongada es más alta que el muro.",
  "An opening of {0} m by {1} m does not fit the wall.":
    "Un hueco de {0} m por {1} m no cabe en el muro.",
  "The openings together are as large as the wall or larger.":
    "Los huecos juntos son tan grandes como el muro o más.",
  "The wall's measures do not hold together, so there are no quantities.":
    "Las medidas del muro no concuerdan, así que no hay cantidades.",
  "{0} m³ of wall, {1} m³ to make with {2} % waste.":
    "{0} m³ de muro, {1} m³ por preparar con {2} % de merma.",
  "The materials alone make the mix {0} % wet, above the window: dry them first.":
    "Los materiales solos dejan la mezcla con {0} % de agua, por encima de la ventana: séquense antes.",
  "Ram between {0} and {1} %, best at {2} %.": "Apisónese entre {0} y {1} %, lo mejor con {2} %.",
  "The scale's step of {0} kg is too coarse for {1}: make the batch larger or use a finer scale.":
    "El escalón de la balanza, {0} kg, es demasiado grueso para {1}: hágase mayor la amasada o úsese una balanza más fina.",
  "Weighed to {0} kg the batch holds {1} % cement; the recipe asks for {2} %. No share moves by more than {3} points.":
    "Pesada con escalones de {0} kg, la amasada contiene {1} % de cemento; la dosificación pide {2} %. Ninguna proporción cambia más de {3} puntos.",
  "A loose bulk density is missing, so buckets cannot be counted.":
    "Falta una densidad aparente suelta, así que no pueden contarse cubos.",
  whole: "enteros",
  half: "medios",
  "No count of {0} buckets of {1} L up to {2} in all holds every material{3}. Take a smaller bucket, a larger mixer, or weigh.":
    "Ningún número de cubos {0} de {1} L hasta {2} en total contiene todos los materiales{3}. Tómese un cubo menor, una amasadora mayor, o pésese.",
  " and enough cement": " y bastante cemento",
  "Rounding to buckets moves no share by more than {0} points{1}.":
    "Redondear a cubos no cambia ninguna proporción más de {0} puntos{1}.",
  "; the batch holds {0} % cement, the recipe asks for {1} %":
    "; la amasada contiene {0} % de cemento, la dosificación pide {1} %",
};
