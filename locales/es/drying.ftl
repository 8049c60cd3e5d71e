# Cuándo es probable que la losa esté seca, y la evaporación el día del colado.

## Lo que el pronóstico supuso
drying-assumed-sides-not-noted = Nadie anotó por cuántos lados puede secar: se supuso uno, el de arriba.
drying-assumed-cure-not-noted = No hay curado anotado: se supuso que la losa estuvo mojada hasta el { $until }, un curado largo.
drying-assumed-cure-not-ended = No está anotado cuándo acabó el curado húmedo: se supuso que fue el { $until }.
drying-assumed-membrane-cure = Hay anotada una membrana de curado. Frena el secado hasta que se quita, y eso no se cuenta: espere fechas más tardías.
drying-assumed-cure-method-unknown = No se sabe cómo se curó la losa: el secado se contó desde esa anotación.
drying-assumed-several-pours = En esta losa hay { $count } colados: se siguió el más nuevo, del { $taken }.
drying-assumed-fly-ash-not-counted = La mezcla lleva { $share } de ceniza volante o escoria, que las tablas de secado de las que sale esto no cubren.
drying-assumed-no-sealer-chosen = Para parte de la losa no se ha elegido sellador: valen los dos límites habituales, el de selladores que respiran y el de películas cerradas.
drying-assumed-air-humidity-assumed = No hay humedad del aire anotada: se supuso { $humidity }, como en las tablas de secado.
drying-assumed-air-temperature-assumed = No hay temperatura anotada: se supuso { $temperature }, como en las tablas de secado.
drying-assumed-humidity-on-few-days = La humedad del aire está anotada en { $known ->
        [one] 1 día
       *[other] { $known } días
    } de { $of }: los une una línea recta.
drying-assumed-temperature-on-few-days = La temperatura está anotada en { $known ->
        [one] 1 día
       *[other] { $known } días
    } de { $of }: los une una línea recta.
drying-assumed-humidity-after-record = Después de lo anotado se supuso que el aire se queda en { $humidity }, el promedio del último mes anotado.
drying-assumed-temperature-after-record = Después de lo anotado se supuso que la temperatura se queda en { $temperature }, el promedio del último mes anotado.
drying-assumed-weather-not-room = La losa está bajo techo: el archivo de clima no se usó para el aire que tiene encima.
drying-assumed-typical-year-outdoors = Los días sin anotación salen de un año típico: días así, no esas fechas.
drying-assumed-rain-not-counted = Al aire libre la lluvia vuelve a mojar la losa, y eso no se cuenta.
drying-assumed-zones-as-one-slab = Las lecturas de { $zones } zonas se usaron como si fueran de una sola losa.
drying-assumed-rinse-not-counted = El piso se enjuagó el { $date }, y esa agua no se cuenta: espere fechas más tardías.

## Por qué no hay pronóstico
drying-cannot-no-pour = No hay colado anotado. Anote el colado con espesor y relación agua-cemento para tener un pronóstico.
drying-cannot-existing-floor = Es un piso viejo y no hay colado anotado: no se puede pronosticar nada. Mida.
drying-cannot-no-thickness = El colado no tiene espesor. Corrija la anotación del colado, por ejemplo 4 pulg (100 mm).
drying-cannot-no-water-cement = El colado no tiene relación agua-cemento, y de ella depende el secado. Pida la mezcla a la planta y corrija la anotación del colado.
drying-cannot-thickness-outside = No hay pronóstico para una losa de { $thickness } de espesor: corrija la anotación del colado, o mida.
drying-cannot-water-cement-outside = No hay pronóstico para una relación agua-cemento de { $ratio }: las tablas de las que sale van de 0.35 a 0.75. Corrija la anotación del colado, o mida.
drying-cannot-outdoors-no-air = La losa está al aire libre y no hay humedad del aire anotada. Traiga un archivo de clima, o anote lecturas del aire.

## Lo que va junto a un pronóstico
drying-caution-forecast-never-releases = Un pronóstico nunca libera un punto de espera: lo libera una medición en la losa.
drying-caution-makers-sheet-governs = Manda la hoja del fabricante del sellador.
drying-caution-prior-needs-readings = Todavía no cuenta ninguna lectura en esta losa: esto sale de tablas de secado citadas de memoria. Las sondas en esta losa lo afinan.
drying-caution-readings-unexplained = Las lecturas no van con esta losa como está anotada, así que no se da fecha. Revise las sondas, la mezcla, el espesor, el curado y el lugar.
drying-caution-rule-earlier = Aquí la regla de campo llega muy pronto: según este pronóstico, nueve de cada diez losas siguen entonces demasiado húmedas.
drying-caution-past-horizon = Una fecha que no se da queda más allá del tiempo calculado.

## Por qué no se contó una lectura
drying-left-out-before-pour = Se tomó antes de colar este concreto.
drying-left-out-under-wet-cure = Se tomó antes de que la losa empezara a secar.
drying-left-out-no-depth = No está anotada la profundidad de la sonda.
drying-left-out-deeper-than-slab = La profundidad anotada es mayor que el espesor de la losa.
drying-left-out-not-equilibrated = El hoyo de la sonda debe estar tapado { $needed } antes de leer; no lo estuvo, o nadie lo anotó.
drying-left-out-other-pour = Está en una zona que se coló en otro momento.

## Lecturas que no van, límites y la regla de campo
drying-unexplained-reading = Una lectura de { $read } no puede ser de esta losa: la más cercana de las losas probables tiene { $nearest }.
drying-unexplained-too-few-agree = Muy pocas de las losas probables concuerdan con todas las lecturas juntas.
drying-limit-maker = { $humidity }: el límite del fabricante para el sellador «{ $sealer }»
drying-limit-class = { $humidity }: el límite habitual para el sellador «{ $sealer }»
drying-limit-class-if-maker-says = { $humidity }: para el sellador «{ $sealer }», solo si su fabricante lo permite por escrito
drying-limit-breathing = { $humidity }: el límite habitual para selladores que respiran
drying-limit-film = { $humidity }: el límite habitual para películas cerradas
drying-rule-agrees = La regla de campo, un mes por pulgada, cae dentro del pronóstico.
drying-rule-earlier = La regla de campo, un mes por pulgada, cae antes del pronóstico.
drying-rule-later = La regla de campo, un mes por pulgada, cae después del pronóstico.
drying-rule-cannot-tell = El pronóstico no llega tan lejos como para compararlo con la regla de campo.
drying-rests-description = Se basa solo en lo anotado de la losa.
drying-rests-readings = Se basa también en las lecturas en esta losa.
drying-rests-nothing = No se da fecha: las lecturas no van con esta losa.

## Evaporación el día del colado
pour-day-assumed-concrete-temperature = La temperatura del concreto no está anotada: se supuso { $taken }, a medio camino de lo que se pide en el camión ({ $window }).
pour-day-assumed-wind-from-station = El viento es el de una estación; para la losa se supuso el { $share } de ese viento. Es mejor una lectura en la losa.
pour-day-assumed-typical-year = Las horas son de un año típico: un día así, no esa fecha.
pour-day-assumed-open-to-the-weather = El clima es el de un terreno abierto; bajo techo y entre muros hay más calma.
pour-day-assumed-stamped-at-the-end = Cada renglón del archivo se leyó como el fin de su tiempo.
pour-day-cannot-no-day = No se dio día y no hay colado anotado. Elija un día.
pour-day-cannot-no-series = El diario no tiene archivo de clima. Traiga uno con temperatura del aire, humedad y viento.
pour-day-cannot-day-not-covered = Ningún archivo de clima del diario cubre el { $day }.
pour-day-cannot-no-air-reading = No hay lectura del aire anotada. Lea temperatura del aire, humedad y viento en la losa.
pour-day-cannot-reading-lacks = A la lectura del aire le falta { $lacks }.
pour-day-cannot-outside-formula = Un número queda fuera de lo que cubre la fórmula. Revise el clima, y la alarma y la parte del viento propias de la losa.
pour-day-lacks-air = temperatura del aire
pour-day-lacks-humidity = humedad
pour-day-lacks-wind = viento
pour-day-level-below = bajo la alarma
pour-day-level-possible = tal vez sobre la alarma
pour-day-level-above = sobre la alarma
