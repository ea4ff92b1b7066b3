/** The sentences of `guidance/` in Spanish, by their English text. */
export const SPANISH_GUIDANCE: Readonly<Record<string, string>> = {
  "Local code and licensed practice": "Normativa local y ejercicio habilitado",
  "Many places ask for a permit and for the seal of a licensed engineer or architect before earth walls bear load. Nothing here is an approval; whether a wall may be built is for them and for the building official.":
    "En muchos lugares se pide licencia y la firma de un ingeniero o arquitecto habilitado antes de que un muro de tierra lleve carga. Nada de lo que hay aquí es una aprobación; si un muro puede construirse lo deciden ellos y la autoridad de edificación.",
  "common practice, no source": "práctica común, sin fuente",
  "Wet cement burns": "El cemento fresco quema",
  "Wet cement is strongly alkaline and burns skin and eyes, often without pain at first. Wear waterproof gloves, long sleeves and goggles; rinse with plenty of water at once; see a doctor for eyes.":
    "El cemento fresco es muy alcalino y quema la piel y los ojos, a menudo sin dolor al principio. Úsense guantes impermeables, manga larga y gafas cerradas; aclárese enseguida con mucha agua; en caso de los ojos, acúdase al médico.",
  "from memory: general practice for cement work":
    "de memoria: práctica general en trabajos con cemento",
  "Silica dust": "Polvo de sílice",
  "Dry soil, sand and cement give off fine silica dust that damages lungs for good. Sieve and mix damp or outdoors, keep others away, wear a fitted respirator for fine dust.":
    "El suelo seco, la arena y el cemento sueltan polvo fino de sílice que daña los pulmones para siempre. Críbese y amásese en húmedo o al aire libre, manténganse alejadas otras personas, úsese una mascarilla ajustada para polvo fino.",
  "from memory: general practice for dusty work":
    "de memoria: práctica general en trabajos con polvo",
  "Pressure on the forms": "Empuje sobre los encofrados",
  "Ramming pushes forms outward harder than fresh concrete of the same lift would, and no published value of that pressure was found. Have forms, ties and braces designed for it, check them before each lift, and keep people clear of the form’s face while ramming.":
    "El apisonado empuja los encofrados hacia fuera con más fuerza que el hormigón fresco de la misma tongada, y no se encontró ningún valor publicado de ese empuje. Encárguese el cálculo de encofrados, tirantes y puntales, revísense antes de cada tongada y no se permita a nadie estar delante de la cara del encofrado mientras se apisona.",
  "search for a published pressure found none; the rest from memory":
    "una búsqueda no encontró ningún empuje publicado; lo demás, de memoria",
  "Lifting and vibration": "Levantar pesos y vibraciones",
  "Bags of more than about 23 kg call for two people or a lifting aid. Pneumatic rammers shake hands and arms: take turns and breaks.":
    "Los sacos de más de unos 23 kg piden dos personas o un medio de elevación. Los pisones neumáticos sacuden manos y brazos: túrnense y descansen.",
  "from memory: general practice": "de memoria: práctica general",
  "Work at height": "Trabajo en altura",
  "Walls grow past the height from which a fall does harm. Use scaffolds and guard rails; never stand on a form or on a fresh wall’s edge.":
    "Los muros crecen por encima de la altura desde la que una caída hace daño. Úsense andamios y barandillas; nunca hay que ponerse de pie sobre un encofrado ni sobre el borde de un muro fresco.",
  "Cured strength before loading": "Resistencia curada antes de cargar",
  "Do not load a wall before blocks of its own mix, cured as the wall was, reached the strength asked for. Cement-stabilised earth needs damp curing; a laboratory age of 28 days is the usual measure. Block strength is not wall strength.":
    "No se cargue un muro antes de que probetas de su propia mezcla, curadas como el muro, alcancen la resistencia pedida. La tierra estabilizada con cemento necesita curado húmedo; la edad habitual de laboratorio es de 28 días. La resistencia de la probeta no es la del muro.",
  "Strength falls when wet": "La resistencia baja en húmedo",
  "Wet strength of cement-stabilised rammed earth was found near 60 % of the dry strength in one set of tests. Test soaked where a wall can get wet.":
    "En una serie de ensayos la resistencia húmeda de tierra apisonada estabilizada con cemento fue cerca del 60 % de la seca. Ensáyese en inmersión donde un muro pueda mojarse.",
  "Venkatarama Reddy and Prasanna Kumar, Compressive strength and elastic properties of stabilised rammed earth and masonry, abstract (read)":
    "Venkatarama Reddy y Prasanna Kumar, Compressive strength and elastic properties of stabilised rammed earth and masonry, resumen (leído)",
  "Time between mixing and ramming": "Tiempo entre amasado y apisonado",
  "Cement begins to set as soon as it meets moist soil: a delay of ten hours halved the strength in one set of tests. Mix only what can be rammed at once.":
    "El cemento empieza a fraguar en cuanto toca el suelo húmedo: en una serie de ensayos una demora de diez horas redujo la resistencia a la mitad. Amásese solo lo que pueda apisonarse enseguida.",
  "Venkatarama Reddy and Prasanna Kumar 2011, Cement stabilised rammed earth, Part A, abstract (read)":
    "Venkatarama Reddy y Prasanna Kumar 2011, Cement stabilised rammed earth, Part A, resumen (leído)",
  "Water and frost": "Agua y helada",
  "Keep rain, splash and rising damp away from the wall with a plinth, an overhang and drainage, and fresh work from frost. Blocks that pass in the laboratory say little about frost.":
    "Protéjase el muro de la lluvia, las salpicaduras y la humedad del terreno con zócalo, alero y drenaje, y la obra fresca de las heladas. Que las probetas pasen en el laboratorio dice poco sobre la helada.",
  "Lying inside published limits is no proof that a soil is suitable: ten soils made to meet such gradings led Ciancio, Jaquin and Walker (2013, Constr. Build. Mater. 42, abstract read) to conclude from strength, shrinkage and erosion that grading alone does not establish it. Lying outside is no proof of the opposite. Tests on the mix itself decide.":
    "Estar dentro de límites publicados no prueba que un suelo sea adecuado: con diez suelos hechos según tales granulometrías, Ciancio, Jaquin y Walker (2013, Constr. Build. Mater. 42, resumen leído) concluyeron de la resistencia, la retracción y la erosión que la granulometría sola no lo establece. Estar fuera tampoco prueba lo contrario. Deciden los ensayos de la propia mezcla.",
  "liquid limit": "límite líquido",
  "silt and clay": "limo y arcilla",
  "sand and gravel": "arena y grava",
  "linear shrinkage, plasticity index and sand together":
    "retracción lineal, índice de plasticidad y arena en conjunto",
  "{0}: not measured.": "{0}: no medido.",
  "An envelope that this study brought along; where it comes from was not checked.":
    "Un huso que trajo este estudio; no se comprobó de dónde viene.",
  "The numbers were read in the source named": "Los números se leyeron en la fuente citada",
  "The numbers are from memory (confidence {0}): check them in the source before citing":
    "Los números son de memoria (seguridad {0}): compruébense en la fuente antes de citarlos",
  "{0}; the points of passing are derived by us from the fraction limits, not a published curve.":
    "{0}; los puntos de lo que pasa los derivamos nosotros de los límites de las fracciones, no es una curva publicada.",
  "organic matter": "materia orgánica",
  "soluble salts": "sales solubles",
  "largest grain": "grano mayor",
  "dry density": "densidad seca",
  "plastic limit": "límite plástico",
  "from {0} ": "desde {0} ",
  "up to {0} ": "hasta {0} ",
  "{0}: not measured; asked for {1}.": "{0}: no medido; se pide {1}.",
  "{0}: {1} {2}, asked for {3}: {4}.": "{0}: {1} {2}, se pide {3}: {4}.",
  inside: "dentro",
  outside: "fuera",
  ", {0} % here": ", {0} % aquí",
  "{0} asks for {1} ({2})": "{0} pide {1} ({2})",
  " No soil meets all of them.": " Ningún suelo los cumple todos.",
  "up to {0} mm": "hasta {0} mm",
  "{0} to {1} mm": "de {0} a {1} mm",
  "above {0} mm": "mayor que {0} mm",
  "up to {0} %": "hasta {0} %",
  "from {0} %": "desde {0} %",
  "{0} to {1} %": "de {0} a {1} %",
  "Soil for stabilised blocks": "Suelo para bloques estabilizados",
  "section text": "texto del apartado",
  "Outside the shrinkage: reject or blend. The clay content is for cohesion, after BRU 1974.":
    "Fuera de la retracción: deséchese o combínese. El contenido de arcilla es para la cohesión, según BRU 1974.",
  "Compressed earth blocks, Africa": "Bloques de tierra comprimida, África",
  "grading and plasticity zones (not read)": "zonas de granulometría y plasticidad (no leídas)",
  "The drawn zone is the real criterion; these are the corners of it.":
    "La zona dibujada es el criterio verdadero; estas son sus esquinas.",
  "Soil blocks, India": "Bloques de suelo, India",
  "soil clause (not read)": "apartado de suelos (no leído)",
  "Revised in 2013 and 2023; recalled from the edition of 1982.":
    "Revisada en 2013 y 2023; se recuerda la edición de 1982.",
  "Clay in rammed earth": "Arcilla en tierra apisonada",
  "whole page": "página completa",
  "12 % is called ideal, 30 % the most. The size that ends clay is not said.":
    "El 12 % se llama ideal y el 30 % el máximo. No se dice en qué tamaño acaba la arcilla.",
  "Proportions after Easton, secondary": "Proporciones según Easton, fuente secundaria",
  "wiki page Proporciones de la tierra": "página wiki Proporciones de la tierra",
  "The page says clay 5 to 30 % and names no silt; clay is taken here for all fines, or nothing would be left for silt.":
    "La página dice arcilla del 5 al 30 % y no nombra el limo; aquí se toma arcilla por todos los finos, o no quedaría nada para el limo.",
  "Dry density of rammed earth": "Densidad seca de la tierra apisonada",
  "abstract and first paragraph": "resumen y primer párrafo",
  "A range met in practice, told as context; not a limit of suitability.":
    "Un intervalo hallado en la práctica, dado como contexto; no es un límite de idoneidad.",
  "Review of published limits, United Kingdom": "Revisión de límites publicados, Reino Unido",
  "sec. 3.2.2 (heading read, numbers not)": "apart. 3.2.2 (título leído, números no)",
  "Sums up others: least fines of 20 to 25 %, most of 30 to 35 %; least sand 50 to 55 %, most 70 to 75 %. The outer ends are taken.":
    "Resume a otros: mínimo de finos del 20 al 25 %, máximo del 30 al 35 %; mínimo de arena del 50 al 55 %, máximo del 70 al 75 %. Se toman los extremos exteriores.",
  "Soil for rammed earth, New Mexico": "Suelo para tierra apisonada, Nuevo México",
  "soil specification subsection (not read)": "subapartado de especificación del suelo (no leído)",
  "Rock up to 1½ in, clay lumps up to ½ in, no organic matter, salts up to 2 %.":
    "Piedras hasta 1½ in, terrones de arcilla hasta ½ in, sin materia orgánica, sales hasta el 2 %.",
  "Rammed earth, Germany": "Tierra apisonada, Alemania",
  "Stampflehm section (not read)": "apartado Stampflehm (no leído)",
  "Its drying shrinkage of at most 2 % is that of a test prism as rammed, not of the laboratory bar: it is not compared here.":
    "Su retracción de secado del 2 % como máximo es la de un prisma de ensayo apisonado, no la de la barra de laboratorio: aquí no se compara.",
  "Soil-cement walls rammed in place, India": "Muros de suelo-cemento apisonados in situ, India",
  "Recalled with little confidence; only the front matter was seen.":
    "Recordado con poca seguridad; solo se vieron las páginas preliminares.",
  "Unstabilised rammed earth, France": "Tierra apisonada sin estabilizar, Francia",
  "opening of the article": "comienzo del artículo",
  "Silt ends at 0.02 mm here, not at 0.063: do not compare its silt with that of other entries. Cobbles to 100 mm count with sand and gravel.":
    "Aquí el limo acaba en 0,02 mm, no en 0,063: no se compare su limo con el de otras entradas. Los bolos hasta 100 mm cuentan con la arena y la grava.",
  "Clay in compressed blocks and rammed earth": "Arcilla en bloques comprimidos y tierra apisonada",
  introduction: "introducción",
  "Approximate. The size that ends clay is not said; 0.002 mm is taken.":
    "Aproximado. No se dice en qué tamaño acaba la arcilla; se toma 0,002 mm.",
  "Favourable soils for stabilised rammed earth, thesis":
    "Suelos favorables para tierra apisonada estabilizada, tesis",
  abstract: "resumen",
  "90 % of such soils reached 2 MPa. The two other classes were cut off in the copy read. The same author’s paper of 2008 draws the lines elsewhere.":
    "El 90 % de tales suelos alcanzó 2 MPa. Las otras dos clases estaban cortadas en la copia leída. El artículo de 2008 del mismo autor traza los límites en otro sitio.",
  "Soil criteria for stabilisation at 2 MPa": "Criterios de suelo para estabilizar a 2 MPa",
  "abstract (TRIS accession 01091532)": "resumen (registro TRIS 01091532)",
  "The abstract does not say which sizes it calls sand; 0.063 to 2 mm is taken. Its shrinkage is that of a laboratory bar, not of a wall.":
    "El resumen no dice a qué tamaños llama arena; se toma de 0,063 a 2 mm. Su retracción es la de una barra de laboratorio, no la de un muro.",
  "Fines of a soil to be stabilised, builder’s rule, California":
    "Finos de un suelo que se va a estabilizar, regla de constructor, California",
  opening: "comienzo",
  "A builder’s opinion: with cement at least 8 to 10 % fines; above 25 % passing 0.075 mm sand probably has to be added.":
    "Opinión de un constructor: con cemento, finos del 8 al 10 % como mínimo; si pasa más del 25 % por 0,075 mm, probablemente haya que añadir arena.",
  "Rammed earth guidelines, United Kingdom": "Guía de tierra apisonada, Reino Unido",
  "soil selection (place not recalled)": "selección del suelo (lugar no recordado)",
  "Recalled with boundaries 0.002, 0.06 and 2 mm; 0.063 mm is used. For unstabilised earth.":
    "Recordado con los límites 0,002, 0,06 y 2 mm; se usa 0,063 mm. Para tierra sin estabilizar.",
  "Code of practice, southern Africa": "Código de práctica, sur de África",
  "That the standard descends from the 1996 book was read; the numbers were not.":
    "Se leyó que la norma procede del libro de 1996; los números no.",
  "Earth building handbook, Australia": "Manual de construcción con tierra, Australia",
  "rammed earth soil table (not read)": "tabla de suelos para tierra apisonada (no leída)",
  "As quoted in later papers. The limits can all be met only with 50 % sand and gravel or more.":
    "Tal como lo citan artículos posteriores. Todos los límites solo pueden cumplirse a la vez con 50 % de arena y grava o más.",
  "Rammed earth composition, France": "Composición de la tierra apisonada, Francia",
  "pisé section (not read)": "apartado pisé (no leído)",
  "High in clay beside the other handbooks; sometimes ascribed to other books.":
    "Alto en arcilla frente a los demás manuales; a veces se atribuye a otros libros.",
  "Soils for soil-cement": "Suelos para suelo-cemento",
  "materials chapter (not read)": "capítulo de materiales (no leído)",
  "Recalled as advice for economical cement contents in pavements, not as a hard limit.":
    "Recordado como consejo para contenidos económicos de cemento en firmes, no como límite estricto.",
  "Not a published recommendation.": "No es una recomendación publicada.",
  "The reading errors do not change this verdict ({0} % of {1} resampled curves).":
    "Los errores de lectura no cambian este veredicto ({0} % de {1} curvas remuestreadas).",
  "Within the reading errors {0} could come out otherwise: {1} % of {2} resampled curves have this verdict.":
    "Dentro de los errores de lectura {0} podría salir de otro modo: {1} % de {2} curvas remuestreadas tienen este veredicto.",
  "sure, {0} %": "seguro, {0} %",
  "likely, {0} %": "probable, {0} %",
  "open, {0} %": "abierto, {0} %",
  "doubtful, {0} %": "dudoso, {0} %",
  "over 99": "más de 99",
  "below 1": "menos de 1",
  incomplete: "incompleto",
  "not measured": "no medido",
  "not classified": "sin clasificar",
  "up to": "hasta",
  "{0} to {1}{2} %": "de {0} a {1}{2} %",
  "{0}: {1} %, asked for {2}": "{0}: {1} %, se pide {2}",
  "{0}: inside by {1} points.": "{0}: dentro por {1} puntos.",
  "{0}: outside by {1} points.": "{0}: fuera por {1} puntos.",
};
