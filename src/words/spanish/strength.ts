/** The sentences of `strength/` in Spanish, by their English text. */
export const SPANISH_STRENGTH: Readonly<Record<string, string>> = {
  "{0} A good lot, {1} of its blocks below {2} MPa, is rejected in {3} of cases; a poor one, {4} below, is accepted in {5}.":
    "{0} Un lote bueno, con {1} de sus probetas por debajo de {2} MPa, se rechaza en {3} de los casos; uno malo, con {4} por debajo, se acepta en {5}.",
  "Accept the lot when the mean of its {0} blocks less {1} times their standard deviation is at least {2} MPa.":
    "Acéptese el lote cuando la media de sus {0} probetas menos {1} veces su desviación típica sea de {2} MPa como mínimo.",
  "Accept the lot when the mean of its {0} blocks is at least {1} MPa and the weakest at least {2} MPa.":
    "Acéptese el lote cuando la media de sus {0} probetas sea de {1} MPa como mínimo y la más débil de {2} MPa como mínimo.",
  "NZS 4298:1998 and HB 195": "NZS 4298:1998 y HB 195",
  "NZS 4298:1998 and HB 195, after Krefeld; from memory: check against the standard":
    "NZS 4298:1998 y HB 195, según Krefeld; de memoria: cotéjese con la norma",
  "Heathcote and Jankulovski 1992": "Heathcote y Jankulovski 1992",
  "Heathcote & Jankulovski 1992; from memory, with low confidence":
    "Heathcote y Jankulovski 1992; de memoria, con poca seguridad",
  "Concrete cylinders and cores, length over diameter":
    "Cilindros y testigos de hormigón, longitud entre diámetro",
  "ASTM C39/C42 factors, read as coded in open software; the factor 1 at ratio 2 is from memory. Made for concrete":
    "Factores de ASTM C39/C42, leídos tal como figuran en software abierto; el factor 1 con relación 2 es de memoria. Hechos para hormigón",
  "No correction, cement-stabilised rammed earth":
    "Sin corrección, tierra apisonada estabilizada con cemento",
  "Venkatarama Reddy, Suresh & Nanjunda Rao 2017, abstract read: from ratio 2 to 5.81 the loss is 1 % at 1800 kg/m³, 3 to 5 % at 1700 kg/m³":
    "Venkatarama Reddy, Suresh y Nanjunda Rao 2017, resumen leído: de la relación 2 a la 5,81 la pérdida es del 1 % con 1800 kg/m³ y del 3 al 5 % con 1700 kg/m³",
  "mean of {0}": "media de {0}",
  "Not every block names its batch.": "No todas las probetas nombran su amasada.",
  "Each content was one batch, so the scatter from batch to batch cannot be seen. Mix contents twice.":
    "Cada contenido fue una sola amasada, así que la dispersión entre amasadas no puede verse. Amásense los contenidos dos veces.",
  "Each batch gave one block.": "Cada amasada dio una sola probeta.",
  "Batches of one content differ by more than their blocks (standard deviation {0} MPa): the blocks are not independent, and bands made from them are too narrow. Fit the means of the batches.":
    "Las amasadas de un mismo contenido difieren más que sus probetas (desviación típica {0} MPa): las probetas no son independientes y las bandas hechas con ellas son demasiado estrechas. Ajústense las medias de las amasadas.",
  "Batches of one content are not clearly different; few batches show only gross differences.":
    "Las amasadas de un mismo contenido no se distinguen con claridad; con pocas amasadas solo se ven diferencias grandes.",
  "EN 1990:2002 Annex D.7.2; its Table D.1 read as coded in open software, recomputed here without its truncation":
    "EN 1990:2002 anexo D.7.2; su tabla D.1, leída tal como figura en software abierto y calculada aquí de nuevo sin sus cortes de decimales",
  "Exact one-sided tolerance factor, noncentral t; own calculation":
    "Factor de tolerancia unilateral exacto, t no central; cálculo propio",
  "EN 1990 Annex D, scatter from these blocks, normal":
    "EN 1990 anexo D, dispersión de estas probetas, normal",
  "EN 1990 Annex D, scatter from these blocks, lognormal":
    "EN 1990 anexo D, dispersión de estas probetas, lognormal",
  "EN 1990 Annex D, coefficient of variation known beforehand, normal":
    "EN 1990 anexo D, coeficiente de variación conocido de antemano, normal",
  "EN 1990 Annex D, coefficient of variation known beforehand, lognormal":
    "EN 1990 anexo D, coeficiente de variación conocido de antemano, lognormal",
  "95 % of all blocks above, with 75 % confidence, normal":
    "95 % de todas las probetas por encima, con confianza del 75 %, normal",
  "95 % of all blocks above, with 95 % confidence, normal":
    "95 % de todas las probetas por encima, con confianza del 95 %, normal",
  "95 % of all blocks above, with 95 % confidence, lognormal":
    "95 % de todas las probetas por encima, con confianza del 95 %, lognormal",
  "Mean less 1.65 s: no allowance for how few the blocks are":
    "Media menos 1,65 s: no tiene en cuenta lo pocas que son las probetas",
  "IS 10262 margin for concrete, read in a forum discussion; not in the standard itself":
    "Margen de IS 10262 para hormigón, leído en un foro; no en la propia norma",
  "NZS 4298:1998 small sample": "NZS 4298:1998, muestra pequeña",
  "NZS 4298:1998, from memory: check against the standard; strengths there are corrected for aspect ratio first":
    "NZS 4298:1998, de memoria: cotéjese con la norma; allí las resistencias se corrigen antes por la esbeltez",
  "This rule is meant for at least {0} blocks; there are {1}.":
    "Esta regla está pensada para {0} probetas como mínimo; hay {1}.",
  "This rule needs a coefficient of variation known from earlier work with the same materials.":
    "Esta regla necesita un coeficiente de variación conocido por trabajos anteriores con los mismos materiales.",
  "The blocks scatter so much that this rule gives no strength above zero. Find the cause, or make more blocks.":
    "Las probetas se dispersan tanto que esta regla no da ninguna resistencia mayor que cero. Búsquese la causa o háganse más probetas.",
  "{0}: factor {1} with {2} blocks.": "{0}: factor {1} con {2} probetas.",
  "The straight line is used, as no form was chosen.":
    "Se usa la recta, porque no se eligió ninguna forma.",
  "The {0} form is used, as chosen.": "Se usa la forma {0}, como se eligió.",
  "{0} It could not be fitted: {1}": "{0} No pudo ajustarse: {1}",
  "{0} The blocks are too few, or lie too exactly on the curve, to compare the forms.":
    "{0} Las probetas son demasiado pocas, o caen demasiado exactamente sobre la curva, para comparar las formas.",
  "{0} No other form fits these blocks clearly better.":
    "{0} Ninguna otra forma se ajusta claramente mejor a estas probetas.",
  "{0} Better by AICc: {1} (difference {2} to the best). Look at the residuals and say in the report why the {3} form was kept.":
    "{0} Mejor según AICc: {1} (diferencia {2} con la mejor). Mírense los residuos y dígase en el informe por qué se conservó la forma {3}.",
  "Limits need five lots at least; twenty or more make them steady (common practice, no source).":
    "Los límites necesitan cinco lotes como mínimo; con veinte o más son estables (práctica común, sin fuente).",
  "The lots have different numbers of blocks; chart those of one number.":
    "Los lotes tienen números distintos de probetas; represéntense los de un mismo número.",
  "All readings are the same: enter each block's own reading.":
    "Todas las lecturas son iguales: escríbase la lectura propia de cada probeta.",
  "No lot gives a signal: the work is steady, as far as the chart can tell.":
    "Ningún lote da señal: el trabajo es estable, hasta donde el gráfico puede decirlo.",
  "Look at the work of {0}: something other than the usual scatter is likely.":
    "Revísese el trabajo de {0}: es probable que haya algo distinto de la dispersión habitual.",
  "Ratio {0} lies outside this table, {1} to {2}; no factor is given.":
    "La relación {0} queda fuera de esta tabla, de {1} a {2}; no se da factor.",
  "{0}: factor {1} at height over thickness {2}. {3}.":
    "{0}: factor {1} con altura entre espesor {2}. {3}.",
  "{0} blocks a lot, factor {1}: the owner's risk is then {2} %.":
    "{0} probetas por lote, factor {1}: el riesgo del propietario es entonces del {2} %.",
  "More than {0} blocks a lot would be needed: take shares farther apart, or larger risks.":
    "Harían falta más de {0} probetas por lote: tómense proporciones más separadas o riesgos mayores.",
  "At {0} % confidence these blocks do not show that strength depends on cement, so no finite interval of cement content exists. Make more blocks, or test contents farther apart.":
    "Con una confianza del {0} % estas probetas no muestran que la resistencia dependa del cemento, así que no existe un intervalo finito de contenido de cemento. Háganse más probetas o ensáyense contenidos más separados.",
  "The contents whose {0} % band contains {1} MPa.":
    "Los contenidos cuya banda del {0} % contiene {1} MPa.",
  "The weights for scatter that grows with strength do not settle.":
    "Los pesos para una dispersión que crece con la resistencia no se estabilizan.",
  ", with {0}": ", con {0}",
  "{0}{1}, fitted to {2} blocks of {3} days at {4} cement contents.":
    "{0}{1}, ajustada a {2} probetas de {3} días con {4} contenidos de cemento.",
  "Batches and cement contents cannot be told apart, as the batches do not have contents in common. Fit the means of the batches instead.":
    "Las amasadas y los contenidos de cemento no pueden separarse, porque las amasadas no tienen contenidos en común. Ajústense en su lugar las medias de las amasadas.",
  "Two of the things that were measured go in step and cannot be told apart. {0}":
    "Dos de las cosas medidas van a la par y no pueden separarse. {0}",
  "The blocks were crushed at different ages, and no age was chosen.":
    "Las probetas se rompieron a edades distintas y no se eligió ninguna edad.",
  "No block is left for the regression.": "No queda ninguna probeta para la regresión.",
  "one age for one curve": "una sola edad para una curva",
  "blocks that are not excluded": "probetas que no estén excluidas",
  "Name the age of the requirement in the study (strength.requirement.age).":
    "Escríbase la edad del requisito en el estudio (strength.requirement.age).",
  "Add blocks, or take back an exclusion.": "Añádanse probetas o retírese una exclusión.",
  "{0} blocks of another age take no part in the curve at {1} days.":
    "{0} probetas de otra edad no entran en la curva a los {1} días.",
  "Nothing to do; they are shown beside the curve.":
    "No hay que hacer nada; se muestran junto a la curva.",
  "Stop building on this lot, mark where it lies in the wall, and tell the responsible engineer.":
    "Pare la obra de este lote, marque dónde está en el muro y avise al ingeniero responsable.",
  "Look for a fault of the test first: capping, age, soaking, the press, a mixed-up label. Crush the kept spare blocks of the same batches.":
    "Busque primero un fallo del ensayo: refrentado, edad, inmersión, prensa, etiqueta cambiada. Rompa las probetas de reserva de las mismas amasadas.",
  "Look for a fault of the mix: batching record, cement bags used, moisture, mixing time, time from mixing to ramming.":
    "Busque un fallo de la mezcla: registro de amasadas, sacos de cemento gastados, humedad, tiempo de amasado, tiempo entre amasado y apisonado.",
  "Have the strength in the wall itself found, by cores or cut blocks, where the engineer asks for it.":
    "Haga determinar la resistencia en el propio muro, con testigos o bloques cortados, donde lo pida el ingeniero.",
  "Let the engineer decide in writing: accept with reason, strengthen, or take down. A new sample of the same lot does not undo the first.":
    "Deje que el ingeniero decida por escrito: aceptar con motivo, reforzar o demoler. Otra muestra del mismo lote no anula la primera.",
  "Before going on, change what was found, and test the next lots at twice the frequency.":
    "Antes de seguir, cambie lo que se encontró y ensaye los lotes siguientes con el doble de frecuencia.",
  "The rule is made for {0} blocks, and the lot has {1}: its risks would be others. Crush the missing blocks; leave none out.":
    "La regla está hecha para {0} probetas y el lote tiene {1}: sus riesgos serían otros. Rómpanse las probetas que faltan; no se omita ninguna.",
  "{0} MPa is below {1} MPa": "{0} MPa es menos que {1} MPa",
  "the mean, {0} MPa, is too low": "la media, {0} MPa, es demasiado baja",
  "the weakest, {0} MPa, is too low": "la más débil, {0} MPa, es demasiado baja",
  "The lot meets the rule.": "El lote cumple la regla.",
  "The lot does not meet the rule: {0}.": "El lote no cumple la regla: {0}.",
  "With covariates or batches in the regression, blocks of one cement content are not replicates, so the curve's shape is not tested. Test it on the fit without them.":
    "Con covariables o amasadas en la regresión, las probetas de un mismo contenido de cemento no son réplicas, así que la forma de la curva no se contrasta. Contrástese en el ajuste sin ellas.",
  "No cement content has two blocks, so the curve's shape cannot be tested. Make replicates.":
    "Ningún contenido de cemento tiene dos probetas, así que la forma de la curva no puede contrastarse. Háganse réplicas.",
  "The curve has as many coefficients as there are contents, so its shape cannot be tested. Test one content more.":
    "La curva tiene tantos coeficientes como contenidos hay, así que su forma no puede contrastarse. Ensáyese un contenido más.",
  "The blocks of each content have the same strength, so there is no scatter to test against. Check that these are separate readings.":
    "Las probetas de cada contenido tienen la misma resistencia, así que no hay dispersión con la que contrastar. Compruébese que sean lecturas distintas.",
  "The curve misses the group means by more than the scatter of the blocks explains (p below 0.05): try another form.":
    "La curva se aparta de las medias de los grupos más de lo que explica la dispersión de las probetas (p menor que 0,05): pruébese otra forma.",
  "The scatter of the blocks gives no reason to doubt the curve's shape.":
    "La dispersión de las probetas no da motivo para dudar de la forma de la curva.",
  "The requirement is not met within the tested contents, {0} to {1} %. {2}":
    "El requisito no se cumple dentro de los contenidos ensayados, del {0} al {1} %. {2}",
  "The lowest tested content, {0} %, already meets the requirement. {1}":
    "El contenido ensayado más bajo, {0} %, ya cumple el requisito. {1}",
  "From {0} % cement the bound meets the requirement; rounded up, {1} %.":
    "Desde el {0} % de cemento la cota cumple el requisito; redondeado hacia arriba, {1} %.",
  "The fitted {0} curve falls with more cement from about {1} %.":
    "La curva {0} ajustada baja con más cemento desde cerca del {1} %.",
  "strength that rises with cement": "una resistencia que sube con el cemento",
  "Look at the blocks there, and compare the other forms.":
    "Mírense las probetas de esa zona y compárense las otras formas.",
  "The bound falls below the requirement again at about {0} % cement.":
    "La cota vuelve a bajar del requisito cerca del {0} % de cemento.",
  "a bound that stays above the requirement with more cement":
    "una cota que se mantenga por encima del requisito con más cemento",
  "Do not take more cement for safer; make more blocks at the highest content.":
    "No se tome más cemento por más seguro; háganse más probetas con el contenido más alto.",
  "Rounded up, the content lies above the highest tested content, {0} %.":
    "Redondeado hacia arriba, el contenido queda por encima del más alto ensayado, {0} %.",
  "Choose a smaller step, or test blocks with that content.":
    "Elíjase un escalón menor o ensáyense probetas con ese contenido.",
  "Less than {0} % may do, but has not been tested: make blocks with about {1} % cement.":
    "Menos del {0} % puede bastar, pero no se ha ensayado: háganse probetas con cerca del {1} % de cemento.",
  "The curve is high enough at {0} %, but it is not known well enough: make more blocks with {1} % cement.":
    "La curva es bastante alta con {0} %, pero no se conoce bastante bien: háganse más probetas con {1} % de cemento.",
  "More blocks of the tested contents would not be enough: make blocks with about {0} % cement, or improve the grading, the compaction or the evenness of the mix.":
    "No bastarían más probetas de los contenidos ensayados: háganse probetas con cerca del {0} % de cemento, o mejórense la granulometría, la compactación o la uniformidad de la mezcla.",
  "Block {0} lies far from {1}{2}.": "La probeta {0} queda lejos de {1}{2}.",
  "the others of its cement content": "las demás de su contenido de cemento",
  "the fitted curve": "la curva ajustada",
  "about {0} MPa; studentised residual within ±{1}":
    "cerca de {0} MPa; residuo estudentizado dentro de ±{1}",
  "Look at this specimen and its sheet. Exclude it only for a reason you can write down; it takes part until then.":
    "Mírense esta probeta y su hoja. Exclúyase solo por un motivo que pueda escribirse; hasta entonces participa.",
  "ACI 318-11 tables 5.3.1.2 and 5.3.2.2, ACI 318-19 26.12.3.1, read as quoted elsewhere; made for concrete":
    "ACI 318-11, tablas 5.3.1.2 y 5.3.2.2, ACI 318-19 26.12.3.1, leídas como citadas en otro lugar; hechas para hormigón",
  "No record of at least {0} tests: {1} MPa. This allowance was made for concrete.":
    "Sin registro de {0} ensayos como mínimo: {1} MPa. Este margen se hizo para hormigón.",
  "{0} MPa from s = {1} MPa of {2} tests, times {3}.":
    "{0} MPa a partir de s = {1} MPa de {2} ensayos, por {3}.",
  "Shapiro–Wilk": "Shapiro–Wilk",
  "The residuals give no reason to doubt that they are normal.":
    "Los residuos no dan motivo para dudar de que sean normales.",
  "The residuals are not like normal ones, so the bounds of single blocks may be wrong. Look for single odd blocks first, and at the robust fit; if all are sound, try the power form, whose errors are lognormal.":
    "Los residuos no parecen normales, así que las cotas de probetas sueltas pueden ser falsas. Mírense primero las probetas sueltas extrañas y el ajuste robusto; si todas son buenas, pruébese la forma potencial, cuyos errores son lognormales.",
  "The contents scatter alike, as far as so few blocks can tell.":
    "Los contenidos se dispersan por igual, hasta donde tan pocas probetas pueden decirlo.",
  "Some contents scatter more than others. Look at how those blocks were mixed and crushed; the bands are too narrow there and too wide elsewhere.":
    "Unos contenidos se dispersan más que otros. Mírese cómo se amasaron y rompieron esas probetas; las bandas son allí demasiado estrechas y en otros sitios demasiado anchas.",
  "The scatter does not clearly grow or shrink with strength.":
    "La dispersión no crece ni mengua claramente con la resistencia.",
  "The scatter grows even faster than the strength. Look at the strongest blocks.":
    "La dispersión crece aún más deprisa que la resistencia. Mírense las probetas más fuertes.",
  "Strong blocks scatter more than weak ones: fit with spread “proportional”, or the power form.":
    "Las probetas fuertes se dispersan más que las débiles: ajústese con spread “proportional” o con la forma potencial.",
  "Allowing for a scatter that grows went too far: fit with even spread.":
    "Admitir una dispersión creciente fue demasiado: ajústese con dispersión uniforme.",
  "Weak blocks scatter more than strong ones. Look at how the weak ones were made and capped.":
    "Las probetas débiles se dispersan más que las fuertes. Mírese cómo se hicieron y refrentaron las débiles.",
  "The blocks are too few, or do not scatter, so this was not tested.":
    "Las probetas son demasiado pocas, o no se dispersan, así que esto no se contrastó.",
  "The robust fit is made for the plain curve only.":
    "El ajuste robusto está hecho solo para la curva sencilla.",
  "Half of the blocks lie exactly on the curve; nothing to check.":
    "La mitad de las probetas cae exactamente sobre la curva; no hay nada que comprobar.",
  "The robust curve differs from the least-squares one by {0} MPa at most, at {1} % cement. {2}":
    "La curva robusta difiere de la de mínimos cuadrados en {0} MPa como máximo, con {1} % de cemento. {2}",
  "All blocks count fully.": "Todas las probetas cuentan por completo.",
  "Counting less: {0}. Look at those with the smallest weight.":
    "Cuentan menos: {0}. Mírense las de menor peso.",
  "The robust fit did not settle: the blocks fall into two crowds.":
    "El ajuste robusto no se estabilizó: las probetas se separan en dos grupos.",
  "The {0} form takes logarithms; block {1} has {2} % cement and {3} MPa. Choose another form, or exclude the block with the reason.":
    "La forma {0} toma logaritmos; la probeta {1} tiene {2} % de cemento y {3} MPa. Elíjase otra forma o exclúyase la probeta con el motivo.",
  "No block was crushed at {0} days or {1}, and nothing is extrapolated: the tested ages are {2} to {3} days. Keep blocks to crush at {4} days.":
    "Ninguna probeta se rompió a los {0} días ni {1}, y nada se extrapola: las edades ensayadas van de {2} a {3} días. Guárdense probetas para romper a los {4} días.",
  later: "después",
  earlier: "antes",
  "The {0} form{1} needs at least {2} blocks of {3} days; there are {4}.":
    "La forma {0}{1} necesita {2} probetas de {3} días como mínimo; hay {4}.",
  " with its covariates and batches": " con sus covariables y amasadas",
  "The {0} form needs at least {1} different cement contents; the blocks of {2} days have {3}.":
    "La forma {0} necesita {1} contenidos de cemento distintos como mínimo; las probetas de {2} días tienen {3}.",
  "These blocks have no {0}: {1}. Enter it, or leave {2} out of the regression.":
    "A estas probetas les falta {0}: {1}. Escríbase, o déjese {2} fuera de la regresión.",
  "These blocks have no batch: {0}. Enter it.":
    "A estas probetas les falta la amasada: {0}. Escríbase.",
  "The {0} asked for, {1}, lies outside that of the blocks, and nothing is extrapolated. Make blocks with it.":
    "El valor pedido de {0}, {1}, queda fuera de los de las probetas, y nada se extrapola. Háganse probetas con él.",
  "{0} blocks of {1} days are too few for the {2} form.":
    "{0} probetas de {1} días son demasiado pocas para la forma {2}.",
  "at least {0}; many more for a narrow band":
    "{0} como mínimo; muchas más para una banda estrecha",
  "Make and crush more blocks.": "Háganse y rómpanse más probetas.",
  "The blocks have {0}, too few for the {1} form.":
    "Las probetas tienen {0}: demasiado pocos para la forma {1}.",
  "one cement content only": "un solo contenido de cemento",
  "only {0} cement contents": "solo {0} contenidos de cemento",
  "at least {0} contents, better one more to see whether the shape fits":
    "{0} contenidos como mínimo; mejor uno más, para ver si la forma se ajusta",
  "Make blocks with another cement content, or choose a simpler form.":
    "Háganse probetas con otro contenido de cemento o elíjase una forma más sencilla.",
  "The blocks of each cement content have exactly the same strength.":
    "Las probetas de cada contenido de cemento tienen exactamente la misma resistencia.",
  "readings that scatter, as all readings do": "lecturas que se dispersen, como todas",
  "Enter each block's own reading; a mean written many times hides the scatter.":
    "Escríbase la lectura propia de cada probeta; una media escrita muchas veces oculta la dispersión.",
  "All blocks of a cement content come from one batch, so the scatter from batch to batch is not in the bands: they are narrower than the truth.":
    "Todas las probetas de un contenido de cemento vienen de una sola amasada, así que la dispersión entre amasadas no está en las bandas: son más estrechas que la verdad.",
  "two or more batches at a content": "dos o más amasadas por contenido",
  "Mix at least one content twice, on different days, and mould blocks from each batch.":
    "Amásese al menos un contenido dos veces, en días distintos, y móldense probetas de cada amasada.",
  "Block {0} takes no part in the regression: {1}.":
    "La probeta {0} no entra en la regresión: {1}.",
  "a reason that will stand in the report": "un motivo que figurará en el informe",
  "Block {0} has a strength that is not above zero.":
    "La probeta {0} tiene una resistencia que no es mayor que cero.",
  "a strength above 0 MPa": "una resistencia mayor que 0 MPa",
  "Correct the reading; if the block fell apart before crushing, exclude it with that reason and say so in the report.":
    "Corríjase la lectura; si la probeta se deshizo antes de romperla, exclúyase con ese motivo y dígase en el informe.",
  "Block {0} has a cement content below zero.":
    "La probeta {0} tiene un contenido de cemento menor que cero.",
  "Correct the cement content.": "Corríjase el contenido de cemento.",
  "batch {0}": "amasada {0}",
  "Plan at least {0} contents for the {1} form, so that its shape can be tested; there are {2}.":
    "Prevéanse {0} contenidos como mínimo para la forma {1}, de modo que pueda contrastarse; hay {2}.",
  "{0} % lies outside the planned contents, {1} to {2} %, and nothing is extrapolated.":
    "El {0} % queda fuera de los contenidos previstos, del {1} al {2} %, y nada se extrapola.",
  "a difference of {0} MPa is seen with a chance of {1} %":
    "una diferencia de {0} MPa se ve con una probabilidad del {1} %",
  "the mean at {0} % is known to ±{1} MPa": "la media con {0} % se conoce con ±{1} MPa",
  "{0} blocks at each of {1} contents, from {2} batches each: {3}, if blocks of one content scatter by {4} MPa and batches do not differ.":
    "{0} probetas en cada uno de {1} contenidos, de {2} amasadas cada uno: {3}, si las probetas de un contenido se dispersan {4} MPa y las amasadas no difieren.",
  "More than {0} blocks a content would be needed. Ask for less, or bring the scatter down first: mixing, moisture, compaction, capping.":
    "Harían falta más de {0} probetas por contenido. Pídase menos, o redúzcase antes la dispersión: amasado, humedad, compactación, refrentado.",
  "Block {0} is {1} the others: it may be written in another unit, such as {2}.":
    "La probeta {0} es {1} las demás: quizá esté escrita en otra unidad, como {2}.",
  "{0} times as strong as": "{0} veces tan resistente como",
  "a {0}th as strong as": "un {0}.º de resistente que",
  "about {0} MPa; one unit for the whole column":
    "cerca de {0} MPa; una sola unidad en toda la columna",
  "Convert the reading; if it is true, exclude the block with its reason.":
    "Conviértase la lectura; si es verdadera, exclúyase la probeta con su motivo.",
  "The cement content of block {0} looks like a fraction, not a percentage.":
    "El contenido de cemento de la probeta {0} parece una fracción, no un porcentaje.",
  "percent, for example {0} %": "porcentaje, por ejemplo {0} %",
  "Write all contents in percent of the dry mass of soil and aggregate.":
    "Escríbanse todos los contenidos en porcentaje de la masa seca de suelo y áridos.",
  "This trial's name stands already in row {0}.":
    "El nombre de esta prueba ya figura en la fila {0}.",
  "each trial once": "cada prueba una vez",
  "This is not a Munsell colour.": "Esto no es un color Munsell.",
  "hue, value and chroma, for example 7.5YR 6/4, or N 5/ for a grey":
    "matiz, valor y croma, por ejemplo 7.5YR 6/4, o N 5/ para un gris",
  "Read it from the chart again, in shade, beside the dry sample.":
    "Léase otra vez en la carta, a la sombra, junto a la muestra seca.",
  "These numbers are not a CIELAB colour.": "Estos números no son un color CIELAB.",
  "L* 0 to 100, a* and b* −128 to 128": "L* de 0 a 100, a* y b* de −128 a 128",
  "Check the colour space of the picture program: L*a*b*, not RGB.":
    "Compruébese el espacio de color del programa de imagen: L*a*b*, no RGB.",
  "The colour of trial {0} was taken without knowing that it was dry; moist earth looks darker.":
    "El color de la prueba {0} se tomó sin saber que estuviera seca; la tierra húmeda se ve más oscura.",
  "a mass that stands still between two weighings a day apart":
    "una masa que no cambie entre dos pesadas con un día de diferencia",
  "Let it dry, weigh it twice, and take the colour again.":
    "Déjese secar, pésese dos veces y tómese el color otra vez.",
  "Small thin samples dry in an hour or so. They show colour, texture and edges; strength is that of blocks, cured and crushed.":
    "Las muestras delgadas secan en una hora más o menos. Muestran color, textura y aristas; la resistencia es la de probetas curadas y rotas.",
  "blocks of the chosen mix, cured to the age of the requirement":
    "probetas de la mezcla elegida, curadas hasta la edad del requisito",
  "Choose the mixes worth testing here, then make blocks of them.":
    "Elíjanse aquí las mezclas que merecen ensayo y háganse después probetas de ellas.",
};
