# Por qué un punto de espera está como está: una o dos frases por cada código del núcleo.
# Lo que trae cada código está en crates/words/tests/all/carried.rs. $window es "mínimo a máximo",
# $read es "lo más bajo a lo más alto" y $side dice de qué lado del punto de rocío está la superficie.

## Edad

why-old-slab = Es un piso viejo. Un piso viejo nunca se detiene por su edad.
why-one-color = La losa tiene un solo color parejo en toda el área. Con eso ya cumple con la edad, tenga los días que tenga.
why-one-color-but-green = Todavía es muy nueva: la cal, la humedad y el color se siguen moviendo. El tinte puede salir más fuerte y menos parejo.
why-old-enough = Se coló el { $poured }, hace { $days ->
        [one] 1 día
       *[other] { $days } días
    }. La regla pide { $needed ->
        [one] 1 día
       *[other] { $needed } días
    }.
why-no-pour-date = El diario no tiene fecha de colado y nadie ha anotado un color parejo. Nada demuestra que esta losa ya tenga los días.
why-too-young = { $days ->
        [0] La losa se coló hoy
        [one] La losa tiene 1 día
       *[other] La losa tiene { $days } días
    }; la regla pide { $needed ->
        [one] 1 día
       *[other] { $needed } días
    } o un color parejo, lo que llegue primero. Los cumple el { $ready }.
why-cold-cure = La losa curó con frío. Contando la temperatura, tiene una edad equivalente de { $window }, contada a 20 °C (68 °F). La regla va por días o por color, así que esto no cambia nada; mire el color una vez más antes de teñir.
why-equivalent-age = Contando la temperatura, la losa tiene una edad equivalente de { $window }, contada a 20 °C (68 °F).
why-equivalent-age-reached = Contando la temperatura, la losa tiene una edad equivalente de { $window }, contada a 20 °C (68 °F): la edad que pide la regla.
why-no-temperature-record = No hay registro de temperatura desde el colado; un curado en frío pasaría sin notarse.
why-temperature-gaps = El registro de temperatura tiene huecos; por eso esta edad es un rango.
why-color-patchy = En la última revisión se vieron partes claras y partes oscuras.
why-color-cant-tell = La última revisión no deja claro si el color está parejo.

## Membrana

why-membrane-on-slab = Se aplicó membrana de curado o curador-sellador el { $date } y el diario no dice que se haya quitado. Bloquea el tinte, y el tiempo no la quita.
why-tests-look-clear-all-the-same = Aun así, las gotas y los raspados salen limpios. Puede haber una película que no se ve: las pruebas cuentan solo después de quitarla.
why-no-film-test = Todavía no hay gota de agua ni raspado. Nadie sabe si hay una película.
why-film-on-blade = La espátula levanta una viruta como de cera o escamas, o la superficie se siente pegajosa. Eso es una película, aunque el agua se absorba y aunque no se vea, y el tinte no reacciona a través de una película.
why-film-on-blade-water-stopped = El agua tarda o se queda parada, y la espátula levanta una película. Las dos pruebas dicen lo mismo: primero hay que quitar la película.
why-beads-on-powder = El agua se hace bolita, pero la espátula solo levanta polvo gris. Puede ser aceite o silicón, o un tratamiento que penetró. El trapo con solvente puede encontrar los dos primeros.
why-water-stands-no-blade = El agua se queda parada o se hace bolita, y ningún raspado ha sacado polvo gris limpio. Algo detiene el agua: trátelo como película hasta que un raspado diga otra cosa.
why-slow-on-powder = El agua tarda o se queda parada, y la espátula saca polvo gris. Es pasta densa, o un tratamiento que penetró y que ninguna espátula levanta. Un trapo limpio y una gota de ácido que burbujea los distinguen.
why-rag-changes-shine = El trapo cambió el brillo. Puede ser una película delgada o un tratamiento que penetró; solo el tinte en un lugar que no se vea lo dice.
why-clean-rag-no-acid-drop = La espátula no lo aclara y el trapo salió limpio. Solo una gota de ácido dice si penetró algo que no deja pasar el tinte.
why-clean-rag-weak-fizz = El trapo salió limpio, pero la gota de ácido burbujea poco. Puede haber penetrado algo que no deja pasar el tinte.
why-penetrating-treatment = El agua tarda o se queda parada, la espátula saca polvo, el trapo sale limpio y la gota de ácido no burbujea: penetró algo que no deja pasar ni agua ni ácido, como los tratamientos de silano, siloxano o silicato. El trapo con solvente no lo encuentra.
why-film-on-rag = El trapo sale pegajoso o amarillo, y nada dice lo contrario. Es una película, y el tinte no reacciona a través de una película.
why-rag-against-water = El agua se absorbe y la espátula no levanta película, pero el trapo sale pegajoso o amarillo. Las pruebas se contradicen: no tiña así.
why-scrape-missing = { $drops ->
        [0] Todavía no hay raspado ni gota de agua.
        [one] Hay 1 gota de agua, pero ningún raspado.
       *[other] Hay { $drops } gotas de agua, pero ningún raspado.
    } Puede haber una película que no se ve: la gota y el raspado deben coincidir.
why-drop-missing = { $scrapes ->
        [one] El raspado sacó polvo gris,
       *[other] { $scrapes } raspados sacaron polvo gris,
    } pero todavía no hay gota de agua. La gota y el raspado deben coincidir.
why-shine-change-only = La espátula solo cambió el brillo. Puede ser una película delgada o pasta densa; sigue el trapo con solvente.
why-too-few-drops = { $drops ->
        [one] Hasta ahora cuenta 1 gota de agua;
       *[other] Hasta ahora cuentan { $drops } gotas de agua;
    } aquí { $needed ->
        [one] hace falta 1
       *[other] hacen falta { $needed }
    }.
why-powder-where-water-stands = El agua se queda parada, pero la espátula sacó polvo gris. Hasta ahora parece pasta densa, no película.
why-water-and-blade-agree = { $drops ->
        [one] La gota de agua se absorbió
       *[other] Las { $drops } gotas de agua se absorbieron
    } y la espátula sacó polvo gris. Las dos pruebas coinciden: no se encontró película.
why-dense-paste-not-film = La espátula y el trapo no encontraron película, y la gota de ácido burbujea fuerte: pasta densa; no se encontró película.
why-water-stands-in-places = { $drops ->
        [one] El agua tarda o se queda parada
       *[other] El agua tarda o se queda parada en algunas de las { $drops } gotas
    }, y nadie ha raspado en ese lugar. Puede ser una parte con película.
why-older-tests-outdated = Las pruebas anteriores ya no cuentan: la superficie cambió después de hacerlas.
why-tests-lapsed = Algunas pruebas son demasiado viejas para una losa donde trabajan otros.
why-tests-without-place = Algunas pruebas no dicen en qué zona se hicieron; no cuentan para ninguna.

## Absorción

why-trowel-burn = Se anotó un quemado de llana el { $date } y desde entonces no se ha abierto la superficie. Ahí el tinte puede quedar pálido o irse con el lavado.
why-no-drops = Nadie ha medido qué tan rápido se absorbe el agua. Aquí { $needed ->
        [one] hace falta 1 gota de agua
       *[other] hacen falta { $needed } gotas de agua
    }.
why-dense-finish-needs-coat = Un acabado tan cerrado muchas veces pide una mano más de tinte.
why-film-hides-absorbency = Hay una película; las gotas no dicen nada del concreto que está abajo.
why-burnished = El agua se queda parada, pero la espátula saca polvo gris: la superficie está bruñida y cerrada. El tinte se puede ir con el lavado.
why-water-stands-unknown-why = El agua se queda parada o se hace bolita y nadie sabe por qué: película, aceite o superficie bruñida.
why-drinks-unevenly = En este acabado la gota más rápida se absorbe en { $fastest } y la más lenta en { $slowest }: { $factor } veces el tiempo de la otra. El color va a salir igual de disparejo, fuerte aquí y débil allá.
why-drinks-somewhat-unevenly = En este acabado la gota más rápida se absorbe en { $fastest } y la más lenta en { $slowest }: { $factor } veces el tiempo de la otra. No es parejo ni claramente disparejo.
why-slow-places-together = En este acabado la gota más rápida se absorbe en { $fastest } y la más lenta en { $slowest }: { $factor } veces el tiempo de la otra. Con más gotas no va a cambiar; las lentas están juntas.
why-slow-by-zone = En este acabado la gota más rápida se absorbe en { $fastest } y la más lenta en { $slowest }: { $factor } veces el tiempo de la otra. Con más gotas no va a cambiar; las lentas llenan zonas enteras.
why-slow-scattered = En este acabado la gota más rápida se absorbe en { $fastest } y la más lenta en { $slowest }: { $factor } veces el tiempo de la otra. Con más gotas no va a cambiar; las lentas están aquí y allá.
why-both-ends-approved = En este acabado la gota más rápida se absorbe en { $fastest } y la más lenta en { $slowest }: { $factor } veces el tiempo de la otra. En los dos lugares se tiñó una muestra en sitio y se aprobó.
why-drinks-slowly = Al menos una gota va lenta: muy lenta para pasar, muy rápida para decir que la superficie está cerrada. Ahí el tinte puede agarrar débil.
why-too-few-places = { $places ->
        [one] En toda la losa cuenta 1 gota de agua;
       *[other] En toda la losa cuentan { $places } gotas de agua;
    } { $places_needed ->
        [one] hace falta 1 lugar:
       *[other] hacen falta { $places_needed } lugares:
    } centro, orillas y cada camión.
why-drinks-evenly = { $drops ->
        [one] La gota de agua se absorbió.
       *[other] Las { $drops } gotas de agua se absorbieron.
    } En este acabado la más rápida tarda { $fastest } y la más lenta { $slowest }: parejo.

## Reacción

why-no-fizz = Una gota de ácido no burbujeó: no encontró cal libre con que reaccione el tinte. Puede ser una sobrecapa de yeso o de polímero, o algo que no deja pasar el ácido. Aquí el tinte reactivo no da color.
why-weak-fizz = Una gota de ácido burbujea poco. Solo un panel o una muestra en sitio de este concreto dice si toma el tinte.
why-strong-fizz = Una gota de ácido burbujea fuerte: este concreto reacciona.
why-plain-portland = El ticket de la mezcla dice concreto Portland común, con poca ceniza volante y sin cloruro.
why-much-fly-ash = La mezcla lleva { $share } de ceniza volante; con más de { $limit } puede reaccionar débil o disparejo. Solo un panel o una muestra en sitio de este concreto lo dice.
why-chloride-in-mix = La mezcla lleva cloruro, que puede hacer que el color salga manchado. Solo un panel o una muestra en sitio de este concreto lo dice.
why-old-topping-unknown = Es un piso viejo y nadie sabe de qué es su capa de arriba. Las sobrecapas de yeso o de polímero no reaccionan.
why-reaction-untried = Nadie ha probado si este concreto reacciona: ni gota de ácido, ni datos completos de la mezcla, ni un panel suyo teñido.
why-panel-took-stain = El panel { $panel } es de este concreto y tomó el tinte.

## Contaminación

why-incident-untreated = { $what }, { $date }: no se ha hecho nada.
why-incident-still-there = { $what }, { $date }: en la última revisión todavía estaba.
why-incident-stops-water = { $what }, { $date }: ahí el agua se queda parada, o la espátula todavía levanta algo.
why-incident-faint = { $what }, { $date }: queda un rastro leve. Puede verse a través del tinte.
why-looks-clear-but-water-stops = { $what }, { $date }: el lugar se ve limpio, pero el agua se queda parada o la espátula levanta algo. Lo que está en los poros no se ve.
why-clear-without-treatment = { $what }, { $date }: la prueba sale limpia, pero el diario no tiene ningún tratamiento. Esas cosas no se quitan solas.
why-treated-not-retested = { $what }, { $date }: se trató, pero nadie ha vuelto a probar el lugar.
why-treated-looks-clear-no-drop = { $what }, { $date }: se trató y se ve limpio. Lo que está en los poros no se ve: solo una gota de agua lo muestra.
why-incident-cleared = { $what }, { $date }: se trató y el lugar pasó su prueba.
why-incident-accepted = { $what }, { $date }: { $by } lo aceptó como está.
why-incident-not-acceptable = Se aceptó, pero esto solo se resuelve con tratamiento y prueba.
why-nothing-takes-it-out = { $what }, { $date }: no se conoce tratamiento que lo quite. Solo se cierra si el dueño lo acepta.
why-cover-still-lies = La protección que se puso el { $date } sigue ahí. Nadie puede ver lo que hay abajo.
why-ink-lay-against-slab = La protección que se puso el { $date } tenía el lado impreso hacia abajo, y nadie ha revisado desde que se levantó. La tinta se puede quedar en la superficie.
why-plastic-lay-on-slab = Se puso plástico el { $date } y nadie ha revisado desde que se levantó. Puede dejar líneas como de mármol.
why-no-survey = Nadie ha recorrido la losa buscando aceite, marcas, goteos y sombras.
why-survey-old = El último recorrido de la losa fue el { $date }, hace { $days ->
        [one] 1 día
       *[other] { $days } días
    }. Con otros oficios en la obra, un recorrido vale { $keeps ->
        [one] 1 día
       *[other] { $keeps } días
    }.
why-survey-under-cover = El recorrido del { $date } se hizo con una protección puesta. Lo que había debajo nadie lo vio.
why-surveyed = La losa se recorrió el { $date }. Con otros oficios en la obra, un recorrido vale { $keeps ->
        [one] 1 día
       *[other] { $keeps } días
    }.

## Humedad

why-no-sealer-chosen = No se ha elegido sellador. De él depende qué tan seca debe estar la losa.
why-still-wet-curing = El curado húmedo empezó el { $date } y no se ha anotado el fin. Una prueba de humedad bajo mantas mojadas no dice nada.
why-moisture-tests-outdated = Las pruebas de humedad anteriores ya no cuentan: se hicieron antes de terminar el curado húmedo o antes del último enjuague.
why-moisture-tests-wetted = Las pruebas de humedad de antes de que entrara agua ya no cuentan.
why-moisture-tests-lapsed = Algunas pruebas de humedad son demasiado viejas para contar.
why-moisture-tests-disagree = Una prueba de humedad pasa del límite y otra no. Las pruebas se contradicen: no selle así. Límites para el sellador «{ $sealer }»: { $humidity_limit } de humedad en la losa, emisión de { $emission_limit }.
why-moisture-tests-weak = Las pruebas de humedad no se hicieron según sus propias reglas: sonda a otra profundidad, poca espera o tiempo de plato equivocado. No pueden liberar nada. Límites para el sellador «{ $sealer }»: { $humidity_limit } de humedad en la losa, emisión de { $emission_limit }.
why-slab-too-humid = Una sonda en la losa marca { $humidity_read }; el límite para el sellador «{ $sealer }» es { $humidity_limit }. Si se sella ahora, el sellador puede ponerse blanco, hacer ampollas o pelarse.
why-emission-too-high = Una prueba de cloruro de calcio marca { $emission_read }; el límite para el sellador «{ $sealer }» es { $emission_limit }. Si se sella ahora, el sellador puede ponerse blanco, hacer ampollas o pelarse.
why-sheet-wet = Había gotas debajo del plástico: demasiada humedad para el sellador «{ $sealer }».
why-sheet-wet-sealer-tolerates = Había gotas debajo del plástico. Se dice que el sellador «{ $sealer }» aguanta humedad; cuánta, solo lo puede decir el fabricante.
why-sheet-dry = Nada debajo del plástico: ni gotas ni oscurecimiento. Para el sellador «{ $sealer }» es suficiente.
why-too-few-sheets = { $have ->
        [one] Hasta ahora hay 1 plástico seco;
       *[other] Hasta ahora hay { $have } plásticos secos;
    } aquí { $needed ->
        [one] hace falta 1
       *[other] hacen falta { $needed }
    } para el sellador «{ $sealer }».
why-sheet-darkened = La losa se oscureció debajo del plástico, sin gotas. Ni claramente seca ni claramente húmeda.
why-sheet-too-short = El plástico no estuvo puesto el tiempo necesario para contar.
why-sheet-is-not-enough = Para el sellador «{ $sealer }» no basta el plástico. Hacen falta sondas de humedad en la losa o pruebas de cloruro de calcio.
why-humidity-needs-maker = Una sonda en la losa marca { $humidity_read }, más de { $humidity_limit }. Algunos fabricantes del sellador «{ $sealer }» lo permiten y otros no: consígalo por escrito.
why-no-moisture-test = Todavía no cuenta ninguna prueba de humedad para el sellador «{ $sealer }». Solo una prueba demuestra que la losa está seca.
why-too-few-moisture-tests = { $have ->
        [one] Hasta ahora hay 1 prueba de humedad;
       *[other] Hasta ahora hay { $have } pruebas de humedad;
    } en toda la losa { $needed ->
        [one] hace falta 1
       *[other] hacen falta { $needed }
    }.
why-dry-enough = Las pruebas de humedad están dentro del límite para el sellador «{ $sealer }»: a lo más { $humidity_limit } de humedad en la losa, o emisión de { $emission_limit }.
why-month-per-inch = Solo regla de campo, un mes por pulgada: { $thickness } de concreto secando desde el { $from } estarían secos hacia el { $date }. Solo una prueba lo dice.

## pH de la superficie

why-no-ph-test = Todavía no cuenta ninguna prueba de pH de la superficie. Aquí { $needed ->
        [one] hace falta 1
       *[other] hacen falta { $needed }
    }.
why-no-ph-test-after-rinse = No hay prueba de pH de la superficie desde el último enjuague. Aquí { $needed ->
        [one] hace falta 1
       *[other] hacen falta { $needed }
    }.
why-dwell-runs = El tinte todavía está trabajando: no lo toque hasta el { $until }.
why-dwell-not-noted = Nadie anotó cuánto debe trabajar el tinte. Déjelo el tiempo que dice la hoja de su fabricante.
why-coat-to-come = La receta pide { $of } manos; falta la mano { $coat }.
why-ph-test-older-than-wash = La prueba de pH de la superficie es anterior al último lavado o derrame y ya no cuenta. Aquí { $needed ->
        [one] hace falta 1 nueva
       *[other] hacen falta { $needed } nuevas
    }.
why-ph-test-lapsed = Las pruebas de pH son demasiado viejas para contar. { $needed ->
        [one] Hace falta 1 nueva
       *[other] Hacen falta { $needed } nuevas
    } aquí.
why-ph-too-low = El pH de la superficie bajó a { $lowest }; el tinte pide de { $window }. Queda poca cal para reaccionar; el color puede salir débil o no salir.
why-ph-outside-window = Lecturas de pH de la superficie: { $read }; debe ser de { $window }. El resultado está en duda.
why-too-few-ph-tests = { $have ->
        [one] Hasta ahora hay 1 prueba de pH de la superficie;
       *[other] Hasta ahora hay { $have } pruebas de pH de la superficie;
    } aquí { $needed ->
        [one] hace falta 1
       *[other] hacen falta { $needed }
    }.
why-ph-fit = Lecturas de pH de la superficie: { $read }, dentro de lo que se pide, de { $window }.
why-not-neutralized = El piso se tiñó y desde entonces no se ha neutralizado. Todavía puede tener ácido.
why-not-rinsed = El piso se neutralizó y desde entonces no se ha enjuagado. Todavía puede tener residuo.
why-rag-colored = El trapo blanco salió con color. Todavía hay residuo suelto, y el sellador se puede pelar.
why-rag-faint = El pH de la superficie está bien, pero el trapo blanco salió con un tono leve. Puede quedar algo de residuo.
why-no-rag = Nadie pasó un trapo blanco después del enjuague. Ahí se vería el residuo suelto.
why-acid-left = El pH de la superficie bajó a { $lowest }; después del enjuague debe ser de { $window }. Queda ácido en el piso, y el sellador se puede pelar.

## Grietas y parches

why-cracks-not-mapped = Nadie ha revisado la losa buscando grietas, hoyos y parches.
why-no-defects = Se revisó el { $date }: no se anotaron grietas, hoyos ni parches.
why-defects-mapped = { $count ->
        [one] Hay 1 grieta, hoyo o parche en la lista.
       *[other] Hay { $count } grietas, hoyos y parches en la lista.
    }
why-defect-accepted = { $by } lo aceptó como está.
why-crack-moves = Los dos lados de esta grieta se mueven. Se puede volver a abrir, se le ponga lo que se le ponga: es asunto de un ingeniero con licencia.
why-crack-not-measured = Nadie ha medido el ancho de esta grieta.
why-crack-wide = Esta grieta mide { $width } de ancho; si pasa de { $limit }, alguien tiene que decidir. El tinte se junta ahí.
why-crack-hairline = Fisura de { $width } de ancho. Aun así se va a ver con el tinte.
why-hole-open = Hay un hoyo abierto. El tinte se junta ahí, y un parche puede tomar otro color.
why-spall-open = Hay un despostillado abierto. El tinte se junta ahí, y un parche puede tomar otro color.
why-patch-untried = Hay un parche viejo y nadie ha probado el tinte en él. Puede tomar otro color, o ninguno.
why-surface-dusts = La superficie suelta polvo. La capa débil de arriba se puede llevar el tinte.
why-repaired-owner-told = Reparado con cemento. El dueño sabe que se va a notar.
why-repaired-owner-not-told = Reparado con cemento, pero al dueño no se le ha dicho que se va a notar.
why-repair-takes-no-stain = Reparado con polímero o yeso, que no toman tinte. Ese lugar se va a quedar pálido.

## Panel de muestra

why-no-panel = No hay panel de muestra. Nadie sabe qué color da este concreto.
why-panels-bare = Los paneles están hechos, pero sin teñir.
why-no-choice-yet = Hay paneles teñidos, pero nadie ha aprobado ninguno.
why-panel-origin-unknown = { $by } aprobó el panel { $panel } el { $date }, pero el diario no dice cómo se hizo. Nadie sabe si representa este piso.
why-panel-finish-unknown = { $by } aprobó el panel { $panel } el { $date }, pero no está anotado el acabado del panel o el de este piso. Nadie sabe si coinciden.
why-panel-mix-unknown = { $by } aprobó el panel { $panel } el { $date }, pero no está anotada la mezcla del panel o la de este piso. Nadie sabe si coinciden.
why-panel-other-finish = El panel { $panel }, que { $by } aprobó el { $date }, no tiene el acabado de este piso: allá { $panel_has }, aquí { $zone_has }. No representa este piso.
why-panel-other-mix = El panel { $panel }, que { $by } aprobó el { $date }, no es de la mezcla de este piso: allá { $panel_has }, aquí { $zone_has }. No representa este piso.
why-panel-other-zone = El panel { $panel }, que { $by } aprobó el { $date }, es una muestra en sitio en otra parte del piso. No representa esta parte.
why-floor-changed-since-panel = Después, este piso se lijó con malla, se desbastó, se granalló, se sandblasteó o se lavó con ácido. El panel { $panel }, que { $by } aprobó el { $date }, ya no muestra lo que es este piso.
why-approved-before-stained = { $by } aprobó el panel { $panel } el { $date }, pero el diario no dice cómo se tiñó.
why-stained-again-since-approval = El panel { $panel } se volvió a teñir después de que { $by } lo aprobó el { $date }. Lo aprobado era otro color.
why-choice-withdrawn = { $by } retiró la elección del panel { $panel } el { $date }: «{ $reason }».
why-part-without-panel = Una parte de este piso es de otro concreto u otro acabado («{ $part_is }»), y ningún panel aprobado muestra qué hace ahí el tinte.
why-panel-approved = { $by } aprobó el panel { $panel } el { $date }. Tiene el concreto y el acabado de este piso.
why-approved-unsealed = { $by } aprobó el panel { $panel } el { $date } sin sellador. El sellador puede cambiar el color; todavía no se puede saber si es el color elegido.

## Obra

why-site-not-checked = Nadie ha revisado el agua, el lavaojos, el plan del agua residual y las hojas de seguridad.
why-site-partly-checked = Falta revisar: { $item }.
why-site-check-old = El agua, el lavaojos, el plan del agua residual y las hojas de seguridad se revisaron por última vez el { $date }, hace { $days ->
        [one] 1 día
       *[other] { $days } días
    }. Una revisión vale { $keeps ->
        [one] 1 día
       *[other] { $keeps } días
    }.
why-site-check-not-today = El agua, el lavaojos, el plan del agua residual y las hojas de seguridad se revisaron por última vez el { $date }. El día del trabajo se revisan otra vez.
why-site-lacks = Falta en la obra: { $item }. Sin eso no se trabaja con ácido.
why-site-ready = Agua, lavaojos, plan del agua residual y hojas de seguridad: revisados.
why-site-again-on-the-day = El día del trabajo se revisan otra vez.

## Aire

why-no-fresh-air-reading = No hay lectura reciente del aire ni de la superficie de la losa. Solo cuenta una lectura tomada para el trabajo de ahora.
why-no-surface-temperature = No hay lectura reciente de la temperatura de la superficie de la losa.
why-no-humidity-reading = No hay lectura reciente de temperatura y humedad del aire juntas.
why-surface-too-cold = La superficie de la losa está a { $surface }; por debajo de { $limit } hace demasiado frío para trabajar. El tinte puede salir débil y el sellador puede no curar.
why-surface-too-hot = La superficie de la losa está a { $surface }; por encima de { $limit } hace demasiado calor para trabajar. El tinte y el sellador pueden secar demasiado rápido y dejar traslapes marcados.
why-surface-marginal = La superficie de la losa está a { $surface }; de { $window } no da problemas. Está al límite.
why-surface-fit = La superficie de la losa está a { $surface }.
why-air-too-humid = El aire está a { $humidity } de humedad; el límite es { $limit }.
why-near-dew-point = { $side ->
        [below] La superficie de la losa está { $spread } por debajo del punto de rocío ({ $dew_point }): el agua se está condensando en ella.
       *[above] La superficie de la losa está apenas { $spread } por encima del punto de rocío ({ $dew_point }): el agua se puede condensar en ella.
    } Debe estar al menos { $wanted } por encima.
why-dew-point-marginal = La superficie de la losa está { $spread } por encima del punto de rocío ({ $dew_point }); debe estar al menos { $wanted } por encima. Está al límite.
why-above-dew-point = La superficie de la losa está lo bastante por encima del punto de rocío.
why-rain = Hay lluvia, o pronóstico de lluvia para el trabajo.
why-wind-too-strong = El viento es de { $wind }; con más de { $limit } no se tiñe al aire libre: el tinte se seca mientras trabaja y el viento lo lleva a otras cosas.
why-wind-no-spraying = El viento es de { $wind }; con más de { $limit } no se rocía nada al aire libre. Póngalo con brocha o escoba.

## Liberado por una persona

why-released-by-person = { $by } lo liberó el { $date }: «{ $reason }».
why-release-lapsed = { $by } lo liberó el { $date } («{ $reason }»). Hay pruebas más nuevas en contra, así que esa liberación ya no cuenta.
why-nobody-may-release-site = { $by } lo liberó el { $date } («{ $reason }»). Ninguna palabra sustituye el agua, el lavaojos, el plan del agua residual y las hojas de seguridad.
why-nobody-may-release-air = { $by } lo liberó el { $date } («{ $reason }»). El aire no se libera de palabra: solo cuenta una lectura dentro de las horas del trabajo.
why-word-does-not-settle = { $by } lo liberó el { $date } («{ $reason }»). Ninguna palabra cambia lo que aquí se sabe; esa liberación no cuenta.
why-closed-by-stain = Ya tiene tinte. Así estaba antes de la primera mano; aquí ya no se prueba nada.
remedy-unknown = averiguar primero qué es
