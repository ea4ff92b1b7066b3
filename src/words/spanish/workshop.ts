/** The sentences of `workshop/` in Spanish, by their English text. */
export const SPANISH_WORKSHOP: Readonly<Record<string, string>> = {
  "Answers: {0}": "Respuestas: {0}",
  Exercise: "Ejercicio",
  Answer: "Respuesta",
  "({0} − {1}) ÷ ({2} − {3}) = {4}": "({0} − {1}) ÷ ({2} − {3}) = {4}",
  "The soil has {0} % fines, the sand {1} %. How many parts of sand to one of soil, by dry mass, give {2} %?":
    "El suelo tiene {0} % de finos y la arena {1} %. ¿Cuántas partes de arena por una de suelo, en masa seca, dan {2} %?",
  "The fines that the sand itself brings were left out: it is not clean.":
    "Se olvidaron los finos que trae la propia arena: no es limpia.",
  "This is the target over the soil's fines: near the share of soil in the blend, not sand to one of soil.":
    "Esto es el objetivo entre los finos del suelo: se acerca a la proporción de suelo en la combinación, no a arena por una de suelo.",
  "This is the difference as a fraction. Ask how many points one part of sand can take up.":
    "Esto es la diferencia como fracción. Pregúntese cuántos puntos puede absorber una parte de arena.",
  "This is sand in the whole blend. Asked is sand to one part of soil.":
    "Esto es arena en toda la combinación. Se pide arena por una parte de suelo.",
  "One part of soil is so many points above the target, one part of sand so many below it. They must balance.":
    "Una parte de suelo está tantos puntos por encima del objetivo y una de arena tantos por debajo. Han de equilibrarse.",
  "{0}.": "{0}.",
  "Excess over room: {0}.": "Exceso entre margen: {0}.",
  "Which share of that blend is soil?": "¿Qué proporción de esa combinación es suelo?",
  "This is the sand to one of soil, times 100. A share is a part of the whole.":
    "Esto es la arena por una de suelo, por 100. Una proporción es una parte del total.",
  "The sand was taken off the soil. It is added to it: one part of soil in so many parts of all.":
    "La arena se restó del suelo. Se le suma: una parte de suelo en tantas partes de todo.",
  "One part of soil, and the whole is one part more than the sand.":
    "Una parte de suelo, y el total es una parte más que la arena.",
  "100 ÷ (1 + {0}) = {1} %.": "100 ÷ (1 + {0}) = {1} %.",
  "Ratios and shares are mixed up more often than anything else here: one part in {0} parts.":
    "Relaciones y proporciones se confunden aquí más que ninguna otra cosa: una parte en {0} partes.",
  "({0})²": "({0})²",
  "At {0} sizes the blend by hand is off by {1} points. What is the root mean square of these?":
    "En {0} tamaños la combinación a mano se aparta {1} puntos. ¿Cuál es la raíz de la media de los cuadrados?",
  "This is the mean without signs. Least squares counts the squares, so that one large miss weighs more than several small ones.":
    "Esto es la media sin signos. Los mínimos cuadrados cuentan los cuadrados, así que un fallo grande pesa más que varios pequeños.",
  "This is the plain mean: differences above and below the target cancel in it.":
    "Esto es la media sencilla: en ella se anulan las diferencias por encima y por debajo del objetivo.",
  "The root is still to be drawn.": "Falta aún sacar la raíz.",
  "The sum was not divided by the count of sizes.":
    "La suma no se dividió por el número de tamaños.",
  "This is the sum of squares: divide by the count, then draw the root.":
    "Esto es la suma de los cuadrados: divídase por el número y sáquese la raíz.",
  "Square each, take the mean of the squares, draw the root.":
    "Elévense al cuadrado, tómese la media de los cuadrados, sáquese la raíz.",
  "√(({0}) ÷ {1}) = {2} points.": "√(({0}) ÷ {1}) = {2} puntos.",
  "Over all {0} sizes it is {1} points.": "Sobre los {0} tamaños son {1} puntos.",
  "By hand and by least squares, against the same target":
    "A mano y por mínimos cuadrados, frente al mismo objetivo",
  "By hand": "A mano",
  "Off by": "Se aparta",
  "Least squares": "Mínimos cuadrados",
  "Root mean square of the differences: by hand {0} points, by least squares {1} points.":
    "Raíz de la media de los cuadrados de las diferencias: a mano {0} puntos, por mínimos cuadrados {1} puntos.",
  "Block {0} broke at {1} kN on a face of {2} by {3} mm. Its strength?":
    "La probeta {0} se rompió con {1} kN sobre una cara de {2} por {3} mm. ¿Su resistencia?",
  "The load was divided by the volume. Strength is load over the loaded face.":
    "La carga se dividió por el volumen. La resistencia es la carga entre la cara cargada.",
  "The load was divided by one edge. A face has two.":
    "La carga se dividió por un lado. Una cara tiene dos.",
  "One megapascal is one newton on one square millimetre.":
    "Un megapascal es un newton sobre un milímetro cuadrado.",
  "1000 × {0} ÷ ({1} × {2}) = {3} MPa.": "1000 × {0} ÷ ({1} × {2}) = {3} MPa.",
  "Newtons over square millimetres are megapascals.":
    "Newtons entre milímetros cuadrados son megapascales.",
  "f = {0} + {1} c": "f = {0} + {1} c",
  "What does the line say of the mean strength at {0} % cement?":
    "¿Qué dice la recta de la resistencia media con {0} % de cemento?",
  "The line does not begin at zero: add its first coefficient.":
    "La recta no empieza en cero: súmese su primer coeficiente.",
  "This is the mean of all blocks, whatever their cement.":
    "Esto es la media de todas las probetas, tengan el cemento que tengan.",
  "This is the mean of the blocks with the most cement.":
    "Esto es la media de las probetas con más cemento.",
  "The table of the regression gives both coefficients.":
    "La tabla de la regresión da los dos coeficientes.",
  "{0}: {1} + {2} × {3} = {4} MPa.": "{0}: {1} + {2} × {3} = {4} MPa.",
  "Half of all blocks of that content would lie below it.":
    "La mitad de las probetas de ese contenido quedaría por debajo.",
  "At which cement content does the line reach {0} MPa at {1} days?":
    "¿Con qué contenido de cemento alcanza la recta {0} MPa a los {1} días?",
  "The first coefficient was left out: take it off the strength before dividing.":
    "Se olvidó el primer coeficiente: réstese de la resistencia antes de dividir.",
  "The first coefficient was added. It is taken off.": "Se sumó el primer coeficiente. Se resta.",
  "This is a rule of three through zero. The line does not begin there.":
    "Esto es una regla de tres por el cero. La recta no empieza ahí.",
  "Turn f = a + b c round: c = (f − a) ÷ b.": "Dese la vuelta a f = a + b c: c = (f − a) ÷ b.",
  "({0} − {1}) ÷ {2} = {3} %.": "({0} − {1}) ÷ {2} = {3} %.",
  "Made with that much, about half of the blocks would fail. It is no content to build with.":
    "Con eso fallaría cerca de la mitad de las probetas. No es un contenido con el que construir.",
  "At {0} % cement: mean {1} MPa, s = {2} MPa, h = {3}, {4} degrees of freedom, t = {5} (one-sided, {6} %). Which strength does one further block exceed with {7} % probability?":
    "Con {0} % de cemento: media {1} MPa, s = {2} MPa, h = {3}, {4} grados de libertad, t = {5} (unilateral, {6} %). ¿Qué resistencia supera una probeta más con probabilidad del {7} %?",
  "This is the bound of the mean, with √h. One block scatters about the mean as well: √(1 + h).":
    "Esto es la cota de la media, con √h. Una probeta además se dispersa en torno a la media: √(1 + h).",
  "This is the upper bound: the margin was added.": "Esto es la cota superior: se sumó el margen.",
  "This takes 1.645 of the normal table. With a scatter known from few blocks it must be the larger t.":
    "Esto toma 1,645 de la tabla normal. Con una dispersión conocida por pocas probetas ha de ser el t, que es mayor.",
  "This forgets that the line itself is not sure: √(1 + h), not 1.":
    "Esto olvida que la propia recta no es segura: √(1 + h), no 1.",
  "This takes the t of a two-sided interval. Only too little strength is feared, so one side counts.":
    "Esto toma el t de un intervalo bilateral. Solo se teme la resistencia escasa, así que cuenta un lado.",
  "The factor t is missing.": "Falta el factor t.",
  "Mean less t × s × √(1 + h).": "Media menos t × s × √(1 + h).",
  "{0} − {1} × {2} × √(1 + {3}) = {4} MPa.": "{0} − {1} × {2} × √(1 + {3}) = {4} MPa.",
  "The margin has two parts: blocks scatter (1), and the line is not sure (h). More blocks shrink h and t, not the scatter.":
    "El margen tiene dos partes: las probetas se dispersan (1) y la recta no es segura (h). Más probetas reducen h y t, no la dispersión.",
  "The bound meets {0} MPa from {1} % on. Cement is set in steps of {2} %. How much is weighed out?":
    "La cota cumple {0} MPa desde {1} %. El cemento se fija en escalones de {2} %. ¿Cuánto se pesa?",
  "This is rounded down, or to the nearest step: the bound would miss the requirement. A least content is only ever rounded up.":
    "Esto está redondeado hacia abajo, o al escalón más cercano: la cota no cumpliría el requisito. Un contenido mínimo solo se redondea hacia arriba.",
  "This is not a step: nobody can set it.": "Esto no es un escalón: nadie puede fijarlo.",
  "This comes from the line without a margin.": "Esto sale de la recta sin margen.",
  "The next step upwards.": "El escalón siguiente hacia arriba.",
  "{0} % up to the next step of {1} %: {2} %.": "{0} % hasta el escalón siguiente de {1} %: {2} %.",
  "Of the dry mass of soil and aggregate, not of the whole, and not by volume.":
    "De la masa seca de suelo y áridos, no del total, y no en volumen.",
  "{0} buckets of soil ({1} kg/m³ dry, loose) and {2} of sand ({3} kg/m³): which share of the dry mass is sand?":
    "{0} cubos de suelo ({1} kg/m³ en seco, suelto) y {2} de arena ({3} kg/m³): ¿qué proporción de la masa seca es arena?",
  "This is the share of the buckets, by volume. A bucket of sand does not weigh as much as a bucket of soil.":
    "Esto es la proporción de los cubos, en volumen. Un cubo de arena no pesa lo mismo que uno de suelo.",
  "The two densities were exchanged.": "Se cambiaron las dos densidades.",
  "This is sand to soil. A share is a part of the whole.":
    "Esto es arena entre suelo. Una proporción es una parte del total.",
  "Turn each into mass: buckets times density. Then the sand's part of the sum.":
    "Conviértase cada uno en masa: cubos por densidad. Después, la parte de la arena en la suma.",
  "100 × {0} × {1} ÷ ({2} × {3} + {4} × {5}) = {6} %.":
    "100 × {0} × {1} ÷ ({2} × {3} + {4} × {5}) = {6} %.",
  "One bucket in {0} is {1} % here. With other densities it is another share: weigh a full bucket of each.":
    "Un cubo de {0} es aquí el {1} %. Con otras densidades es otra proporción: pésese un cubo lleno de cada uno.",
  "Which miscount of one bucket takes the blend furthest from its target? The recipe is {0}.":
    "¿Qué error de un cubo aleja más la combinación de su objetivo? La receta es {0}.",
  "That one leaves the blend {0} points from the target. Another is worse.":
    "Ese deja la combinación a {0} puntos del objetivo. Otro es peor.",
  "One bucket of few matters more than one of many.":
    "Un cubo de pocos importa más que uno de muchos.",
  "{0}: {1} points from the target, in place of {2}.":
    "{0}: {1} puntos del objetivo, en lugar de {2}.",
  "It takes the blend from {0} to {1} points. Count that material aloud.":
    "Lleva la combinación de {0} a {1} puntos. Ese material, cuéntese en voz alta.",
  micrometres: "micrómetros",
  centimetres: "centímetros",
  metres: "metros",
  kilopascals: "kilopascales",
  "gigapascals (or kN/mm²)": "gigapascales (o kN/mm²)",
  "kN/cm²": "kN/cm²",
  grams: "gramos",
  tonnes: "toneladas",
  "g/cm³": "g/cm³",
  "This is a fraction, and percent are asked for: multiply by 100.":
    "Esto es una fracción, y se pide porcentaje: multiplíquese por 100.",
  "This is the rest to 100 %. Ask whether the part passes or is kept back, is meant or is left.":
    "Esto es el resto hasta 100 %. Pregúntese si se trata de lo que pasa o de lo que queda, de lo pedido o de lo demás.",
  "This was multiplied by 100 once too often: it was in percent already.":
    "Esto se multiplicó por 100 una vez de más: ya era porcentaje.",
  "This looks like {0}, and {1} are asked for.": "Esto parece {0}, y se piden {1}.",
  "This is too large by a factor of {0}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.":
    "Esto es demasiado grande por un factor {0}. Mírense el punto decimal, la unidad y, en un gráfico, la década del eje.",
  "This is too small by a factor of {0}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.":
    "Esto es demasiado pequeño por un factor {0}. Mírense el punto decimal, la unidad y, en un gráfico, la década del eje.",
  "The size is right and the sign is wrong: turn the difference round.":
    "El tamaño es correcto y el signo no: dese la vuelta a la diferencia.",
  "The quotient stands upside down: exchange what is divided and what divides.":
    "El cociente está al revés: cámbiense dividendo y divisor.",
  "{0} (afterwards)": "{0} (después)",
  "Predicted and computed": "Predicho y calculado",
  Predicted: "Predicho",
  Computed: "Calculado",
  "A dash: no prediction, or nothing to compare.":
    "Una raya: sin predicción, o nada con que comparar.",
  "Read D60 off the curve: the size that 60 % of the mass passes.":
    "Léase D60 en la curva: el tamaño por el que pasa el 60 % de la masa.",
  "Go across from 60 % to the curve and down to the axis. The axis counts in tenfold steps: half-way between 1 and 10 lies 3.2, not 5.5.":
    "Vaya en horizontal desde el 60 % hasta la curva y baje al eje. El eje cuenta en pasos de diez veces: a medio camino entre 1 y 10 está 3,2, no 5,5.",
  "Between {0} mm ({1} %) and {2} mm ({3} %): {4} × ({5} ÷ {6}) ^ ((60 − {7}) ÷ ({8} − {9})) = {10} mm.":
    "Entre {0} mm ({1} %) y {2} mm ({3} %): {4} × ({5} ÷ {6}) ^ ((60 − {7}) ÷ ({8} − {9})) = {10} mm.",
  "The line between two points is straight on the logarithm of size: {0} × ({1} ÷ {2}) ^ part.":
    "La línea entre dos puntos es recta en el logaritmo del tamaño: {0} × ({1} ÷ {2}) ^ parte.",
  'Do these measurements give D10? Answer "yes" or "no".':
    '¿Dan D10 estas mediciones? Respóndase "yes" o "no".',
  "Follow the curve to its finest measured point and read how much still passes there.":
    "Siga la curva hasta su punto medido más fino y lea cuánto pasa aún ahí.",
  "Look at the finest measured point: less than 10 % passes it.":
    "Mire el punto medido más fino: pasa menos del 10 %.",
  "D10 is measured only where the curve comes down to 10 %.":
    "D10 solo está medido donde la curva baja hasta el 10 %.",
  "At the finest measured size {0} % still pass; the answer is {1}.":
    "En el tamaño medido más fino pasa aún el {0} %; la respuesta es {1}.",
  "At the finest measured size {0} % still pass. To draw the curve on by hand would be to invent D10, and Cu with it.":
    "En el tamaño medido más fino pasa aún el {0} %. Prolongar la curva a mano sería inventar D10, y con él Cu.",
  "The curve comes down to {0} %, below 10 %.":
    "La curva baja hasta el {0} %, por debajo del 10 %.",
  "None of the {0} ways of having three blocks gives an answer.":
    "Ninguna de las {0} maneras de tener tres probetas da respuesta.",
  "Of {0} ways of having three blocks, {1} give no answer; the others ask for {2} to {3} %.":
    "De {0} maneras de tener tres probetas, {1} no dan respuesta; las demás piden de {2} a {3} %.",
  'With three blocks in place of all, what happens to the least cement? Answer "{0}", "{1}" or "{2}".':
    'Con tres probetas en lugar de todas, ¿qué pasa con el cemento mínimo? Respóndase "{0}", "{1}" o "{2}".',
  "The line may stay where it was. The margin below it does not: look at t for one degree of freedom.":
    "La recta puede quedarse donde estaba. El margen por debajo, no: mírese t con un grado de libertad.",
  "By luck three blocks may lie so well on a line that little margin seems needed. Look at how many of the ways do that.":
    "Por suerte tres probetas pueden caer tan bien en una recta que parezca necesario poco margen. Mírese en cuántas de las maneras ocurre.",
  "Look at the table: most ways do not ask for more here.":
    "Mírese la tabla: la mayoría de las maneras no pide aquí más.",
  "Three blocks and two coefficients leave one degree of freedom; t is then 6.3 at 95 %.":
    "Tres probetas y dos coeficientes dejan un grado de libertad; t vale entonces 6,3 al 95 %.",
  "All blocks ask for {0} %.": "Todas las probetas piden {0} %.",
  "{0} of {1}": "{0} de {1}",
  "Least cement with {0} blocks and with three": "Cemento mínimo con {0} probetas y con tres",
  "Held against the requirement": "Comparado con el requisito",
  "{0} blocks": "{0} probetas",
  "Three blocks, lowest to highest": "Tres probetas, de menor a mayor",
  "Three blocks, no answer": "Tres probetas, sin respuesta",
  "the line itself, without any margin": "la propia recta, sin ningún margen",
  "Three blocks leave one degree of freedom: the scatter is then a matter of luck, from {0} to {1} MPa here, where all blocks give {2} MPa.":
    "Tres probetas dejan un grado de libertad: la dispersión es entonces cosa de suerte, aquí de {0} a {1} MPa, donde todas las probetas dan {2} MPa.",
  "An answer at the lowest tested content may be lower still: nothing is extrapolated.":
    "Una respuesta en el contenido ensayado más bajo puede ser aún menor: nada se extrapola.",
  "Of the {0} recommendations in the table, how many is the soil outside of?":
    "De las {0} recomendaciones de la tabla, ¿fuera de cuántas está el suelo?",
  "That many the soil is inside of, with all that they limit.":
    "De esas está dentro el suelo, con todo lo que limitan.",
  "Those are the ones that it is not outside of. Count the others.":
    "Esas son aquellas de las que no está fuera. Cuente las demás.",
  "Those that could not be judged, because something was not measured, count neither way.":
    "Las que no pudieron juzgarse, porque algo no se midió, no cuentan en ningún sentido.",
  "That is how many things they find this soil both inside and outside of.":
    "Ese es el número de cosas en las que encuentran este suelo a la vez dentro y fuera.",
  "One criterion outside is enough to be outside of the recommendation.":
    "Basta un criterio fuera para estar fuera de la recomendación.",
  "None of them.": "De ninguna.",
  "{0} of them: {1}.": "De {0}: {1}.",
  "Inside of {0}, outside of {1}, and {2} ask for something that was not measured. One and the same soil: the recommendations disagree.":
    "Dentro de {0}, fuera de {1}, y {2} piden algo que no se midió. Un mismo suelo: las recomendaciones no coinciden.",
  'A soil lies inside an envelope. Does that prove it suitable? Answer "yes", "no" or "only for walls".':
    'Un suelo está dentro de un huso. ¿Prueba eso que es adecuado? Respóndase "yes", "no" u "only for walls".',
  "Soils made to lie inside such limits did not all do well when they were tested.":
    "Suelos hechos para estar dentro de tales límites no salieron todos bien al ensayarlos.",
  "The limits are written for walls, and even there they prove nothing.":
    "Los límites se escribieron para muros, y ni siquiera ahí prueban nada.",
  "Read the last note under the table of recommendations.":
    "Léase la última nota bajo la tabla de recomendaciones.",
  "No. {0}": "N.º {0}",
  "Which share of the settled height is sand and gravel?":
    "¿Qué proporción de la altura asentada es arena y grava?",
  "This is the sand in percent of the depth of the water. Only what has settled counts.":
    "Esto es la arena en porcentaje de la profundidad del agua. Solo cuenta lo que se asentó.",
  "This is sand and silt together: the silt's top stands on the sand.":
    "Esto es arena y limo juntos: la parte superior del limo está sobre la arena.",
  "This leaves the clay out of the whole height.": "Esto deja la arcilla fuera de la altura total.",
  "Height of the sand over the top of the clay, which is the whole of the settled height; times 100.":
    "Altura de la arena entre la altura de la arcilla, que es toda la altura asentada; por 100.",
  "100 × {0} ÷ {1} = {2} %.": "100 × {0} ÷ {1} = {2} %.",
  "By mass it may be anything from {0} to {1} %: a height is no mass.":
    "En masa puede ser cualquier cosa de {0} a {1} %: una altura no es una masa.",
  "Is the clay's share of the mass less than its share of the height, the same, or more?":
    "La parte de la masa que es arcilla, ¿es menor que su parte de la altura, igual o mayor?",
  "That would be so if all layers were packed alike. They are not.":
    "Sería así si todas las capas estuvieran igual de apretadas. No lo están.",
  "Think of what stands between the grains of a fresh layer of clay.":
    "Piense en lo que hay entre los granos de una capa fresca de arcilla.",
  "In this jar the heights do not decide it: look at the interval of the table.":
    "En este frasco las alturas no lo deciden: mírese el intervalo de la tabla.",
  "The table gives the share of the mass that each height allows.":
    "La tabla da la parte de la masa que admite cada altura.",
  "The clay has {0} % of the height; by mass that allows {1} to {2} %.":
    "La arcilla tiene el {0} % de la altura; en masa eso admite de {1} a {2} %.",
  "A fresh layer of clay is mostly water: {0} % of the height allows {1} to {2} % of the mass.":
    "Una capa fresca de arcilla es sobre todo agua: el {0} % de la altura admite de {1} a {2} % de la masa.",
  "The jars of all groups": "Los frascos de todos los grupos",
  Group: "Grupo",
  "Sand and gravel": "Arena y grava",
  "% of the height": "% de la altura",
  "lowest to highest": "de menor a mayor",
  "No answer yet. Write it into the cell above in place of undefined and run the cell again.":
    "Aún no hay respuesta. Escríbala en la celda de arriba en lugar de undefined y ejecute la celda otra vez.",
  "Right. {0}": "Correcto. {0}",
  "Right. Computed: {0}. {1}": "Correcto. Calculado: {0}. {1}",
  "Not yet. {0} Worked: {1}": "Todavía no. {0} Resuelto: {1}",
  "Not yet. {0} A hint: {1}": "Todavía no. {0} Una pista: {1}",
  "Not yet. {0}": "Todavía no. {0}",
  "That is not what the data say.": "No es lo que dicen los datos.",
  Exercises: "Ejercicios",
  Question: "Pregunta",
  "First try: what is wrong. Second: a hint. Third: the worked answer. Nothing is recorded outside of this notebook.":
    "Primer intento: qué falla. Segundo: una pista. Tercero: la respuesta resuelta. Nada se registra fuera de este cuaderno.",
  "a number, exactly": "un número, exacto",
  "a number, {0}, exactly": "un número, {0}, exacto",
  "within {0} or {1}, whichever is more": "dentro de {0} o {1}, lo que sea más",
  "within {0}": "dentro de {0}",
  "a number, {0}": "un número, {0}",
  "a number, {0}, {1}": "un número, {0}, {1}",
  "No prediction yet, {0}. A guess that misses teaches more than none.":
    "Aún no hay predicción, {0}. Una suposición que falla enseña más que ninguna.",
  "No prediction yet, {0}: write one number, or a few words in quotation marks.":
    "Aún no hay predicción, {0}: escriba un número, o unas palabras entre comillas.",
  "Predicted, {0}: {1}.": "Predicho, {0}: {1}.",
  "The computed value was shown already, so the first prediction stands, {0}.":
    "El valor calculado ya se mostró, así que vale la primera predicción, {0}.",
  "The computed value was shown already: kept as an afterthought, {0}: {1}.":
    "El valor calculado ya se mostró: se guarda como ocurrencia posterior, {0}: {1}.",
  "This is a promise of a value, not the value. Write await before it.":
    "Esto es la promesa de un valor, no el valor. Escriba await delante.",
  "This is a function, not its result. Call it: write brackets after its name.":
    "Esto es una función, no su resultado. Llámela: escriba paréntesis tras su nombre.",
  "This came out as NaN, “not a number”: something in the sum was missing, or 0 was divided by 0. Look at each number in it.":
    "Esto salió NaN, “no es un número”: faltaba algo en la suma, o se dividió 0 entre 0. Mire cada número.",
  "This came out as infinity: the sum divides by 0. Look at what stands below.":
    "Esto salió infinito: se divide entre 0. Mire lo que hay debajo.",
  "This is a text. Write the number without quotation marks and without its unit, with a point before the decimals.":
    "Esto es un texto. Escriba el número sin comillas y sin unidad, con un punto delante de los decimales.",
  "This is a text, and a number is asked for. Write it without quotation marks.":
    "Esto es un texto, y se pide un número. Escríbalo sin comillas.",
  "This is a list, and one number is asked for. Choose one of it, for example with [0].":
    "Esto es una lista, y se pide un número. Elija uno de ella, por ejemplo con [0].",
  "This is no number. Write one, for example 12.5.":
    "Esto no es un número. Escriba uno, por ejemplo 12.5.",
  "One of these texts is asked for, in quotation marks: {0}.":
    "Se pide uno de estos textos, entre comillas: {0}.",
  "This is a sieve's own size. The curve reaches the percentage between two sieves.":
    "Esto es el tamaño de un tamiz. La curva alcanza el porcentaje entre dos tamices.",
  "This is read as if the sizes stood evenly along the axis. They stand by their logarithm: half-way between 1 and 10 lies 3.2.":
    "Esto está leído como si los tamaños estuvieran repartidos por igual en el eje. Están por su logaritmo: a medio camino entre 1 y 10 está 3,2.",
  "This is the size that {0} % stay on: the axis was read from above. It counts what passes.":
    "Esto es el tamaño sobre el que queda el {0} %: el eje se leyó desde arriba. Cuenta lo que pasa.",
  "This is far too large.": "Esto es demasiado grande, y mucho.",
  "This is far too small.": "Esto es demasiado pequeño, y mucho.",
  "This is too large, by about {0} %.": "Esto es demasiado grande, cerca del {0} %.",
  "This is too small, by about {0} %.": "Esto es demasiado pequeño, cerca del {0} %.",
  "{0} m³ of wall, {1} kg/m³ dry with its cement, {2} % cement of the dry mass of soil and aggregate. How much cement?":
    "{0} m³ de muro, {1} kg/m³ en seco con su cemento, {2} % de cemento sobre la masa seca de suelo y áridos. ¿Cuánto cemento?",
  "The percentage was taken of everything. It is of soil and aggregate alone: divide by 100 plus the percentage.":
    "El porcentaje se tomó de todo. Es solo de suelo y áridos: divídase entre 100 más el porcentaje.",
  "This is for one cubic metre.": "Esto es para un metro cúbico.",
  "Of 100 + {0} kg of dry wall, {1} kg are cement.":
    "De 100 + {0} kg de muro seco, {1} kg son cemento.",
  "{0} × {1} × {2} ÷ (100 + {3}) = {4} kg.": "{0} × {1} × {2} ÷ (100 + {3}) = {4} kg.",
  "That is {0} kg in each cubic metre of wall.": "Son {0} kg en cada metro cúbico de muro.",
  "An all-concrete wall would take {0} m³, with {1} to {2} kg of cement in a cubic metre. How much less cement does the earth wall hold? Below zero where it holds more.":
    "Un muro todo de hormigón llevaría {0} m³, con {1} a {2} kg de cemento por metro cúbico. ¿Cuánto menos cemento contiene el muro de tierra? Menor que cero si contiene más.",
  "This is the trap: cement was set against whole concrete, and most of that is stone and sand.":
    "Esta es la trampa: se comparó cemento con hormigón entero, y casi todo él es piedra y arena.",
  "Both walls were taken as equally thick. The concrete one has its own volume.":
    "Se tomaron los dos muros con el mismo espesor. El de hormigón tiene su propio volumen.",
  "This is what the earth wall holds, in percent of the concrete's cement. The saving is the rest.":
    "Esto es lo que contiene el muro de tierra, en porcentaje del cemento del hormigón. El ahorro es el resto.",
  "First the cement in the concrete: its volume times kg in a cubic metre. Then cement against cement.":
    "Primero el cemento del hormigón: su volumen por kg por metro cúbico. Después, cemento contra cemento.",
  "{0} × {1} to {2} = {3} to {4} kg; 100 × (1 − {5} ÷ that) = {6} to {7} %.":
    "{0} × {1} a {2} = {3} a {4} kg; 100 × (1 − {5} ÷ eso) = {6} a {7} %.",
  'Both walls are made with the same cement. Is the saving in carbon of cement, in percent, smaller than that in cement, the same, or larger? Answer "smaller", "the same" or "larger".':
    'Los dos muros se hacen con el mismo cemento. El ahorro de carbono del cemento, en porcentaje, ¿es menor que el de cemento, igual o mayor? Respóndase "smaller", "the same" o "larger".',
  "The factor is that of one and the same cement: it stands above and below the line.":
    "El factor es el de un mismo cemento: está encima y debajo de la raya.",
  "Multiply both by the same factor and divide.":
    "Multiplíquense ambos por el mismo factor y divídase.",
  "100 × (1 − factor × cement ÷ (factor × cement in the concrete)): the factor cancels.":
    "100 × (1 − factor × cemento ÷ (factor × cemento del hormigón)): el factor se anula.",
  "The factor cancels, in percent; in kilograms its range matters. Aggregate, haul and what else differs are no part of this.":
    "El factor se anula en porcentaje; en kilogramos su intervalo importa. Áridos, transporte y lo demás que difiera no entran en esto.",
  "How much of the dry mass passes 2 mm?": "¿Qué parte de la masa seca pasa por 2 mm?",
  "Only what stayed on the 2 mm sieve was taken off. What stayed on the coarser sieves did not pass 2 mm either: add it up.":
    "Solo se restó lo que quedó en el tamiz de 2 mm. Lo que quedó en los más gruesos tampoco pasó por 2 mm: súmese.",
  "This is of the mass after washing. The fines that went down the drain are soil too: divide by the mass before washing.":
    "Esto es sobre la masa después del lavado. Los finos que se fueron por el desagüe también son suelo: divídase entre la masa antes del lavado.",
  "Add what stayed on every sieve down to 2 mm, divide by the dry mass before washing, and take the rest to 100 %.":
    "Súmese lo que quedó en cada tamiz hasta 2 mm, divídase entre la masa seca antes del lavado y tómese el resto hasta 100 %.",
  "100 × (1 − {0} ÷ {1}) = {2} %.": "100 × (1 − {0} ÷ {1}) = {2} %.",
  "Passing counts everything finer, not what lies between two sieves.":
    "Lo que pasa cuenta todo lo más fino, no lo que hay entre dos tamices.",
  "How much passes the finest sieve, {0} mm?": "¿Cuánto pasa por el tamiz más fino, {0} mm?",
  "This is of the mass after washing: nearly all fines went out with the water and were forgotten. Divide by the mass before washing.":
    "Esto es sobre la masa después del lavado: casi todos los finos se fueron con el agua y se olvidaron. Divídase entre la masa antes del lavado.",
  "This is the pan alone. The pan holds only what the washing left behind.":
    "Esto es solo el fondo. El fondo contiene solo lo que dejó el lavado.",
  "This is what was washed out. The pan passed the finest sieve as well.":
    "Esto es lo que se lavó. El fondo también pasó por el tamiz más fino.",
  "This is what stayed on the finest sieve, not what went through it.":
    "Esto es lo que quedó en el tamiz más fino, no lo que lo atravesó.",
  "What stayed on all sieves together did not pass. All the rest did, with the water or into the pan.":
    "Lo que quedó en todos los tamices no pasó. Todo lo demás sí, con el agua o al fondo.",
  "100 × (1 − {0} ÷ {1}) = {2} %; washed out {3} g, in the pan {4} g.":
    "100 × (1 − {0} ÷ {1}) = {2} %; lavados {3} g, en el fondo {4} g.",
  "Of these fines {0} g went out with the water and only {1} g were in the pan: without washing they would have clung to the sand.":
    "De estos finos, {0} g se fueron con el agua y solo {1} g estaban en el fondo: sin lavado se habrían quedado pegados a la arena.",
  "How much of the soil is sand, from {0} to {1} mm?":
    "¿Qué parte del suelo es arena, de {0} a {1} mm?",
  "This is all that passes {0} mm, fines included: take the fines off.":
    "Esto es todo lo que pasa por {0} mm, finos incluidos: réstense los finos.",
  "This is sand by other boundaries, 0.075 to 4.75 mm. Both are in use: always say which.":
    "Esto es arena con otros límites, de 0,075 a 4,75 mm. Ambos están en uso: dígase siempre cuál.",
  "This is sand and gravel together: all that is coarser than the fines.":
    "Esto es arena y grava juntas: todo lo más grueso que los finos.",
  "Passing at the upper boundary less passing at the lower one.":
    "Lo que pasa en el límite superior menos lo que pasa en el inferior.",
  "{0} − {1} = {2} %.": "{0} − {1} = {2} %.",
  "With 0.075 and 4.75 mm as boundaries the same soil has {0} % sand: a share without its boundaries says little.":
    "Con 0,075 y 4,75 mm como límites el mismo suelo tiene {0} % de arena: una proporción sin sus límites dice poco.",
  "No exercises are open yet. Run the cells above first, from the top.":
    "Aún no hay ejercicios abiertos. Ejecute antes las celdas de arriba, desde el principio.",
  "There is no exercise “{0}”. Open are: {1}.":
    "No existe el ejercicio “{0}”. Abiertos están: {1}.",
  "There is no exercise “{0}”. Is {1} meant?": "No existe el ejercicio “{0}”. ¿Se quería {1}?",
  "as measured": "tal como se midió",
  "heavy soil and sand, light cement": "suelo y arena pesados, cemento ligero",
  "light soil and sand, heavy cement": "suelo y arena ligeros, cemento pesado",
  "{0} soil, {1} sand, {2} cement by loose volume":
    "{0} de suelo, {1} de arena, {2} de cemento en volumen suelto",
  Densities: "Densidades",
  Soil: "Suelo",
  "Cement, of all parts": "Cemento, de todas las partes",
  "Cement, of the dry mass of soil and sand": "Cemento, de la masa seca de suelo y arena",
  "{0}: {1} to {2} kg/m³, {3}.": "{0}: de {1} a {2} kg/m³, {3}.",
  "{0} buckets of soil, {1} of sand, {2} of cement: cement in percent of all buckets?":
    "{0} cubos de suelo, {1} de arena, {2} de cemento: ¿cemento en porcentaje de todos los cubos?",
  "This is cement to soil and sand. Asked is cement in all buckets, its own counted.":
    "Esto es cemento entre suelo y arena. Se pide el cemento en todos los cubos, contado el suyo.",
  "This is cement to soil alone: the sand was left out.":
    "Esto es cemento solo entre suelo: se olvidó la arena.",
  "This is by mass. Count buckets only.": "Esto es en masa. Cuéntense solo cubos.",
  "How many buckets are there in all?": "¿Cuántos cubos hay en total?",
  "It says nothing of the mass yet: that depends on how heavy each bucket is.":
    "Aún no dice nada de la masa: esa depende de lo que pese cada cubo.",
  "The same buckets hold, dry and loose, soil {0}, sand {1}, cement {2} kg/m³. Cement in percent of the dry mass of soil and sand?":
    "Los mismos cubos contienen, en seco y sueltos, suelo {0}, arena {1}, cemento {2} kg/m³. ¿Cemento en porcentaje de la masa seca de suelo y arena?",
  "This is the share of the buckets. A bucket of each weighs something else.":
    "Esto es la proporción de los cubos. Un cubo de cada cosa pesa distinto.",
  "This is buckets to buckets. Weigh them.": "Esto es cubos entre cubos. Pésense.",
  "This is of everything, cement counted. A cement content is of the dry mass of soil and aggregate alone.":
    "Esto es de todo, contado el cemento. Un contenido de cemento es solo de la masa seca de suelo y áridos.",
  "The sand was left out of what the cement is compared with.":
    "Se olvidó la arena en aquello con lo que se compara el cemento.",
  "Mass of each: buckets times density. Then cement over soil and sand together.":
    "Masa de cada uno: cubos por densidad. Después, cemento entre suelo y arena juntos.",
  "100 × {0} ÷ ({1} + {2}) = {3} %.": "100 × {0} ÷ ({1} + {2}) = {3} %.",
  "{0} % of the buckets is {1} % by mass with these densities, and something else with others.":
    "El {0} % de los cubos es el {1} % en masa con estas densidades, y otra cosa con otras.",
  "Common wrong turns: {0}": "Errores habituales: {0}",
  "Leads to": "Lleva a",
  "What went wrong": "Qué falló",
  "Beside these, slips of the decimal point, of the unit, of the sign, of a fraction for percent and of a quotient turned round are known in every exercise.":
    "Además de estos, en todos los ejercicios se reconocen los deslices del punto decimal, de la unidad, del signo, de fracción por porcentaje y del cociente al revés.",
};
