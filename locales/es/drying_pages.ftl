# Las páginas de secado, día del colado, línea de tiempo y registro del aire. No más seguras que los cálculos.

drawing-as-table = Lo mismo en una tabla
page-assumed = Lo que se supuso
page-grade = Grado: { $grade }.

## Secado
drying-answer-between = Lo más probable: la losa baja a { $limit } entre el { $early } y el { $late } (8 de cada 10 losas como esta; { $basis ->
        [readings] con sus lecturas
       *[mix] sin lecturas, solo por mezcla, espesor y aire
    }).
drying-answer-open = Para el { $early } baja a { $limit } 1 de cada 10 losas como esta; para el { $horizon }, menos de 9 de cada 10 ({ $basis ->
        [readings] con sus lecturas
       *[mix] sin lecturas, solo por mezcla, espesor y aire
    }).
drying-answer-late = Para el { $horizon } baja a { $limit } menos de 1 de cada 10 losas como esta ({ $basis ->
        [readings] con sus lecturas
       *[mix] sin lecturas, solo por mezcla, espesor y aire
    }).
drying-answer-reached = Mida ahora: 9 de cada 10 losas como esta ya estaban en { $limit } el { $late } ({ $basis ->
        [readings] con sus lecturas
       *[mix] sin lecturas, solo por mezcla, espesor y aire
    }).
drying-answer-nothing = No se puede decir: las lecturas no cuadran con esta losa como se anotó
drying-answer-no-limit = El sellador elegido no pone límite a la humedad en la losa
drying-answer-cannot = Todavía no se puede decir cuándo estará seca la losa
drying-answer-working = El pronóstico se está calculando. Tarda un poco; puede salir y volver.
drying-answer-failed = El pronóstico se interrumpió. Lo anotado no se perdió; mida en la losa.
drying-work = Avance del pronóstico
drying-work-following = Siguiendo { $count } losas posibles
drying-work-weighing = Comparándolas con las lecturas
drying-work-drawing = Dibujando la gráfica
drying-do-read = Anotar una lectura en la losa
drying-do-pour = Anotar el colado
drying-do-fix-pour = Corregir el colado
drying-do-air = Traer un archivo del clima o de un registrador
drying-do-look = Ver la lectura que no cuadra
drying-chart-readings = Humedad en la losa, según las lecturas
drying-chart-mix = Humedad en la losa, según mezcla, espesor y aire
drying-chart-before = Lo probable antes de las lecturas
drying-line-breathing = selladores que respiran
drying-line-film = películas cerradas
drying-limits = Límites y fechas
drying-limits-what = Para qué día llegan al límite las losas como esta
drying-limit = Límite
drying-early = 1 de cada 10
drying-middle = La mitad
drying-late = 9 de cada 10
drying-past = más allá del tiempo visto
drying-mind = Antes de contar con ello
drying-left-out = Lecturas que se dejaron fuera
drying-model = Cómo se sigue el secado:

## Día del colado
pour-day-answer-above = Por encima de la alarma { $times } { $day }
pour-day-answer-possible = Quizá por encima de la alarma { $times } { $day }
pour-day-answer-below = Debajo de la alarma todo el día { $day }
pour-day-answer-below-known = Debajo de la alarma { $day }, en las horas que se conocen
pour-day-answer-unknown = No se puede decir para { $day }: el archivo no tiene ninguna hora con aire, humedad y viento
pour-day-answer-cannot = No se puede decir qué tan rápido perdería agua la losa fresca
pour-day-also-possible = Quizá por encima { $times }.
pour-day-protect = El concreto fresco puede agrietarse antes de fraguar. Cuele en las horas tranquilas, o tenga cortavientos, sombra, neblina de agua y mantas limpias junto a la losa antes de que llegue el camión. No use película contra la evaporación, a menos que una muestra haya probado que el tinte la acepta.
pour-day-look-back = Ese día ya pasó. Busque grietas cortas y paralelas de las primeras horas y anote lo que encuentre.
pour-day-silica-fume = Con humo de sílice en la mezcla la alarma es la mitad: en ella o quizá por encima { $times }.
pour-day-on = el { $date }
pour-day-typical = un { $day } de { $month } típico
pour-day-stretch = de { $from } a { $to }
pour-day-chart = Agua que sale del concreto fresco { $day }
pour-day-line-usual = alarma
pour-day-line-silica-fume = humo de sílice
pour-day-day = Día
pour-day-see = Ver ese día
pour-day-mistake = «{ $typed }» no es un día. Se acepta una fecha como 2026-05-03.
pour-day-hour = Hora
pour-day-rate = Agua que sale, con su margen
pour-day-level = Frente a la alarma
pour-day-air = Aire
pour-day-humidity = Humedad
pour-day-wind = Viento en la losa
pour-day-highest = Lo más alto, { $hour }: { $rate }.
pour-day-not-known = no se sabe
pour-day-last-reading = Según la última lectura del aire
pour-day-moment = { $moment }: { $rate }, con su margen { $span }; { $level }.
pour-day-do-air = Anotar el aire en la losa
pour-day-do-crack = Anotar una grieta
pour-day-why = Donde el agua sale más rápido de lo que sube el agua de sangrado, la superficie se encoge antes de agarrar fuerza: grietas cortas y una superficie débil y manchada que el tinte deja ver para siempre. La cifra es un cálculo aproximado para concreto fresco y mojado, con un margen de cerca de 40 %; no dice nada del concreto ya endurecido.
pour-day-formula = La fórmula:
pour-day-fact-alarm = Alarma: { $value }.
pour-day-fact-silica-fume = Alarma con humo de sílice: { $value }.
pour-day-fact-concrete = Temperatura del concreto: { $value }.
pour-day-fact-wind = Viento en la losa: { $value } del de la estación.

## Línea de tiempo
time-answer-day = { $days ->
        [0] El día del colado
        [one] Día 1 desde el colado
       *[other] Día { $days } desde el colado
    }
time-answer-no-pour = Todavía no hay colado anotado
time-days-since-pour = { $days } días desde el colado
time-equivalent-age = { $days } días contando la temperatura
time-dry-enough = Baja a { $limit }
time-counted = { $count ->
        [one] { $what }
       *[other] { $what } × { $count }
    }
time-chart = Del colado a la entrega
time-do-next = Ver qué sigue
time-why = Las esperas entre el colado y la entrega no se apuran, solo se planean: la edad, el secado, el agua del enjuague. Si se promete una fecha sin contarlas, el piso regresa fallado.
time-empty = Aquí aparecen el colado, el curado, las muestras, las pruebas, los derrames, las manos y el enjuague en cuanto se anotan.

## Registro del aire: un archivo del clima o la tabla de un registrador
air-title = Traer un archivo del clima o de un registrador
air-what = Para el pronóstico de secado y para el día del colado. Usted ve lo que se leyó antes de que se anote algo.
air-file = El archivo
air-file-hint = CSV, EPW o TMY3, hasta 8 MB y 60,000 renglones
air-look = Ver lo que trae
air-look-again = Leerlo así
air-other = Otro archivo
air-accepted = Lo que se lee
air-accepted-epw = Un año del clima en forma EPW.
air-accepted-tmy3 = Un año típico en forma TMY3.
air-accepted-table = Una tabla guardada como CSV con un renglón de nombres: una hora, y al menos una de temperatura del aire, humedad y temperatura de la losa. Para el día del colado hace falta el viento. Las unidades van en los nombres:
air-answer = { $count ->
        [one] 1 renglón, { $from }. Todavía no se anotó nada.
       *[other] { $n } renglones, de { $from } a { $to }. Todavía no se anotó nada.
    }
air-answer-typical = { $count ->
        [one] 1 hora de un año típico, { $from }. Todavía no se anotó nada.
       *[other] { $n } horas de un año típico, de { $from } a { $to }. Todavía no se anotó nada.
    }
air-step = Un renglón cada { $step }.
air-source = Nombre
air-source-hint = De dónde viene, como la estación o el lugar del registrador
air-columns = Lo que se encontró
air-columns-what = Columnas que se usan
air-quantity = Qué
air-column = Columna del archivo
air-count = Lecturas
air-low = Más baja
air-high = Más alta
air-when = Cuándo
air-first-rows = Los primeros renglones como se leyeron
air-left-out = Lo que se dejó fuera o es dudoso
air-nothing-left-out = Nada: todos los renglones están bien.
air-more = Y { $count } más de ese tipo.
air-map = Algo está en la columna equivocada
air-map-what = Elija la columna de lo que no se reconoció o se leyó mal. Lo demás puede quedar como está.
air-map-recognized = como está
air-map-time = Fecha y hora en una columna
air-map-date = Fecha
air-map-clock = Hora del día
air-map-unit = { $quantity }: unidad
air-quantity-air = Temperatura del aire
air-quantity-humidity = Humedad
air-quantity-dew-point = Punto de rocío
air-quantity-wind = Viento
air-quantity-slab = Temperatura de la losa
air-quantity-pressure = Presión del aire
air-quantity-rain = Lluvia
air-mistake-no-file = No llegó ningún archivo. Elija un archivo CSV, EPW o TMY3.
air-mistake-gone = El archivo ya no está guardado aquí. Elíjalo otra vez.
air-mistake-bytes = El archivo pasa de 8 MB. Se aceptan hasta 8 MB; haga que el registrador guarde cada hora.
air-mistake-rows = El archivo tiene { $count } renglones. Se aceptan hasta 60,000; haga que el registrador guarde cada hora, o corte el archivo.
air-refused-empty = El archivo está vacío. Se acepta EPW, TMY3 o una tabla con un renglón de nombres.
air-refused-binary = Este no es un archivo de texto. Se acepta EPW, TMY3 o una tabla; guarde la hoja de cálculo como CSV.
air-refused-header = Renglón { $line }, «{ $found }»: no es el renglón que esa forma lleva ahí. Se acepta el archivo como lo da el servicio del clima; bájelo otra vez.
air-refused-site-field = Renglón { $line }, { $field } «{ $found }»: no se puede leer. Se acepta el archivo como lo da el servicio del clima; bájelo otra vez.
air-refused-no-time = No se reconoció ninguna columna de hora entre: { $found }. Elíjala abajo.
air-refused-no-reading = No se reconoció ninguna columna de aire, humedad o losa entre: { $found }. Elíjala abajo.
air-refused-no-columns = No se reconoció ni hora ni lecturas entre: { $found }. Elija las columnas abajo, o dé a la tabla un renglón de nombres como hora, aire °F, HR %.
air-refused-no-such-column = No hay columna «{ $column }». Se acepta una de { $found }.
air-refused-unknown-unit = «{ $found }» no es una unidad para eso. Se acepta { $accepted }.
air-refused-unit-missing = La columna «{ $column }» no dice su unidad, y 30 grados pueden ser helada o calor. Se acepta { $accepted }. Elíjala abajo.
air-refused-mapping = Las columnas de un año del clima son fijas. Deje todo como está.
air-refused-no-rows = No hay renglones después de los nombres del renglón { $line }. Se acepta un renglón por cada hora.
air-refused-no-good-row = { $count ->
        [one] Ningún renglón sirve. { $first }
       *[other] Ningún renglón sirve; { $count } quedaron fuera, el primero: { $first }
    }
air-assumed-utf16 = El texto se leyó como UTF-16.
air-assumed-latin1 = El texto se leyó como Latin-1.
air-assumed-header-line = Los nombres están en el renglón { $line }; lo de arriba no se usa.
air-assumed-tab = Las columnas se separan con tabuladores.
air-assumed-separator = Las columnas se separan con el signo «{ $sign }».
air-assumed-decimal-comma = Algunos números llevan coma decimal.
air-assumed-time = La hora viene de { $columns }.
air-assumed-unused = No se usan: { $columns }.
air-assumed-two-digit-years = Los años de dos cifras se leyeron como de los 2000.
air-assumed-local-times = Las horas sin diferencia horaria se leyeron como hora local de { $zone }.
air-assumed-stated-offset = Las horas se leyeron con la diferencia UTC { $offset }, como dice el archivo.
air-assumed-repeated-hour = { $count ->
        [one] 1 renglón desde el { $line } cae en la hora que los relojes repiten: la primera vuelta se leyó como la hora anterior.
       *[other] { $count } renglones desde el { $line } caen en la hora que los relojes repiten: la primera vuelta se leyó como la hora anterior.
    }
air-assumed-hour-ending = Cada renglón lleva el final de su hora, en hora estándar, diferencia UTC { $offset }.
air-assumed-wind-at-station = El viento es el que lee la estación, por lo general a 10 m sobre campo abierto; en la losa es menos.
air-assumed-doubtful-rain = { $count ->
        [one] El propio archivo marca 1 hora de lluvia como dudosa: no planee con ella.
       *[other] El propio archivo marca { $count } horas de lluvia como dudosas: no planee con ellas.
    }
air-assumed-typical-year = Un año típico, con meses de los años { $first } a { $last }: días así, no esas fechas.
air-assumed-sorted = { $count ->
        [one] 1 renglón estaba fuera de orden y se puso en su lugar.
       *[other] { $count } renglones estaban fuera de orden y se pusieron en su lugar.
    }
air-date-order-twelve = Las fechas se leyeron con { $order ->
        [month] el mes
       *[day] el día
    } primero: un número mayor que 12 solo puede ser un día.
air-date-order-majority = Las fechas se leyeron con { $order ->
        [month] el mes
       *[day] el día
    } primero, como piden las más; las otras se dejaron fuera.
air-date-order-shorter = Las fechas se leyeron con { $order ->
        [month] el mes
       *[day] el día
    } primero: al revés el registro abarcaría mucho más tiempo.
air-date-order-habit = Las fechas se leyeron con { $order ->
        [month] el mes
       *[day] el día
    } primero. Nada en el archivo lo decide: revíselo.
air-skipped-cell = Renglón { $line }, columna { $column }, «{ $value }»: { $why }
air-skipped-row = Renglón { $line }, «{ $value }»: { $why }
air-why-not-a-number = no es un número. Se acepta { $accepted }.
air-why-unknown-unit = una unidad que no se conoce para eso. Se acepta { $accepted }.
air-why-out-of-range = más o menos de lo que se puede medir al aire libre. Se acepta { $accepted }.
air-why-other-period = lluvia de otro lapso que una hora. Se acepta 1 hora.
air-why-bad-time = no es una fecha con hora. Se acepta 2026-03-02 14:00, o 3/2/2026 2:00 PM.
air-why-no-such-local-time = los relojes se adelantaron sobre esa hora. Se acepta una hora que exista, o con diferencia horaria como 2026-03-08T02:30-05:00.
air-why-leap-day = un año típico no tiene 29 de febrero. Se acepta cualquier otro día.
air-why-cut-short = el renglón está cortado. Se aceptan tantas celdas como en los renglones anteriores.
air-why-too-many-cells = el renglón tiene más celdas que nombres. Se aceptan comillas alrededor de los números con coma decimal.
air-why-nothing-measured = no se midió nada. Se acepta un renglón con al menos una lectura.
air-number-from = un número de { $range }
air-gap = Nada desde { $from } hasta { $to }.
air-double = El renglón { $line } tiene la misma hora que el renglón { $kept }, que se conservó.
