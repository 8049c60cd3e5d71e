# Juntas y ranuras decorativas, y planos sacados de archivos de dibujo.

lines-carried = { $joints ->
        [0] El plano vigente tiene { $patterns ->
            [one] 1 dibujo de ranuras decorativas
           *[other] { $patterns } dibujos de ranuras decorativas
        }; el plano nuevo lo conserva.
        [one] El plano vigente tiene 1 junta y { $patterns ->
            [one] 1 dibujo
           *[other] { $patterns } dibujos
        } de ranuras decorativas; el plano nuevo los conserva.
       *[other] El plano vigente tiene { $joints } juntas y { $patterns ->
            [one] 1 dibujo
           *[other] { $patterns } dibujos
        } de ranuras decorativas; el plano nuevo los conserva.
    }
lines-leave-out = Dejar fuera las juntas y las ranuras decorativas
lines-joint-unfit = { $number ->
        [0] Las juntas del plano anterior
       *[other] Junta { $number } del plano anterior
    }: { $said } Si ya no cabe, marque «Dejar fuera las juntas y las ranuras decorativas».
lines-pattern-unfit = { $number ->
        [0] Las ranuras decorativas del plano anterior
       *[other] Dibujo { $number } de las ranuras decorativas del plano anterior
    }: { $said } Si ya no cabe, marque «Dejar fuera las juntas y las ranuras decorativas».

lines-title = Juntas y ranuras decorativas
lines-why = Los cortes se cobran por largo, la orilla mojada puede parar en una línea, y una losa con muy pocas juntas se agrieta por donde quiere.
lines-not-drawn = Las líneas necesitan un plano dibujado. Dibuje primero la losa, por cuartos o recorriendo los muros.
lines-joints = Juntas
lines-joints-hint = Cada junta es una línea recta de un punto a otro, medida hacia la derecha y hacia arriba desde la esquina del plano. Vacío quiere decir 0. Una línea puede pasar de la orilla: cuenta lo que queda sobre la losa.
lines-joint = Junta
lines-add-joint = Agregar una junta
lines-from-x = Desde, hacia la derecha
lines-from-y = Desde, hacia arriba
lines-to-x = Hasta, hacia la derecha
lines-to-y = Hasta, hacia arriba
lines-kind = Cómo se hizo
lines-kind-unknown = sin anotar
lines-kind-saw-cut = corte de sierra
lines-kind-construction = junta de construcción, entre dos colados
lines-kind-isolation = junta de aislamiento, alrededor de lo que debe moverse libre
lines-via = Puntos intermedios, como los guarda el diario
lines-thickness = Espesor de la losa
lines-thickness-hint = De él sale la separación de las juntas.
lines-thickness-known = El diario dice { $thickness }; eso vale mientras esto quede vacío.
lines-propose = Proponer cortes de sierra
lines-propose-what = Llena los renglones de abajo en lugar de los cortes de sierra y de las juntas sin anotar cómo se hicieron; las juntas de construcción y de aislamiento se quedan, y la propuesta no las toma en cuenta. No se anota nada hasta que usted pulse «Anotar las líneas».
lines-wish = Área que la cuadrilla tiñe con la orilla mojada
lines-wish-hint = Los paños vecinos se juntan hasta que cada uno tenga más o menos ese tamaño.
lines-patterns = Ranuras decorativas
lines-pattern = Dibujo
lines-add-pattern = Agregar un dibujo
lines-grids = Cuadrículas
lines-grids-hint = Dos familias de líneas a escuadra. Una sola separación hace cuadros. Un cruce vacío es la esquina de abajo a la izquierda de la losa o de la zona.
lines-grid = Cuadrícula
lines-spacing-x = De línea a línea, hacia la derecha
lines-spacing-y = De línea a línea, hacia arriba
lines-turn = Girada
lines-turn-none = sin girar
lines-origin-x = Un cruce, hacia la derecha
lines-origin-y = Un cruce, hacia arriba
lines-diagonals = Diagonales
lines-diagonals-hint = Cuadros parados en una esquina; la separación es el lado de un cuadro.
lines-diagonal = Líneas a 45°
lines-spacing = De línea a línea
lines-borders = Franjas
lines-borders-hint = Una línea a lo largo de cada orilla, a esa distancia hacia adentro.
lines-border = Franja
lines-inset = Hacia adentro desde la orilla
lines-free = Ranuras sueltas
lines-free-hint = Líneas rectas de un punto a otro.
lines-free-one = Línea
lines-sliver = Un cuadro cortado es una tira angosta por debajo de
lines-sliver-hint = Como parte del lado más corto de un cuadro entero. Práctica común, sin fuente: 50 %.
lines-more-rows = Más renglones
lines-look = Ver en qué queda
lines-write = Anotar las líneas
lines-check = Las juntas contra la regla de campo
lines-no-rule = Escriba el espesor de la losa para revisar las juntas.
lines-no-findings = Según la regla, nada habla en contra de estas juntas. Eso no quiere decir que nada se agriete.
lines-governs = Es una regla de campo, no el diseño de un ingeniero: mandan los planos y el ingeniero responsable.
lines-length = Largo
lines-tiles-head = Cuadros
lines-joints-length = { $count ->
        [0] Todavía no hay juntas.
        [one] 1 junta, { $length }.
       *[other] { $count } juntas, { $length } en total.
    }
lines-sections = { $count ->
        [one] La losa es un solo paño de { $large }.
       *[other] { $count } paños entre juntas, de { $small } a { $large }.
    }
lines-merged = { $count ->
        [one] Para { $wish } a la vez: un solo paño de { $large }.
       *[other] Para { $wish } a la vez: { $count } paños, de { $small } a { $large }.
    }
lines-merged-larger = El más grande pasa de eso: una junta o una ranura decorativa que lo cruce le daría a la orilla mojada dónde parar.
lines-rule = Para una losa de { $thickness } de espesor, la regla pone las juntas cada { $low } a { $high }.
lines-finding-long = El paño cerca de { $x } hacia la derecha y { $y } hacia arriba mide { $side }; la regla no lo quiere de más de { $limit }.
lines-finding-aspect = El paño cerca de { $x } hacia la derecha y { $y } hacia arriba es { $aspect } veces más largo que ancho; la regla acepta hasta { $limit } veces.
lines-finding-corner = Ninguna junta sale de la esquina a { $x } hacia la derecha y { $y } hacia arriba, que apunta hacia adentro de la losa: en esas esquinas empiezan las grietas.
lines-finding-column = Ninguna junta llega a la columna a { $x } hacia la derecha y { $y } hacia arriba.
lines-finding-tapering = El paño cerca de { $x } hacia la derecha y { $y } hacia arriba termina en una esquina de { $angle }, más aguda que { $limit }: esas puntas se rompen.
lines-finding-short = Una junta termina dentro de un paño a { $x } hacia la derecha y { $y } hacia arriba, no en una orilla ni en otra junta.
lines-more-findings = { $count ->
        [one] Y 1 más.
       *[other] Y { $count } más.
    }
lines-all-patterns = Todos los dibujos juntos: { $length }. Lo que dos comparten cuenta una vez.
lines-tiles = { $whole } enteros, { $cut } cortados; { $slivers ->
        [0] ninguna tira angosta
        [one] 1 tira angosta
       *[other] { $slivers } tiras angostas
    }
lines-parts = { $count ->
        [one] 1 parte
       *[other] { $count } partes
    }
lines-wrong-sliver = «{ $typed }» no es una parte. Escriba una de 0 a 100 %, por ejemplo 50 %.
lines-wrong-via = «{ $typed }» no son puntos. Deje esto vacío, o escríbalos como los guarda el diario, por ejemplo [["10 ft","5 ft"]].
lines-wrong-kind = «{ $typed }» no es una clase de junta. Escoja una de la lista.
lines-wrong-no-thickness = Para una propuesta hace falta el espesor de la losa, por ejemplo 5 pulg o 125 mm. El diario no lo tiene.
lines-wrong-thickness = Un espesor es mayor que cero, por ejemplo 5 pulg o 125 mm.
lines-wrong-wish = Hace falta un área mayor que { $zero }.
lines-wrong-crossings = Las líneas se cruzan en más de { $most } lugares. Escriba menos líneas, o una separación mayor.
lines-wrong-sections = Hay { $count } paños por juntar; se pueden hasta { $most }. Escriba menos juntas.
lines-wrong-cuts = Con ese espesor harían falta { $count } cortes en un sentido; se proponen hasta { $most }. Revise la unidad del espesor.
lines-wrong-fine = Algunas líneas corren a un pelo una de otra, y no se puede decir qué hay entre ellas. Sepárelas, o póngalas una sobre otra.

dxf-title = De un archivo de dibujo
dxf-what = El dibujo de un arquitecto en un archivo DXF trae la línea alrededor de la losa. Escoja qué es cada capa, vea el plano, y solo entonces anótelo.
dxf-file = Archivo de dibujo
dxf-file-hint = DXF guardado como texto, de hasta 32 MB. Los dibujos en otros formatos primero se guardan como DXF.
dxf-look = Ver el archivo
dxf-look-again = Ver otra vez
dxf-other = Otro archivo
dxf-unit = Cuánto es una unidad del dibujo
dxf-unit-hint = Con lo que mediría la losa en cada una.
dxf-unit-told = como dice el archivo: { $unit }
dxf-unit-choose = escoja: el archivo no lo dice
dxf-unit-size = { $unit }: { $x } por { $y }
dxf-unit-none = no se dice
dxf-unit-mm = milímetros
dxf-unit-cm = centímetros
dxf-unit-dm = decímetros
dxf-unit-m = metros
dxf-unit-in = pulgadas
dxf-unit-ft = pies
dxf-unit-yd = yardas
dxf-unit-survey = pies de topografía de EE. UU.
dxf-own-units = { $size } unidades
dxf-own-square-units = { $size } unidades cuadradas
dxf-layers = Capas
dxf-layers-hint = Una capa da la vuelta a la losa; las líneas cerradas adentro, en la misma capa, son huecos. Las zonas toman el nombre de un texto que esté adentro, o si no el de su capa.
dxf-more-layers = { $count ->
        [one] 1 capa más no se muestra. Guarde un dibujo de la losa sola.
       *[other] { $count } capas más no se muestran. Guarde un dibujo de la losa sola.
    }
dxf-role-nothing = no se usa
dxf-role-outline = línea alrededor de la losa
dxf-role-cut-outs = huecos
dxf-role-zones = zonas
dxf-role-joints = juntas
dxf-as-chosen = El plano como se escogió
dxf-holds-closed = { $count ->
        [one] 1 línea cerrada: { $areas }.
       *[other] { $count } líneas cerradas: { $areas }.
    }
dxf-holds-open = { $count ->
        [one] 1 línea abierta;
       *[other] { $count } líneas abiertas;
    } la abertura más chica es de { $gap }, de { $from } a { $to }.
dxf-holds-open-far = { $count ->
        [one] 1 línea abierta.
       *[other] { $count } líneas abiertas.
    }
dxf-holds-branches = { $count ->
        [one] Tres o más líneas se juntan en { $at }.
       *[other] Tres o más líneas se juntan en { $count } lugares, uno en { $at }.
    }
dxf-holds-texts = { $count ->
        [one] 1 texto.
       *[other] { $count } textos.
    }
dxf-holds-ignored = Se dejó fuera: { $kinds }.
dxf-joints = { $count ->
        [one] 1 junta.
       *[other] { $count } juntas.
    }
dxf-left-out = { $count ->
        [one] 1 línea de las capas de juntas está fuera de la losa o corre por su orilla, y se deja fuera.
       *[other] { $count } líneas de las capas de juntas están fuera de la losa o corren por su orilla, y se dejan fuera.
    }
dxf-drops-lines = El plano vigente tiene juntas o ranuras decorativas. No se conservan: este dibujo tiene su propia esquina desde donde se mide.
dxf-wrong-no-file = Escoja primero un archivo de dibujo.
dxf-wrong-gone = El archivo ya no está aquí. Escójalo otra vez.
dxf-wrong-bytes = El archivo pasa de 32 MB. Guarde un dibujo de la losa sola.
dxf-wrong-much = El dibujo trae demasiado: más de { $most } de una misma clase. Guarde un dibujo de la losa sola.
dxf-wrong-loops = La capa trae más de { $most } líneas cerradas. Ponga en ella solo lo que es del plano.
dxf-wrong-corners = Las líneas de la capa tienen más de { $most } esquinas. Dibújelas con menos.
dxf-wrong-not-text = Este no es un archivo DXF de texto: está vacío o es binario. Guarde el dibujo como DXF de texto.
dxf-wrong-malformed = El renglón { $line } del archivo tiene «{ $found }» donde va { $expected }. Guarde el dibujo otra vez como DXF.
dxf-expected-section = el comienzo de una sección o el fin del archivo
dxf-expected-code = un código de grupo (un número entero)
dxf-expected-entity = una entidad (código 0)
dxf-expected-blocks = un bloque que empieza y termina
dxf-expected-number = un número
dxf-expected-small = un número de hasta 10^12
dxf-expected-whole = un número entero de -32768 a 32767
dxf-wrong-cut-short = El archivo termina antes de tiempo: está cortado. Mande el archivo completo, hasta su marca EOF.
dxf-wrong-nested = El bloque «{ $block }» se contiene a sí mismo, o hay bloques unos dentro de otros a más de { $depth } niveles. Descompóngalo y guarde otra vez.
dxf-wrong-unit = El archivo no dice en qué unidad está dibujado. Escoja la unidad.
dxf-wrong-layer = En el dibujo no hay capa «{ $layer }».
dxf-wrong-no-outline = Ninguna capa está escogida como la línea alrededor de la losa. Escoja una.
dxf-wrong-two-outlines = Más de una capa está escogida como la línea alrededor de la losa. Escoja una sola.
dxf-wrong-nothing-closed = La capa «{ $layer }» no tiene ninguna línea cerrada. Cierre sus líneas en el dibujo, o escoja otra capa.
dxf-wrong-open = Una línea de la capa «{ $layer }» está abierta por { $gap }, de { $from } a { $to } en el dibujo. Haga que las puntas se junten.
dxf-wrong-branching = En la capa «{ $layer }» { $count } líneas se juntan en { $at }, y no se sabe cuál da la vuelta. En una esquina se juntan dos.
dxf-wrong-apart = La capa «{ $layer }» tiene { $count } líneas cerradas apartadas, una en { $at }. Una da la vuelta a la losa, las demás van adentro.
dxf-wrong-outside = Una línea cerrada de la capa «{ $layer }» sale de la losa en { $at }. Las líneas de esta capa van dentro de la línea de alrededor.
dxf-wrong-wide = En esa unidad la losa mediría { $across } de ancho. Escoja otra unidad.
