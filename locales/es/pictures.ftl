# Palabras dentro de los dibujos y en el texto al lado. Cortas: van en una imagen en el teléfono.

pic-plan-desc = { $area } en total, { $width } por { $depth } en lo más ancho. Zonas: { $zones }.
pic-named = { $name }: { $value }
pic-cut-outs = Huecos (ahí no hay losa): { $area }
pic-floor-no-panel = rayado: ningún panel la representa
pic-stretch = { $width } por { $depth }
pic-wall = Muro { $n }: { $length }
pic-more = y { $n } más en la lista
pic-north = N
pic-open = sin resolver
pic-settled = resuelto
pic-in-zone = { $what }, { $zone }
pic-earlier = { $count ->
        [one] { $what }; { $n } prueba anterior ahí
       *[other] { $what }; { $n } pruebas anteriores ahí
    }
pic-soaked = se absorbió en { $time }
pic-stood = seguía sin absorberse a los { $time }
pic-beads = se hizo bolita
pic-seconds = { $n } s
pic-minutes = { $n } min
pic-hours = { $n } h
pic-short-stood = más de { $time }
pic-short-beads = bolita
pic-emission-pounds = { $n } lb
pic-emission-grams = { $n } g
pic-scrape-powder = polvo
pic-scrape-shine-change = brillo
pic-scrape-curl = viruta
pic-scrape-flake = escamas
pic-scrape-tacky = pegajoso
pic-wipe-clean = limpio
pic-wipe-shine-change = brillo
pic-wipe-sticky-or-yellow = pegajoso o amarillo
pic-fizz-strong = burbujea mucho
pic-fizz-weak = burbujea poco
pic-fizz-none = no burbujea
pic-sheet-dry = seco
pic-sheet-darkened = más oscuro
pic-sheet-drops = gotas
pic-defect-crack = grieta
pic-defect-hole = hoyo
pic-defect-spall = despostillado
pic-defect-patch = parche viejo
pic-defect-dusting = superficie que suelta polvo
pic-legend-open = incidente sin resolver
pic-legend-settled = incidente resuelto
pic-legend-next = probar aquí ahora

pic-day = { $day } { $month }
pic-day-year = { $day } { $month } { $year }
pic-month-1 = ene
pic-month-2 = feb
pic-month-3 = mar
pic-month-4 = abr
pic-month-5 = may
pic-month-6 = jun
pic-month-7 = jul
pic-month-8 = ago
pic-month-9 = sep
pic-month-10 = oct
pic-month-11 = nov
pic-month-12 = dic
pic-hour-am = { $n } a. m.
pic-hour-pm = { $n } p. m.
pic-noon = mediodía
pic-midnight = medianoche
pic-today = hoy
pic-today-is = Hoy, { $date }
pic-date = fecha
pic-what = qué
pic-reading = lectura
pic-reading-margin = lectura con su margen
pic-forecast = pronóstico
pic-band = pronóstico: 8 de cada 10 losas caen aquí
pic-middle = mitad del pronóstico
pic-low = bajo
pic-mid = medio
pic-high = alto

pic-drying-axis = Humedad en la losa
pic-drying-desc = Humedad en la losa por día desde el colado: pronóstico, lecturas y límites.
pic-drying-on = Pronóstico para el { $date }: { $middle }; 8 de cada 10 losas caen de { $low } a { $high }.
pic-drying-no-forecast = Todavía no hay pronóstico: faltan el espesor y la mezcla del colado.
pic-drying-reach = { $limit }: la mitad de las losas llega para el { $middle }, 9 de cada 10 para el { $late }.
pic-drying-reach-open = { $limit }: la mitad de las losas llega para el { $middle }; 9 de cada 10 no llegan dentro del pronóstico.
pic-drying-reach-never = { $limit }: la mitad de las losas no llega dentro del pronóstico.
pic-drying-last-reading = Última lectura, { $date }: { $humidity }.
pic-drying-no-readings = Todavía no hay lecturas.
pic-drying-rule = un mes por pulgada
pic-drying-rule-is = La regla de campo de un mes por pulgada se cumple el { $date }; no prueba nada.
pic-drying-not-proof = Un pronóstico no es prueba: solo una medición muestra que la losa está seca.

pic-air-pounds = Agua que sale, lb/pie² por hora
pic-air-kilograms = Agua que sale, kg/m² por hora
pic-air-desc = Agua que sale del concreto fresco hora por hora, con su margen y las líneas de alarma.
pic-air-highest = Lo más alto, { $date }, { $hour }: { $rate }.
pic-air-over = { $count ->
        [one] { $line }: { $n } hora en ella o por encima.
       *[other] { $line }: { $n } horas en ella o por encima.
    }
pic-air-may = { $count ->
        [one] { $line }: { $n } hora más puede alcanzarla dentro del margen.
       *[other] { $line }: { $n } horas más pueden alcanzarla dentro del margen.
    }
pic-air-unknown = { $count ->
        [one] { $n } hora sin lectura.
       *[other] { $n } horas sin lectura.
    }
pic-air-hour = hora
pic-air-rate = salida
pic-air-below = debajo de las líneas
pic-air-possible = puede alcanzar una línea
pic-air-above = en una línea o por encima
pic-air-missing = no se sabe

pic-line-desc = De la primera nota arriba a la última fecha abajo. Las fechas se separan donde pasó mucho.
pic-line-happened = pasó
pic-line-trouble = problema
pic-line-milestone = marca del calendario
pic-line-forecast = pronóstico: lapso probable, raya a la mitad
pic-line-by = la mitad para el { $middle }, 9 de cada 10 para el { $late }
pic-line-by-open = la mitad para el { $middle }; el final no entra en el pronóstico
pic-line-open = no es probable dentro del pronóstico
pic-line-span = 1 de cada 10 para el { $early }, { $rest }

pic-score-axis = Puntaje, unidades CIEDE2000
pic-score-even = abajo puede ser un solo color
pic-score-patchy = desde aquí puede ser manchada
pic-score-none = ninguno
pic-score-last = Última foto, { $date }: { $score }.
pic-score-desc = Puntajes de las fotos por día, con los dos límites. Una marca hueca es una foto sin puntaje.

pic-ground-share = { $share } { $what }
pic-share = { $n } %
pic-share-least = menos de 1 %
pic-ground-unsure = en { $share } la clase no es segura
pic-ground-film = película
pic-ground-stands = el agua se queda parada
pic-ground-slow = absorbe lento
pic-ground-untested = faltan pruebas
pic-ground-dense = absorbe, acabado denso que muchas veces pide una mano más
pic-ground-drinks = absorbe
pic-ground-spot = { $what }, { $state }
pic-ground-spot-assumed = { $spot } (su alcance se supuso)
pic-ground-untreated = sin tratar
pic-ground-still-there = sigue ahí
pic-ground-stops-water = todavía detiene el agua
pic-ground-faint = queda un rastro leve
pic-ground-no-treatment = se ve limpio, sin tratamiento anotado
pic-ground-not-retested = tratado, sin probar de nuevo
pic-ground-no-drop = tratado, todavía sin gota de agua
pic-ground-not-acceptable = hay que tratarlo
pic-ground-nothing-takes-it-out = no se conoce tratamiento que lo saque
pic-ground-cleared = pasó su prueba
pic-ground-accepted = aceptado
pic-ground-not-settled = sin resolver
pic-bay = { $finish } ({ $zones })
pic-bay-no-finish = acabado no anotado
pic-bay-mapped = { $drops } gotas; al quitarlas una por una, el mapa acertó en { $held } de { $timed } (se espera 8 de cada 10)
pic-bay-unplaced = { $count ->
        [one] { $n } gota sin lugar no está en el mapa
       *[other] { $n } gotas sin lugar no están en el mapa
    }
pic-bay-too-few = { $count ->
        [one] { $places } lugar tiene gotas; lugares que faltan para un mapa: { $more }
       *[other] { $places } lugares tienen gotas; lugares que faltan para un mapa: { $more }
    }
pic-bay-no-drops = todavía no hay gotas; un mapa necesita { $more } lugares
pic-bay-stood = solo { $timed } de { $drops } gotas se absorbieron: no hay mapa; primero averigüe por qué el agua se queda parada
pic-bay-film = película: una gota no dice nada del concreto que está abajo
pic-bay-stands = el agua se queda parada en todas las gotas
pic-bay-none = con estas gotas no sale un mapa
pic-next = Pruebe aquí ahora
pic-next-settles = así se espera saber de { $area } más
pic-next-first-map = { $count ->
        [one] aquí todavía no hay mapa, falta { $n } lugar
       *[other] aquí todavía no hay mapa, faltan { $n } lugares
    }
pic-saw-cuts = Cortes de sierra: { $length } en total
pic-construction-joints = Juntas de construcción: { $length } en total
pic-isolation-joints = Juntas de aislamiento: { $length } en total
pic-joints = Juntas de tipo no anotado: { $length } en total
pic-score-lines = Ranuras decorativas: { $length } en total
pic-key-saw-cut = corte de sierra
pic-key-construction-joint = junta de construcción
pic-key-isolation-joint = junta de aislamiento
pic-key-joint = junta, tipo no anotado
pic-key-score-line = ranura decorativa
pic-key-section = entre paños
pic-section = Paño { $n }: { $area }
pic-section-short = Paño { $n }
pic-key-drinks = absorbe: la gota se va en menos de { $time }
pic-key-slow = absorbe lento: de { $low } a { $high }
pic-key-stands = el agua se queda parada: más de { $time }
pic-key-unsure = clase no segura
pic-key-border = tiempo de una gota; línea gruesa donde cambia la clase
pic-next-enough = Bastan las gotas: otra apenas cambiaría qué se hace y dónde.
pic-next-none = No se nombra ningún lugar para una gota: aquí no se puede planear ninguno. Donde se halló una película o el agua queda parada en todas partes, trate primero la superficie y pruebe otra vez.
