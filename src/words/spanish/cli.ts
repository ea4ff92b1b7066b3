/** The sentences of `cli/` in Spanish, by their English text. */
export const SPANISH_CLI: Readonly<Record<string, string>> = {
  "Usual reading errors put the fines of {0} between {1} and {2} %: your laboratory's own, under “reading-errors”, make that interval its own.":
    "Errores de lectura habituales ponen los finos de {0} entre {1} y {2} %: los de su propio laboratorio, en “reading-errors”, hacen suyo ese intervalo.",
  "How often the blend keeps to its limits from load to load is not known: say under “varies” how its materials change.":
    "No se sabe con qué frecuencia la combinación cumple sus límites de una carga a otra: dígase en “varies” cómo cambian sus materiales.",
  "There is no compaction sheet: without it there is no water content to aim at, and so no mix.":
    "No hay hoja de compactación: sin ella no hay humedad a la que apuntar, y por tanto no hay mezcla.",
  "Nothing has a price: with “price” entries the cost is added up.":
    "Nada tiene precio: con entradas “price” se suma el coste.",
  "The blocks leave the cement content open between {0} and {1} %: more blocks of those contents (loambook plan) narrow that.":
    "Las probetas dejan abierto el contenido de cemento entre {0} y {1} %: más probetas de esos contenidos (loambook plan) lo estrechan.",
  "{0} has no hydrometer or pipette sheet: below {1} mm {2} points of the blend's curve are assumed, and its clay and silt are not told apart.":
    "{0} no tiene hoja de hidrómetro ni de pipeta: por debajo de {1} mm se suponen {2} puntos de la curva de la combinación, y no se separan su arcilla y su limo.",
  "{0} has no limits sheet: its plasticity index, and the classes and limits that ask for it, stay open.":
    "{0} no tiene hoja de límites: quedan abiertos su índice de plasticidad y las clases y límites que lo piden.",
  "The limits sheet of {0} has no shrinkage bar: linear shrinkage is not judged.":
    "La hoja de límites de {0} no tiene barra de retracción: no se juzga la retracción lineal.",
  "Technical appendix: soil, blend, strength and mix":
    "Anejo técnico: suelo, combinación, resistencia y mezcla",
  "rammed earth": "tierra apisonada",
  "cement-stabilised earth": "tierra estabilizada con cemento",
  grading: "granulometría",
  blend: "combinación",
  "compressive strength": "resistencia a compresión",
  "1 warning": "1 advertencia",
  "{0} warnings": "{0} advertencias",
  "{0} ({1}): the least cement, now {2} %, rests on it.":
    "{0} ({1}): el contenido mínimo de cemento, ahora {2} %, se apoya en ello.",
  "{0} ({1}): the least cement rests on it.":
    "{0} ({1}): el contenido mínimo de cemento se apoya en ello.",
  "Sheets of {0} ({1}): it is {2} % of the blend.":
    "Hojas de {0} ({1}): es el {2} % de la combinación.",
  "Sheets of {0} ({1}): it takes no part in the blend, so nothing in the mix rests on them.":
    "Hojas de {0} ({1}): no entra en la combinación, así que nada de la mezcla se apoya en ellas.",
  "Compaction test ({0}): the water of the mix rests on it.":
    "Ensayo de compactación ({0}): el agua de la mezcla se apoya en él.",
  "Elsewhere ({0}): read them before the numbers are used.":
    "En otros sitios ({0}): léanse antes de usar los números.",
  "This study is marked “invented: true”: its numbers are nobody's, and every page says so.":
    "Este estudio está marcado “invented: true”: sus números no son de nadie, y cada página lo dice.",
  "Look at these first": "Mire primero esto",
  "What would be known better": "Qué se sabría mejor",
  Then: "Después",
  "loambook appendix {0} makes the technical appendix.":
    "loambook appendix {0} hace el anejo técnico.",
};
