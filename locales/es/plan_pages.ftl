# La página del plano, y dibujar el plano.

plan-picture = Plano de la losa
plan-answer = { $area } { $zones ->
        [one] en una zona
       *[other] en { $zones } zonas
    }; { $open ->
        [0] ningún incidente abierto
        [one] 1 incidente abierto
       *[other] { $open } incidentes abiertos
    }
plan-whole = toda la losa
plan-wrong = El plano del diario no cuadra.
plan-none = Todavía no hay plano
plan-none-what = El plano dice qué tan grande es la losa, dónde están sus zonas y huecos, y a qué zona pertenece cada prueba y cada derrame. De él sale cuánto comprar y cuántas pruebas hacen falta.
plan-none-ways = Cuatro maneras, según lo que tenga a la mano:
plan-none-reader = Alguien de la cuadrilla lo puede dibujar.
plan-tap = Toque el plano para anotar algo en ese mismo lugar.
plan-layers = Mostrar
plan-layer-zones = Zonas
plan-layer-cut-outs = Huecos
plan-layer-dimensions = Largos de los muros
plan-layer-sections = Paños de trabajo
plan-layer-incidents = Incidentes y defectos
plan-layer-tests = Pruebas y fotos
plan-layer-next = Dónde probar después
plan-here = Anotar en este lugar
plan-here-other = Otra cosa
plan-only-areas = Solo se conocen las áreas, así que no hay nada que dibujar ni dónde tocar. Dibuje el plano cuando la losa se pueda medir.
plan-zones = Zonas
plan-zones-caption = Área y acabado de cada zona
plan-zone = Zona
plan-area = Área
plan-finish = Acabado
plan-finish-unknown = sin anotar
plan-perimeter = Todas las orillas juntas
plan-cut-outs = Huecos
plan-unzoned = En ninguna zona
plan-by-typing = Anotar con el lugar escrito
plan-by-typing-what = Cada formulario pregunta la zona, o a cuánto hacia la derecha y a cuánto hacia arriba.
plan-correct = Corregir el plano
plan-download = Descargar el dibujo
plan-entry = La anotación del plano en el diario

draw-title = Dibujar el plano
draw-title-fix = Corregir el plano
draw-why = De las áreas depende qué comprar; de los lugares, por cuál zona habla una prueba.
draw-ways = Maneras de dar el plano
draw-by-rooms = Cuarto por cuarto
draw-by-walk = Recorrer los muros
draw-by-area = Solo el área
draw-by-text = Como texto
draw-by-rooms-what = Para pisos de esquinas a escuadra. Cada renglón es un rectángulo: dónde queda su esquina de abajo a la izquierda desde la esquina de la losa, y cuánto tiene de ancho y de fondo. Los cuartos que se tocan se unen en la losa.
draw-by-walk-what = Para cualquier forma. Empiece en una esquina, mida cada muro uno tras otro, y anote para qué lado da vuelta antes de cada uno, hasta volver al principio. El recorrido se comprueba solo: si no cierra, un muro se midió o se escribió mal.
draw-by-area-what = Para un presupuesto, cuando todavía no se mide nada. En un plano así no se puede ubicar nada; dibújelo antes de empezar las pruebas.
draw-by-text-what = El plano como lo guarda el diario, en JSON. Para huecos inclinados, zonas de muchas esquinas y todo lo que los formularios no dicen.
draw-write = Anotar el plano
draw-look-first = Verlo primero
draw-remove = Quitar
draw-rooms = Cuartos
draw-rooms-hint = Los renglones del mismo nombre hacen un solo cuarto, por ejemplo en L. «Hacia la derecha» y «hacia arriba» vacíos quieren decir 0.
draw-room = Cuarto
draw-room-n = Cuarto { $number }
draw-room-name = Nombre
draw-x = Empieza, hacia la derecha
draw-y = Empieza, hacia arriba
draw-width = Ancho
draw-depth = Fondo
draw-add-room = Agregar un cuarto
draw-rest-rooms = Nombre del resto de la losa
draw-rest-rooms-hint = Cuando hay renglones sin nombre: con ellos se hace la losa, y lo que dejan los cuartos con nombre se llama así. Para una losa sin cuartos, deje vacíos todos los nombres.
draw-rest-walk = Nombre de la losa, o de lo que dejan los cuartos
draw-rest-walk-hint = Por ejemplo, pasillo. Vacío: la losa es una sola zona, o el resto no queda en ninguna.
draw-rest-area = Nombre del resto
draw-rest-area-hint = Lo que las partes dejan del total. Vacío: el resto no queda en ninguna zona.
draw-walls = Muros
draw-walls-hint = El muro 1 va hacia la derecha del plano. Antes de cada muro siguiente escoja la vuelta; el ángulo es de 90° si no escribe otro. Solo con cinta: «2 m por 1.5 m, 2.5 m entre» es una marca 2 m hacia atrás por el último muro, otra a 1.5 m por el siguiente, y lo que hay en línea recta entre las dos; «2 m adelante, 1 m al través» es seguir 2 m la línea del último muro y medir a escuadra hasta el siguiente. Marque tan lejos como pueda.
draw-wall = Muro
draw-wall-n = Muro { $number }
draw-turn = Vuelta antes
draw-turn-none = escoja
draw-turn-left = izquierda
draw-turn-right = derecha
draw-turn-straight = derecho
draw-angle = Ángulo
draw-length = Largo
draw-add-wall = Agregar un muro
draw-finer = Última vuelta, límite, principio
draw-finer-hint = Con la vuelta en la esquina del principio, del último muro al muro 1, las vueltas se comprueban solas. El límite es qué tan bien debe cerrar el recorrido. El principio es donde empieza el muro 1, hacia la derecha y hacia arriba.
draw-limit = Límite
draw-start-x = Principio, hacia la derecha
draw-start-y = Principio, hacia arriba
draw-zones-in-walk = Cuartos en la losa
draw-cuts = Huecos: columnas, fosas, jardineras
draw-cuts-hint = Lo que queda adentro y no es losa, cada uno un rectángulo.
draw-cut = Hueco
draw-cut-n = Hueco { $number }
draw-add-cut = Agregar un hueco
draw-north-head = Norte
draw-north = Rumbo de la brújula hacia donde apunta «arriba» en el plano
draw-north-hint = De 0 a 360: 0 si arriba es el norte, 90 si arriba es el este.
draw-area = Área de toda la losa
draw-parts = Partes
draw-parts-hint = Déjelo vacío si la losa es una sola.
draw-part = Parte
draw-part-n = Parte { $number }
draw-part-area = Área
draw-add-part = Agregar una parte
draw-json = El plano en JSON
draw-as-typed = Así va quedando
draw-nothing-yet = El dibujo aparece aquí conforme escribe.
draw-not-yet = Esto todavía no se puede anotar:
draw-open-walk = El recorrido como se escribió, del círculo al punto. Lo que hay entre los dos es la diferencia.
draw-comes-to = { $area }, { $perimeter } alrededor de todas las orillas.
draw-comes-to-area = { $area }.
draw-cut-out = { $area } son huecos.
draw-pieces = La losa queda en { $count } pedazos separados. Si los cuartos se deben tocar, revise dónde empiezan.
draw-unzoned = { $area } no quedan en ninguna zona: para eso no se juzga ni se pide nada. Con un nombre para el resto se vuelven zona.
draw-stranger = { $count ->
        [one] 1 anotación del diario nombra
       *[other] { $count } anotaciones del diario nombran
    } la zona «{ $zone }», que este plano no tiene. No hablarían por ninguna zona.
draw-off = { $count ->
        [one] 1 anotación del diario queda
       *[other] { $count } anotaciones del diario quedan
    } fuera de este plano.
draw-suspect = Mida otra vez: { $suspect }.
draw-wrong-name = Un nombre tiene hasta { $most } letras en un solo renglón.
draw-wrong-nameless = Este renglón no tiene nombre y otros sí. Póngale nombre, o llene abajo «Nombre del resto de la losa».
draw-wrong-side = Escoja también el lado: izquierda o derecha.
draw-wrong-angle = «{ $typed }» no es un ángulo. Escriba grados, como 45, 22.5 o 89°30'; o lo que midió con cinta: «2 m por 1.5 m, 2.5 m entre» o «2 m adelante, 1 m al través». Lo que hay entre las dos marcas no pasa de la suma de ambas ni baja de su diferencia.
draw-wrong-north = «{ $typed }» no es un rumbo. Escriba grados de 0 a 360, como 20.
draw-wrong-limit = «{ $typed }» no es un límite. Escríbalo así: 1:200, de 1:20 a 1:1000000.

# El mapa de la losa.
plan-layer-absorbency = Cómo absorbe
plan-layer-finishes = Acabados
plan-layer-joints = Juntas
plan-layer-score-lines = Ranuras decorativas
map-ground = Qué es cada lugar
map-limits = Una gota que entra en { $quick } cuenta como absorbida, una que sigue ahí después de { $stands } como no absorbida; entre las dos es lento. Práctica común, sin fuente.
map-no-proof = Entre las gotas el mapa está calculado, no visto. No libera nada: eso lo hacen los puntos de espera.
map-drop-here = Poner una gota aquí
map-bays = En qué se apoya el mapa
map-how = Cada acabado de cada colado tiene su propio mapa, por kriging ordinario del logaritmo del tiempo de absorción (Matérn 3/2, varianzas por máxima verosimilitud restringida). Una junta de construcción lo corta, un corte de sierra no. Un mapa necesita gotas en seis lugares.
plan-lines = Juntas y ranuras decorativas
plan-with-finishes = Mostrar los acabados
plan-key = Qué significan las figuras
plan-key-numbers = El número dentro de una figura es su número en la lista; una letra es un lugar para la próxima prueba. Un punto es una marca sin espacio para su figura.
