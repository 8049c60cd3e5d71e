# Los papeles: hoja de colado y aviso de obra. Lo que dicen de acabados, cláusulas e incidentes está en es/trade.
# Redacción propia, en el español de las obras en Estados Unidos, sin revisión de un segundo hablante nativo.

## Horas y pie de la hoja

paper-hour-am = { $hour } am
paper-hour-pm = { $hour } pm
paper-hour-noon = 12 del día
paper-hour-midnight = 12 de la noche
paper-sheet = Hoja
paper-sheet-of = de

## Palabras de advertencia, grados, agarre, veteado

paper-signal-warning = ADVERTENCIA
paper-signal-caution = PRECAUCIÓN
paper-signal-notice = AVISO

paper-grade-verified = leído en la fuente
paper-grade-secondary-copy = leído en una copia o cita
paper-grade-from-memory = el documento nombrado, de memoria
paper-grade-common-practice = práctica común, sin fuente
paper-grade-expert-judgment = criterio nuestro

paper-grip-poor = malo
paper-grip-fair = regular
paper-grip-good = bueno

paper-marbling-low = poco
paper-marbling-low-to-medium = poco a medio
paper-marbling-medium = medio
paper-marbling-high = mucho
paper-marbling-varies = varía

## En qué se basa un papel

paper-sources-heading = Fuentes y grados
paper-sources-grades = Grados:
paper-sources-none = sin documento nombrado
paper-sources-defer = El ingeniero con licencia, las hojas de seguridad de los productos y el código local van antes que este papel.

## La hoja de colado

paper-pour-title = Hoja de colado
paper-pour-document = Hoja de colado: { $job }, { $slab }
paper-pour-whom = Para el contratista de concreto; se acuerda antes del colado
paper-pour-job = Obra
paper-pour-slab = Losa
paper-pour-prepared = Preparada
paper-pour-day = Día del colado
paper-pour-day-open = por fijar
paper-pour-lead = Esta losa es el piso terminado. Un tinte reactivo va a colorear el concreto mismo, así que se verá todo lo que la mezcla, el acabado y el curado dejen en la superficie.
paper-pour-governs = La estructura, el refuerzo, las cargas y el código le tocan al ingeniero con licencia. Si esta hoja no coincide con los documentos del ingeniero, el código local o una hoja de seguridad, ellos mandan: avísenos antes del colado.
paper-pour-no-membrane = Nada de membrana de curado en esta losa
paper-pour-no-membrane-what = Sin curador de rociar, sin curador-sellador, sin sellador, sin endurecedor, sin aceite desmoldante. También los productos ASTM C309 y C1315. Los «disipables», solo con prueba escrita de que se quitaron.
paper-pour-no-membrane-why = Una película no deja entrar el tinte y puede ser invisible. Hay que quitarla con químicos, y casi siempre también desbastando.
paper-pour-asked = Lo que pedimos
paper-pour-why = Por qué
paper-pour-grade = Grado

paper-zones-heading = Acabado, zona por zona
paper-zones-zone = Zona
paper-zones-area = Área
paper-zones-finish = Acabado
paper-zones-grip = Agarre seco / mojado
paper-zones-marbling = Veteado
paper-zones-meaning = Qué significa aquí
paper-zones-caution = El agarre es una idea general del tipo de acabado, no una fricción medida, y el sellador lo cambia. Donde el piso se moje, acuerde el agarre con el dueño antes del colado; las reglas de accesibilidad piden una superficie antiderrapante.
paper-zones-burnished = La zona { $zone } pide acabado bruñido, que puede no tomar el tinte hasta que se abra. Pregúntenos antes de colar.

paper-concrete-heading = Concreto que hay que pedir
paper-concrete-slab = Losa: { $area } a { $thickness }
paper-concrete-panels = Paneles de muestra: { $count }
paper-concrete-waste = Desperdicio, { $percent } % (fijado para esta obra)
paper-concrete-total = Pedido, redondeado hacia arriba al cuarto de yarda
paper-concrete-not-in = No incluye bordes engrosados, zapatas, escalones ni partes bajas del terreno: súmelos según los planos.

paper-mix-heading = Mezcla y entrega

paper-joints-heading = Espesor y juntas
paper-joints-spacing = Separación de juntas
paper-joints-spacing-why = de { $low_times } a { $high_times } veces el espesor
paper-joints-spacing-capped = de { $low_times } a { $high_times } veces el espesor, sin pasar de { $most }
paper-joints-depth = Profundidad de junta
paper-joints-depth-value = al menos { $depth }
paper-joints-depth-why = un cuarto del espesor
paper-joints-cut = Cuándo cortar
paper-joints-cut-value = de { $early_low } a { $early_high } h después del acabado con cortadora de entrada temprana, de { $wet_low } a { $wet_high } h con cortadora enfriada con agua
paper-joints-saw = Cortar concreto levanta polvo de sílice, que puede causar enfermedades del pulmón. Corte con agua o con colector de polvo, como manda 29 CFR 1926.1153.

paper-placing-heading = Colado y acabado
paper-placing-skin = El concreto fresco es cáustico y puede causar quemaduras graves en piel y ojos. Guantes y botas impermeables, protección de ojos; lávese enseguida. Siga la hoja de seguridad del cemento.

paper-curing-heading = Curado permitido
paper-curing-lead = Curado húmedo, al menos { $days } días (mejor de 7 a 10), toda la losa igual, para que la cal quede pareja:
paper-curing-start = Empiece en cuanto la superficie esté firme y ya no se marque.
paper-curing-water = Agua limpia; arpillera que no manche o una sola manta pareja, traslapada, sin huecos. Lámina plana en contacto total, solo si se probó en muestra.
paper-curing-wet = Todo mojado, de día y de noche; sin partes secas. Manténgala a { $warm } o más.
paper-curing-panels = Cure los paneles de muestra igual y los mismos días.
paper-curing-lift = Levante todas las mantas juntas y apunte el día y la hora: { $line }

paper-weather-heading = Clima: horas que hay que evitar
paper-weather-rule = Con más de { $limit } lb/pie² por hora de evaporación, la superficie fresca necesita protección. Entonces: cuele más temprano, ponga cortavientos y sombra, nebulice el aire sobre la losa (nunca agua sobre la superficie), tenga listas las mantas mojadas.
paper-weather-often = Sobre la alarma la mitad de los días o más: { $hours }.
paper-weather-often-none = Ninguna hora pasa la alarma la mitad de los días.
paper-weather-seldom = Un día de cada diez o menos: { $hours }.
paper-weather-seldom-none = Ninguna hora se queda en un día de cada diez o menos.
paper-weather-unknown = Sin lecturas: { $hours }.
paper-weather-estimate = Estimación, ±{ "\u00A0" }{ $error }{ "\u00A0" }%. { $month } en { $place }, de { $basis }, con el concreto supuesto a { $concrete }. Muestra cómo es el mes; no es un pronóstico. Revise el pronóstico y mida ese mismo día.
paper-weather-basis-typical = un año de clima típico
paper-weather-basis-recorded = horas registradas
paper-weather-no-series = No se dio archivo de clima para esta losa: busque aire, humedad y viento de ese día y estime la evaporación antes de colar.
paper-weather-axis = parte de los días sobre la alarma
paper-weather-above = sobre la alarma
paper-weather-possible = sobre ella solo dentro del ±{ "\u00A0" }{ $error }{ "\u00A0" }%
paper-weather-chart = Gráfica de barras, { $month }: parte de los días sobre la alarma de evaporación, por hora. { $hours }
paper-weather-chart-hour = { $hour }: { $above } %, hasta { $reach } %
paper-weather-chart-unknown = { $hour }: sin lecturas

paper-panels-usual = Lo usual: { $range }.
paper-panels-heading = Paneles de muestra, colados el mismo día
paper-panels-lead = De la misma carga, con el mismo acabado y el mismo curado que la zona que representan. Numere cada uno, escríbale carga y zona, guárdelo junto a la losa.
paper-panels-finish = Acabado
paper-panels-count = Piezas
paper-panels-size = Tamaño
paper-panels-thickness = Espesor
paper-panels-concrete = Concreto
paper-panels-weight = Cada uno pesa cerca de
paper-panels-heavy = Los paneles pesan y se quiebran: deje que endurezcan; levántelos entre dos o con carrito.
paper-panels-none = No se piden paneles. Sin paneles de este mismo concreto no se puede acordar el color antes de tocar el piso.
paper-panels-all = Todos los paneles

paper-agreed-heading = Acordado antes del colado
paper-agreed-changes = Cambios acordados:
paper-agreed-concrete = Contratista de concreto
paper-agreed-stain = Contratista de tinte
paper-agreed-general = Contratista general o dueño
paper-agreed-name = Nombre
paper-agreed-signature = Firma
paper-agreed-date = Fecha

## El aviso de obra

paper-notice-title =
    Esta losa es
    el piso terminado
paper-notice-document = Aviso de obra: { $job }, { $slab }
paper-notice-report = Avise de daños hoy mismo.
paper-notice-braces = Ancle los puntales fuera de la losa.
paper-notice-found = Ya encontrado aquí
paper-notice-found-none = Nada anotado hasta ahora.
paper-notice-found-all = { $count } en el diario
paper-notice-found-more = y { $count } más en el diario
paper-notice-call = Llame a
paper-notice-job = Obra
paper-notice-posted = Puesto
paper-notice-code = Esta losa en su teléfono
paper-notice-code-alt = Código que abre { $address }
paper-notice-spanish = Español: redacción propia, sin revisión de un segundo hablante nativo.

## Qué muestran los dibujos, para quien no los ve

paper-picture-chalk = Gis oscuro tachado, gis claro permitido
paper-picture-marker = Marcador sobre la losa, tachado
paper-picture-tape = Cinta pegada a la losa, tachada
paper-picture-nail = Puntal clavado en la losa, tachado
paper-picture-lumber = Tablas sobre la losa, tachadas
paper-picture-battens = Material sobre polines, separado de la losa
paper-picture-plastic = Plástico arrugado sobre la losa, tachado
paper-picture-printed = Protección con lo impreso hacia arriba
paper-picture-pipe = Tubo roscado goteando aceite, tachado
paper-picture-tray = Tubo pegado sobre una charola
paper-picture-lift = Plataforma elevadora con charola debajo
paper-picture-boot = Bota limpia y seca
paper-picture-acid = Botella de ácido o cloro, tachada
paper-picture-spray = Pistola de pintar sobre losa cubierta
paper-picture-puddle = Gotas y charco, tachados
paper-picture-cup = Vaso, tachado
paper-picture-slab = Losa con signo de exclamación
paper-picture-report = Globo de voz sobre una mancha en la losa
