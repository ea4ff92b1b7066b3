/** The sentences of `lab/` in Spanish, by their English text. */
export const SPANISH_LAB: Readonly<Record<string, string>> = {
  "This number has a point, but the sheet is said to write decimal commas.":
    "Este número tiene un punto, pero se dijo que la hoja usa comas decimales.",
  "a decimal comma: {0}, or {1} without thousands":
    "una coma decimal: {0}, o {1} sin separador de millares",
  "Correct the cell, or take “decimal: comma” out of study.yaml.":
    "Corríjase la celda, o quítese “decimal: comma” de study.yaml.",
  "1 error": "1 error",
  "{0} errors": "{0} errores",
  "1 note": "1 nota",
  "{0} notes": "{0} notas",
  "row {0}": "fila {0}",
  "column “{0}”": "columna “{0}”",
  "{0}Expected: {1}": "{0}Se espera: {1}",
  "{0}Way out: {1}": "{0}Qué hacer: {1}",
  "This name has no unit.": "Este nombre no tiene unidad.",
  "The unit “{0}” is not known here.": "La unidad “{0}” no se conoce aquí.",
  "one of {0} in brackets behind the name": "una de {0} entre paréntesis detrás del nombre",
  "Write for example {0}.": "Escríbase por ejemplo {0}.",
  "The sheet gives control readings and a dispersant correction.":
    "La hoja da lecturas de control y una corrección de dispersante.",
  "one of the two, so that they cannot contradict each other":
    "uno de los dos, para que no puedan contradecirse",
  "Keep the control readings where there are any: they hold all corrections in one.":
    "Déjense las lecturas de control donde las haya: contienen todas las correcciones en una.",
  "The sheet says neither what a control cylinder read nor what the dispersant adds.":
    "La hoja no dice ni lo que marcó una probeta de control ni lo que añade el dispersante.",
  "a column “control”, or the line “dispersant correction” above the table":
    "una columna “control”, o la línea “dispersant correction” encima de la tabla",
  "Read a second cylinder of water and dispersant with each reading, or add the line.":
    "Léase con cada lectura una segunda probeta de agua y dispersante, o añádase la línea.",
  "The calibration temperature is not used: the control readings hold the temperature's share.":
    "La temperatura de calibración no se usa: las lecturas de control contienen la parte de la temperatura.",
  "the line only beside a dispersant correction":
    "la línea solo junto a una corrección de dispersante",
  "Nothing to do.": "No hay que hacer nada.",
  "This cell is empty.": "Esta celda está vacía.",
  "a reading": "una lectura",
  "Fill in the reading, or start the row with # to leave it out.":
    "Complétese la lectura, o empiécese la fila con # para omitirla.",
  "hydrometer sheet": "hoja de hidrómetro",
  "This mark of the calibration needs its reading and one distance.":
    "Esta marca de la calibración necesita su lectura y una distancia.",
  "“{0} reading”, and either “{1} depth (mm)” or “{2} to neck (mm)”":
    "“{0} reading”, y “{1} depth (mm)” o “{2} to neck (mm)”",
  "Add the missing line, or take the other one out.":
    "Añádase la línea que falta, o quítese la otra.",
  "The sheet gives measured depths and the dimensions of the bulb.":
    "La hoja da profundidades medidas y las dimensiones del bulbo.",
  "Keep the depths, or keep the marks to the neck with bulb and cylinder.":
    "Déjense las profundidades, o las marcas hasta el cuello con bulbo y probeta.",
  "The dimensions of bulb and cylinder are given only in part.":
    "Las dimensiones de bulbo y probeta se dan solo en parte.",
  "Add the missing lines, or give measured depths in their place.":
    "Añádanse las líneas que faltan, o dense en su lugar profundidades medidas.",
  "The calibration has {0} marks.": "La calibración tiene {0} marcas.",
  "two marks or more": "dos marcas o más",
  "two marks of the scale": "dos marcas de la escala",
  "Measure at the lowest and the highest mark that is read.":
    "Mídase en la marca más baja y en la más alta que se lean.",
  "Two marks of the calibration have the same reading.":
    "Dos marcas de la calibración tienen la misma lectura.",
  "The depth does not fall as the reading rises: a hydrometer that reads more floats higher.":
    "La profundidad no baja al subir la lectura: un hidrómetro que marca más flota más alto.",
  "less than {0} mm, at a higher reading": "menos de {0} mm, con una lectura mayor",
  "Check which distance belongs to which mark.":
    "Compruébese qué distancia corresponde a cada marca.",
  "limits sheet": "hoja de límites",
  "The long box has a length and no shrinkage.": "La caja larga tiene longitud y no retracción.",
  "“long box shrinkage (mm)” beside it": "“long box shrinkage (mm)” junto a ella",
  "Add the line: all gaps of the dry bar pushed together, measured at one end.":
    "Añádase la línea: todos los huecos de la barra seca juntos, medidos en un extremo.",
  "The soil in the long box shrank by as much as the box is long.":
    "El suelo de la caja larga retrajo tanto como mide la caja.",
  "less than {0} mm": "menos de {0} mm",
  "Check whether the dry length stands there in place of the shrinkage.":
    "Compruébese si está ahí la longitud seca en lugar de la retracción.",
  "{0} has no column “{1}”.": "{0} no tiene la columna “{1}”.",
  "a row that holds the header cells named under “columns”":
    "una fila con las celdas de encabezado nombradas en “columns”",
  "a header cell of row {0}: {1}": "una celda de encabezado de la fila {0}: {1}",
  "Write the header cell as it stands in the sheet.":
    "Escríbase la celda de encabezado tal como está en la hoja.",
  "{0} has {1} columns “{2}”.": "{0} tiene {1} columnas “{2}”.",
  "header cells that can be told apart": "celdas de encabezado que puedan distinguirse",
  "Rename the one that is not meant.": "Cámbiese el nombre de la que no se quiere.",
  "{0} has a column “{1}” of its own beside the one mapped to it.":
    "{0} tiene su propia columna “{1}” además de la que se le asigna.",
  "each of our columns once": "cada columna nuestra una vez",
  "Map that column to another name, or rename it in the sheet.":
    "Asígnese esa columna a otro nombre, o cámbiese su nombre en la hoja.",
  "{0} has no line “{1}” above its table.": "{0} no tiene la línea “{1}” encima de su tabla.",
  "the text of a line's first cell": "el texto de la primera celda de una línea",
  "Write it as it stands in the sheet, and check “skip-rows”.":
    "Escríbase tal como está en la hoja, y compruébese “skip-rows”.",
  "{0} has a line “{1}” of its own.": "{0} tiene su propia línea “{1}”.",
  "the line in the sheet, or the fact in study.yaml":
    "la línea en la hoja, o el dato en study.yaml",
  "Take one of the two out.": "Quítese uno de los dos.",
  "No cell of the table of {0} is “{1}”.": "Ninguna celda de la tabla de {0} es “{1}”.",
  "the whole text of a cell below the header": "el texto entero de una celda debajo del encabezado",
  "Write it as it stands in the sheet, or take it out.":
    "Escríbase tal como está en la hoja, o quítese.",
  "The layout of the {0} has no column “{1}”.": "El formato de la {0} no tiene la columna “{1}”.",
  "The layout of the {0} has no line “{1}” above its table.":
    "El formato de la {0} no tiene la línea “{1}” encima de su tabla.",
  "one of {0}": "una de {0}",
  "Write the name with its unit in brackets, for example “sieve (mm)”.":
    "Escríbase el nombre con su unidad entre paréntesis, por ejemplo “sieve (mm)”.",
  "“{0}” is given twice: also by “{1}”.": "“{0}” se da dos veces: también con “{1}”.",
  "each of our names once": "cada nombre nuestro una vez",
  "“pretreatment” with what was done, for example organic matter removed with hydrogen peroxide":
    "“pretreatment” con lo que se hizo, por ejemplo materia orgánica eliminada con agua oxigenada",
  "The sheet does not say how the soil was treated before it was dispersed.":
    "La hoja no dice cómo se trató el suelo antes de dispersarlo.",
  "Write the treatment, or take both lines out where there was none.":
    "Escríbase el tratamiento, o quítense ambas líneas si no lo hubo.",
  "This is not a sieve.": "Esto no es un tamiz.",
  "an opening, a United States designation such as No. 40 or 3/8 in, or pan":
    "una abertura, una designación de Estados Unidos como No. 40 o 3/8 in, o pan (fondo)",
  "Write the opening in the column's unit.": "Escríbase la abertura en la unidad de la columna.",
  "This cell holds text where a number belongs.": "Esta celda contiene texto donde va un número.",
  "a number with a decimal point, without its unit": "un número con punto decimal, sin su unidad",
  "Correct the reading; put remarks in a remark column.":
    "Corríjase la lectura; pónganse las notas en una columna remark.",
  "This value is outside what can be measured.": "Este valor queda fuera de lo que puede medirse.",
  "Check the reading against the lab's own sheet.":
    "Compruébese la lectura en la propia hoja del laboratorio.",
  "This number is written with a decimal comma.": "Este número está escrito con coma decimal.",
  "a decimal point: {0}": "un punto decimal: {0}",
  "Replace decimal commas by points in the whole sheet.":
    "Sustitúyanse las comas decimales por puntos en toda la hoja.",
  "more than 0": "más de 0",
  "at least {0}": "{0} como mínimo",
  "at most {0}": "{0} como máximo",
  "compaction sheet": "hoja de compactación",
  "The filled mould is not heavier than the empty one.": "El molde lleno no pesa más que el vacío.",
  "more than the mould mass, {0} g": "más que la masa del molde, {0} g",
  "Check the mould mass above the table and this reading.":
    "Compruébense la masa del molde encima de la tabla y esta lectura.",
  "envelope sheet": "hoja de huso",
  "A pan has no opening.": "Un fondo no tiene abertura.",
  "an opening": "una abertura",
  "Take the row out.": "Quítese la fila.",
  "The lower limit is above the upper one.": "El límite inferior está por encima del superior.",
  "low up to high": "de menor a mayor",
  "Check whether the two columns were exchanged.": "Compruébese si se cambiaron las dos columnas.",
  "This sieve stands twice in the sheet.": "Este tamiz figura dos veces en la hoja.",
  "each sieve once": "cada tamiz una vez",
  "Take one of the rows out.": "Quítese una de las filas.",
  "A limit falls below that of the finer sieve {0} mm.":
    "Un límite baja por debajo del del tamiz más fino de {0} mm.",
  "limits of the passing that never fall as size grows":
    "límites de lo que pasa que nunca bajen al crecer el tamaño",
  "Check whether the limits are percent passing, not retained.":
    "Compruébese si los límites son porcentaje que pasa, no retenido.",
  "The file has {0} bytes.": "El archivo tiene {0} bytes.",
  "a lab sheet of at most {0} bytes": "una hoja de laboratorio de {0} bytes como máximo",
  "Keep one test per file, without pictures.": "Un ensayo por archivo, sin imágenes.",
  "an Excel workbook (.xlsx)": "un libro de Excel (.xlsx)",
  "text in UTF-8, one row a line": "texto en UTF-8, una fila por línea",
  "Open the sheet in a spreadsheet program and save it as .xlsx, or as CSV with the ending .csv.":
    "Ábrase la hoja en un programa de hojas de cálculo y guárdese como .xlsx, o como CSV con la terminación .csv.",
  "Save the sheet again as CSV (UTF-8).": "Guárdese la hoja otra vez como CSV (UTF-8).",
  "The sheet has no cells.": "La hoja no tiene celdas.",
  "a sheet with a header row and readings": "una hoja con una fila de encabezado y lecturas",
  "Fill in the sheet, or take it out of study.yaml.":
    "Complétese la hoja, o quítese de study.yaml.",
  "The file is not text in UTF-8.": "El archivo no es texto en UTF-8.",
  "The file holds binary data.": "El archivo contiene datos binarios.",
  "The rows cannot be told apart: {0}.": "Las filas no pueden separarse: {0}.",
  "This hydrometer is not known.": "Este hidrómetro no se conoce.",
  "151H, 152H or BS": "151H, 152H o BS",
  "Read the type off the stem of the instrument.": "Léase el tipo en el vástago del instrumento.",
  "A hydrometer of this kind has no depths that hold for each instrument.":
    "Un hidrómetro de esta clase no tiene profundidades válidas para cada aparato.",
  "“calibration 1 reading” and “calibration 1 depth (mm)”, and so on, above the table":
    "“calibration 1 reading” y “calibration 1 depth (mm)”, y así sucesivamente, encima de la tabla",
  "Copy two marks or more from the instrument's calibration sheet.":
    "Cópiense dos marcas o más de la hoja de calibración del aparato.",
  "This reading is not later than the one above it.":
    "Esta lectura no es posterior a la de encima.",
  "more than {0} min": "más de {0} min",
  "Write the time since the start of sedimentation, in order.":
    "Escríbase el tiempo desde el comienzo de la sedimentación, en orden.",
  "jar sheet": "hoja de frasco",
  "This layer is not the next one.": "Esta capa no es la siguiente.",
  "three rows: sand and gravel, silt, clay":
    "tres filas: sand and gravel, silt, clay (arena y grava, limo, arcilla)",
  "Write the three layers once each, from the bottom up.":
    "Escríbanse las tres capas una vez cada una, de abajo arriba.",
  "The settled soil stands lower than at the reading before.":
    "El suelo asentado está más bajo que en la lectura anterior.",
  "at least {0} mm": "{0} mm como mínimo",
  "Heights are those of the top above the bottom of the jar, read in order.":
    "Las alturas son las de la parte superior sobre el fondo del frasco, leídas en orden.",
  "The table does not have all three layers.": "La tabla no tiene las tres capas.",
  "Add the missing row; a layer that cannot be seen has the top of the one below it.":
    "Añádase la fila que falta; una capa que no se ve tiene la altura de la de debajo.",
  "The soil stands as high as the water.": "El suelo llega tan alto como el agua.",
  "less than the water's {0} mm; a third of it is usual":
    "menos que los {0} mm del agua; lo habitual es un tercio",
  "Check the heights; repeat the test with less soil.":
    "Compruébense las alturas; repítase el ensayo con menos suelo.",
  "This row has neither blows nor a penetration.": "Esta fila no tiene ni golpes ni penetración.",
  "blows of the cup, or the penetration of the cone":
    "golpes de la cuchara, o la penetración del cono",
  "Fill in the reading that was taken.": "Complétese la lectura que se tomó.",
  "This test is not known.": "Este ensayo no se conoce.",
  "liquid limit or plastic limit": "liquid limit o plastic limit (límite líquido o plástico)",
  "Use one of the two names, or start the row with #.":
    "Úsese uno de los dos nombres, o empiécese la fila con #.",
  "The liquid limit rows mix cup and cone.": "Las filas del límite líquido mezclan cuchara y cono.",
  "one method a sheet": "un método por hoja",
  "Give each method a sheet of its own.": "Dese a cada método su propia hoja.",
  "The shrinkage bar has only one of its two lengths.":
    "La barra de retracción tiene solo una de sus dos longitudes.",
  "the wet and the dry length": "la longitud húmeda y la seca",
  "Add the missing line above the table.": "Añádase la línea que falta encima de la tabla.",
  "This row has no water content.": "Esta fila no tiene humedad.",
  "a water content in percent, or the three masses of tin, wet and dry soil":
    "una humedad en porcentaje, o las tres masas de tara, suelo húmedo y suelo seco",
  "Fill in the readings.": "Complétense las lecturas.",
  "These masses cannot belong together.": "Estas masas no pueden ir juntas.",
  "tin < tin + dry soil ≤ tin + wet soil": "tara < tara + suelo seco ≤ tara + suelo húmedo",
  "Check which mass stands in which column.": "Compruébese qué masa está en qué columna.",
  "pipette sheet": "hoja de pipeta",
  "This sample is not later than the one above it.": "Esta muestra no es posterior a la de encima.",
  "The pipette holds as much as the cylinder.": "La pipeta contiene tanto como la probeta.",
  "less than {0} cm³": "menos de {0} cm³",
  "Check the two volumes and their units.": "Compruébense los dos volúmenes y sus unidades.",
  "No row of this {0} holds the column “{1}”.":
    "Ninguna fila de esta {0} contiene la columna “{1}”.",
  "a header row with {0}": "una fila de encabezado con {0}",
  "Name the columns so; the unit stands in brackets behind the name.":
    "Nómbrense así las columnas; la unidad va entre paréntesis detrás del nombre.",
  "This row has {0} cells, but the header has {1}.":
    "Esta fila tiene {0} celdas, pero el encabezado tiene {1}.",
  "one cell for each header cell": "una celda por cada celda del encabezado",
  "A decimal comma may have split a number in two: write decimal points.":
    "Una coma decimal puede haber partido un número en dos: escríbanse puntos decimales.",
  "a text": "un texto",
  "This {0} has a header but no readings.": "Esta {0} tiene encabezado pero no lecturas.",
  "at least one row below the header": "una fila como mínimo debajo del encabezado",
  "Fill in the readings, or take the sheet out of study.yaml.":
    "Complétense las lecturas, o quítese la hoja de study.yaml.",
  "This row may be sieve No. {0}, or a row that was left out.":
    "Esta fila puede ser el tamiz No. {0} o una fila dejada fuera.",
  "No. {0} for the sieve; # and a space before a remark":
    "No. {0} para el tamiz; # y un espacio delante de una nota",
  "Write the one that is meant.": "Escríbase lo que se quiere decir.",
  "The sheet has a pan and no sieve.": "La hoja tiene un fondo y ningún tamiz.",
  "at least one sieve above the pan": "un tamiz como mínimo por encima del fondo",
  "Fill in the sieves, or take the sheet out of study.yaml.":
    "Complétense los tamices, o quítese la hoja de study.yaml.",
  "The sheet has no pan row.": "La hoja no tiene fila de fondo.",
  "a last row “pan” with the mass under the finest sieve":
    "una última fila “pan” con la masa bajo el tamiz más fino",
  "Weigh the pan, or write 0 where nothing reached it.":
    "Pésese el fondo, o escríbase 0 donde no llegó nada.",
  "Percentages passing are of the whole sample: a split or a washing has no place.":
    "Los porcentajes que pasan son de toda la muestra: un cuarteo o un lavado no tienen sitio.",
  "only “dry mass (g)” above a table of percentages":
    "solo “dry mass (g)” encima de una tabla de porcentajes",
  "Take the line out, or give the masses retained.":
    "Quítese la línea, o dense las masas retenidas.",
  "The sheet gives percentages passing: its mass balance cannot be checked.":
    "La hoja da porcentajes que pasan: su balance de masas no puede comprobarse.",
  "masses retained, where the laboratory has them": "masas retenidas, si el laboratorio las tiene",
  "Nothing to do, unless the masses are at hand.":
    "No hay que hacer nada, salvo que las masas estén a mano.",
  "The sample is heavier after washing than before.":
    "La muestra pesa más después de lavarla que antes.",
  "at most {0} g": "{0} g como máximo",
  "Check the two masses; one of them may still hold the tin.":
    "Compruébense las dos masas; una de ellas puede contener aún la tara.",
  "This block's name stands already in row {0}.":
    "El nombre de esta probeta ya figura en la fila {0}.",
  "each block once": "cada probeta una vez",
  "Correct the name, or take the copy out.": "Corríjase el nombre, o quítese la copia.",
  "trial sheet": "hoja de pruebas",
  "A colour needs all three of L*, a* and b*.": "Un color necesita L*, a* y b*.",
  "three numbers, or none": "tres números, o ninguno",
  "Fill in the missing ones, or leave all three empty.":
    "Complétense los que faltan, o déjense los tres vacíos.",
  "This cell says whether the mass stood still.": "Esta celda dice si la masa dejó de cambiar.",
  "yes, no, or empty": "yes, no, o vacía",
  "Write yes or no; put the rest in the remark.": "Escríbase yes o no; lo demás va en la nota.",
  "The file is not an Excel workbook.": "El archivo no es un libro de Excel.",
  "The workbook has no sheet.": "El libro no tiene hojas.",
  "The workbook cannot be read: {0}.": "El libro no puede leerse: {0}.",
  "This line above the table is not used.": "Esta línea encima de la tabla no se usa.",
  "the table's header": "el encabezado de la tabla",
  "Nothing to do, unless it was meant to be one of those.":
    "No hay que hacer nada, salvo que debiera ser una de ellas.",
  "The line {0} above the table is missing.": "Falta la línea {0} encima de la tabla.",
  "{0} in the first cell of a row above the table, the value in the second":
    "{0} en la primera celda de una fila encima de la tabla y el valor en la segunda",
  "Add the line.": "Añádase la línea.",
  "The column “{0}” is missing.": "Falta la columna “{0}”.",
  "Add the column, or rename the one that holds it.":
    "Añádase la columna, o cámbiese el nombre de la que lo contiene.",
  "This column stands twice.": "Esta columna figura dos veces.",
  "This column is not used.": "Esta columna no se usa.",
  "columns of a {0}: {1}": "columnas de una {0}: {1}",
  "Keep one of them.": "Déjese una de ellas.",
  "sieve sheet": "hoja de tamizado",
  "More passes this sieve than the coarser one above it.":
    "Por este tamiz pasa más que por el más grueso de encima.",
  "The cumulative mass falls.": "La masa acumulada baja.",
  "Check the percentages, and whether the column holds percent retained.":
    "Compruébense los porcentajes, y si la columna contiene porcentaje retenido.",
  "Check the masses; below a split they begin anew, and the pan holds the set's total.":
    "Compruébense las masas; por debajo de un cuarteo empiezan de nuevo, y el fondo contiene el total del juego.",
  "This sieve is coarser than the one above it ({0}).":
    "Este tamiz es más grueso que el de encima ({0}).",
  "each sieve once, from the coarsest to the finest":
    "cada tamiz una vez, del más grueso al más fino",
  "Check the opening, then put the rows in order.":
    "Compruébese la abertura y ordénense después las filas.",
  "The split is described only in part.": "El cuarteo está descrito solo en parte.",
  "both “{0} sieve (mm)” and “{1} dry mass (g)”": "tanto “{0} sieve (mm)” como “{1} dry mass (g)”",
  "The split sieve is not among the sieves of the table.":
    "El tamiz del cuarteo no está entre los tamices de la tabla.",
  "one of the table's sieves": "uno de los tamices de la tabla",
  "Give the sieve at which the sample was divided.":
    "Dese el tamiz en el que se dividió la muestra.",
  "This split is not finer than the one before it ({0} mm).":
    "Este cuarteo no es más fino que el anterior ({0} mm).",
  "splits from the coarsest to the finest": "cuarteos del más grueso al más fino",
  "Number the splits in the order in which the sample was divided.":
    "Numérense los cuarteos en el orden en que se dividió la muestra.",
  "This block has its cement in percent and in parts.":
    "Esta probeta tiene el cemento en porcentaje y en partes.",
  "Leave the cells of one of them empty.": "Déjense vacías las celdas de uno de ellos.",
  "This block has no cement content.": "Esta probeta no tiene contenido de cemento.",
  "cement in percent of the dry mass, or cement parts and soil parts by loose volume":
    "cemento en porcentaje de la masa seca, o partes de cemento y partes de suelo en volumen suelto",
  "Fill it in (0 for none), or start the row with # to leave it out.":
    "Complétese (0 para ninguno), o empiécese la fila con # para omitirla.",
  "Parts by volume need both numbers.": "Las partes en volumen necesitan los dos números.",
  "cement parts and soil parts": "partes de cemento y partes de suelo",
  "Fill in the missing one.": "Complétese el que falta.",
  "The column “cement” is missing.": "Falta la columna “cement”.",
  "“cement (%)”, or “cement parts” and “soil parts”":
    "“cement (%)”, o “cement parts” y “soil parts”",
  "The cement is in parts by volume, but the sheet does not say what a loose volume weighs.":
    "El cemento está en partes en volumen, pero la hoja no dice cuánto pesa un volumen suelto.",
  "{0} above the table": "{0} encima de la tabla",
  "Fill a measure of known volume as on site, weigh it, and add the lines.":
    "Llénese una medida de volumen conocido como en obra, pésese y añádanse las líneas.",
  "block sheet": "hoja de probetas",
  "This shape is not known here.": "Esta forma no se conoce aquí.",
  "cube, prism or cylinder": "cube, prism o cylinder (cubo, prisma o cilindro)",
  "Write the nearest of them, and what it is in the remark.":
    "Escríbase la más cercana, y lo que es en la nota.",
  "This block has a length and a diameter.": "Esta probeta tiene una longitud y un diámetro.",
  "length and width of a rectangular face, or the diameter of a round one":
    "longitud y anchura de una cara rectangular, o el diámetro de una redonda",
  "Leave the cells of the other shape empty.": "Déjense vacías las celdas de la otra forma.",
  "The strength entered, {0} MPa, is not the load over the loaded face, {1} MPa.":
    "La resistencia escrita, {0} MPa, no es la carga entre la cara cargada, {1} MPa.",
  "the same strength within 3 %": "la misma resistencia dentro del 3 %",
  "Check the units in the header of both, and that the strength is not yet corrected for shape.":
    "Compruébense las unidades en el encabezado de ambas, y que la resistencia no esté ya corregida por la forma.",
  "This block has no strength.": "Esta probeta no tiene resistencia.",
  "a strength, or a load with the length and width (or the diameter) of the loaded face":
    "una resistencia, o una carga con la longitud y la anchura (o el diámetro) de la cara cargada",
  "Fill in the readings, or start the row with # to leave it out.":
    "Complétense las lecturas, o empiécese la fila con # para omitirla.",
};
