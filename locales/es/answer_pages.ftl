# Páginas que responden: cálculos, palabras del oficio, datos, qué comprar, papeles.

sums-title = Cálculos
sums-what = Una pregunta, una respuesta y en qué se basa. No hace falta una losa y no se anota nada.
sums-answer = Respuesta
sums-refused = Todavía no se puede calcular:
sums-file-again = El navegador no guarda el archivo elegido: elíjalo de nuevo.
sums-understood = Con qué se calculó
sums-given = Qué
sums-typed = Escrito
sums-taken = Se usó
sums-assumed = no escrito: valor usual
sums-noticed = Notado en el archivo
sums-rests-on = En qué se basa
sums-change = Cambiar algo
sums-give = Lo que se sabe
sums-example = Llenar con un ejemplo
sums-more = Más
sums-work-out = Calcular
sums-share = La dirección de esta página lleva lo que escribió: mándela y la otra persona ve la misma respuesta.
sums-all = Todos los cálculos
sums-usual = Vacío significa: { $usual }
sums-usual-choice = Lo usual
sums-lines = Uno en cada renglón.
sums-instead = No junto con: { $names }
sums-needs = Solo junto con: { $names }

glossary-title = Palabras del oficio
glossary-what = Cómo le dice la cuadrilla, en inglés y en español, primero con palabras mexicanas. Qué tan seguro, donde no se diga otra cosa: { $grade }.
glossary-search = Buscar una palabra en cualquiera de los dos idiomas
glossary-from-english = De inglés a español
glossary-from-spanish = De español a inglés
glossary-count = { $count ->
        [0] Ninguna palabra tiene eso. Pruebe con una parte más corta.
        [one] 1 palabra
       *[other] { $count } palabras
    }
glossary-all = Ver todas las palabras
glossary-letters = Letras

facts-title = Datos y fuentes
facts-what = Cada regla y cifra en que se puede basar una respuesta, qué tan segura es y de dónde viene. Primero van la hoja del producto, el código local y el ingeniero.
facts-english-only = Los registros están solo en inglés, menos las pruebas; las cifras van en sus unidades.
facts-search = Buscar en los datos
facts-topic = Sobre
facts-every-topic = Todo
facts-count = { $count ->
        [0] Nada tiene eso. Pruebe con menos palabras, o con todo.
        [one] 1 registro
       *[other] { $count } registros
    }
facts-all = Ver todo
facts-groups = Grupos
facts-tests = Pruebas de los puntos de espera
facts-rules = Reglas del oficio
facts-limits = Límites y umbrales
facts-safety = Peligros y precauciones
facts-defer = Esta lista nunca sustituye la hoja de seguridad, el código local, la autoridad del drenaje ni el trabajo con licencia.
facts-figures = Cifras para pedir material
facts-finishes = Acabados
facts-sealers = Clases de sellador
facts-incidents = Lo que otros dejan en la losa
facts-pour = Cláusulas de la hoja de colado
facts-conflicts = Donde las fuentes no coinciden
facts-sources = Fuentes
facts-sources-what = Tal como se vieron. Las páginas de empresas no se nombran a propósito y valen solo como práctica común.
facts-how = Cómo
facts-passes = Pasa
facts-uncertain = No se sabe
facts-fails = No pasa
facts-remedy = Qué ayuda
facts-if-ignored = Si se omite
facts-grade = Qué tan seguro: { $grade }.
facts-two-grades = { $idea }; sus cifras o detalles: { $rest }
facts-source = Fuente:
facts-a-coat = { $amount } por mano
facts-each = { $amount } cada uno
facts-an-hour = { $amount } por hora
facts-months = { $count ->
        [one] { $n } mes
       *[other] { $n } meses
    }
facts-for-each = { $amount } por cada { $per }
facts-at-most = a lo más { $amount }
facts-at-least = al menos { $amount }
facts-above = más de { $amount }
facts-below = menos de { $amount }
facts-about = cerca de { $amount }
facts-usually = { $range }, usualmente { $usual }
facts-topic-bond = Adherencia del sellador
facts-topic-care = Cuidado
facts-topic-conflicts = Donde las fuentes no coinciden
facts-topic-film = Película del sellador
facts-topic-finishes = Acabados
facts-topic-health = Salud y seguridad
facts-topic-money = Dinero
facts-topic-order = Pedido
facts-topic-pour = Colado
facts-topic-practice = Reglas del oficio
facts-topic-residue = Residuo después del tinte
facts-topic-sealers = Selladores
facts-topic-slip = Resbalones
facts-topic-substrate = La losa misma
facts-topic-waste = Agua residual

order-title = Pedido
order-answer = Qué comprar para { $area } de piso
order-no-area = Todavía nada que comprar: falta el plano y no se sabe el área.
order-no-area-what = Dibuje el plano, o anote solo el área. Dos minutos.
order-no-finish = Falta anotar el acabado de una zona; se usó el rango de todos los acabados.
order-note-finish = Anotar el acabado
order-no-recipe = Todavía no hay panel aprobado; se supusieron las manos y el agua usuales. Un panel con la cantidad usada afina el pedido.
order-make-panel = Anotar un panel
order-approve = Anotar el panel aprobado
order-no-sealer = No se ha elegido sellador; por eso no está en la lista.
order-choose-sealer = Elegir el sellador
order-file = Guardar como archivo para hoja de cálculo
order-items = Lo que hace falta y los envases
order-range = Bajo y alto son lo menos y lo más que se suele gastar, no una promesa; los envases cubren lo más.
order-item = Artículo
order-packs = Comprar
order-low = Bajo
order-usual = Usual
order-high = Alto
order-unit = Unidad
order-pieces-unit = piezas
order-grade = Qué tan seguro
order-notes = Qué saber
order-why = Cada artículo: qué saber y en qué se basa
order-facts = Datos usados
order-coverage = Cuánto rinde el tinte
order-zone-head = Zona
order-whole-slab = Toda la losa
order-area = Área
order-finish = Acabado
order-a-coat = Por mano
order-basis = Se basa en
order-zone-evidence = { $zone }: anotaciones en que se basa

papers-title = Papeles
papers-what = Dos papeles para otra gente de la obra. Cada uno es un PDF para imprimir o mandar.
papers-refused = Este papel todavía no se puede hacer:
papers-site-notice = Aviso de obra
papers-site-notice-what = Una hoja en inglés y español para la pared: esta losa es el piso terminado, y qué la conserva así.
papers-found = { $count ->
        [0] No hay nada pendiente de lo encontrado en la losa.
        [one] Nombra 1 cosa encontrada en la losa que sigue pendiente.
       *[other] Nombra las { $count } cosas encontradas en la losa que siguen pendientes.
    }
papers-link = Enlace para imprimir como código
papers-link-hint = Pegue un enlace para compartir de esta losa. Quien lea el aviso lo puede abrir: use un enlace solo para esto y retírelo al final del trabajo.
papers-link-wrong = Esa no es una dirección web que se pueda imprimir. Se acepta: hasta 200 signos sencillos, que empiezan con https://.
papers-size = Papel
papers-letter = Carta
papers-a4 = A4
papers-make-notice = Hacer el aviso de obra
papers-pour-sheet = Hoja de colado
papers-pour-sheet-what = Lo que se acuerda con el contratista del concreto antes del colado: mezcla, acabado, curado, paneles y las horas en que la superficie puede secarse demasiado rápido.
papers-poured = Esta losa se coló el { $date }. Una hoja de colado hecha ahora dice lo que se pudo pedir; no cambia nada en la losa.
papers-no-area = Falta el plano y ninguna zona tiene área. Se acepta: un plano, o uno con solo el área.
papers-from-diary = Del diario: { $value }
papers-pour-day = Día del colado
papers-thickness = Espesor
papers-finish = Acabado: { $zone }
papers-panels = Paneles de muestra de cada acabado
papers-panels-hint = Colados el mismo día, del mismo camión. 0 si no quiere ninguno.
papers-waste = Concreto de más por desperdicio
papers-make-pour-sheet = Hacer la hoja de colado
papers-day-wrong = Eso no es un día. Se acepta: 2026-06-02.
papers-thickness-wrong = Ese espesor no sirve aquí. Se acepta: más de 0, hasta 36 pulg, como 4 pulg o 100 mm.
papers-thickness-missing = Falta el espesor y el diario no lo tiene. Se acepta: 4 pulg o 100 mm.
papers-finish-wrong = Ese acabado no está en la lista. Se acepta: uno de la lista.
papers-finish-missing = Falta el acabado y el diario no lo tiene. Se acepta: uno de la lista.
papers-panels-wrong = Ese número de paneles no sirve aquí. Se acepta: 0 a 99.
papers-waste-wrong = Esa parte no sirve aquí. Se acepta: 0 % a 50 %.
papers-glyph = El signo { $sign } en «{ $text }» no se puede imprimir. Se acepta: letras, cifras y signos comunes, sin caritas. Corrija la anotación en el diario.
papers-failed = No se pudo hacer el papel: { $what }
