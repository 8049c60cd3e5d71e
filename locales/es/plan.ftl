# Cómo cerró un recorrido por los muros, y lo que puede estar mal en un plano.

walk-exact = El recorrido cierra exacto después de { $perimeter }.
walk-closed = El recorrido termina a { $gap } de donde empezó, { $direction }. Eso es { $precision } de los { $perimeter } recorridos, y el límite es { $limit }. La diferencia se repartió entre todos los muros según su largo (regla de la brújula).
walk-turns = Las vueltas se pasaron o faltaron { $angle }° para una vuelta completa; eso se quitó de todas las esquinas por partes iguales.
walk-toward = hacia el { $point } del plano ({ $angle }°)
walk-point-0 = norte
walk-point-1 = noreste
walk-point-2 = este
walk-point-3 = sureste
walk-point-4 = sur
walk-point-5 = suroeste
walk-point-6 = oeste
walk-point-7 = noroeste
walk-turn-right = { $angle }° a la derecha
walk-turn-left = { $angle }° a la izquierda
walk-turn-straight = derecho
walk-suspect-wall = el muro { $leg } («{ $typed }»)
walk-suspect-turn = la vuelta antes del muro { $leg } («{ $typed }»)
walk-suspect-inside = la vuelta antes del muro { $leg } (¿«{ $typed }» es el ángulo de adentro de la esquina?)
walk-suspect-fits = { $what }, donde quedaría bien { $better }
walk-suspect-leaves = { $what }, donde quedaría bien { $better } salvo por { $gap }
walk-suspects = Lo más probable es que esté mal: { $suspects }.
walk-suspects-none = Ningún muro por sí solo lo explica.

plan-wrong-unreadable = Esto no se puede leer: { $problem }
plan-wrong-zero-length = «{ $typed }» no tiene largo. Escriba un largo mayor que cero, como { $example }.
plan-wrong-same-corner = Dos esquinas seguidas están en el mismo lugar. Escriba cada esquina una sola vez.
plan-wrong-too-large = «{ $typed }» es más grande que cualquier losa. Los largos llegan a 10 km y las áreas a 100 km².
plan-wrong-few-walls = { $count ->
        [0] Todavía no hay muros.
        [one] Va 1 muro.
       *[other] Van { $count } muros.
    } Un recorrido necesita { $least } o más.
plan-wrong-few-corners = Una figura necesita { $least } esquinas o más; hay { $count }.
plan-wrong-few-rectangles = Todavía no hay nada que dibujar. Escriba por lo menos un rectángulo.
plan-wrong-too-many = { $count } son demasiados. Se aceptan hasta { $most }.
plan-wrong-missing-turn = Al muro { $leg } le falta la vuelta de antes. Escoja izquierda o derecha; el ángulo es de 90° si no escribe otro.
plan-wrong-crossing = El muro { $first } y el muro { $second } se cruzan o se tocan, a { $x } hacia la derecha y { $y } hacia arriba. Dé los muros en orden alrededor de la losa.
plan-wrong-no-area = No queda nada de esta figura. Necesita un área mayor que cero.
plan-wrong-no-area-typed = «{ $typed }» no es un área. Escriba un área mayor que cero, como { $example }.
plan-wrong-walk-open = El recorrido termina a { $gap } de donde empezó, { $direction }. Eso es { $precision } de los { $perimeter } recorridos; el límite es { $limit }, una diferencia de { $allowed }. Es más de lo que se equivoca una cinta, así que no se repartió nada entre los muros.
plan-wrong-turns-open = Todas las vueltas juntas hacen { $sum }. Alrededor de una losa hacen 360° hacia un lado, con { $limit }° de tolerancia.
plan-wrong-mixed = Un área sola y una figura dibujada no van juntas. Dibuje todas las partes, o dé todas como área.
plan-wrong-cut-out-outside = { $area } de este hueco quedan fuera de la losa. Un hueco va adentro.
plan-wrong-zone-outside = { $area } de la zona «{ $name }» quedan fuera de la losa. Una zona va adentro.
plan-wrong-zones-overlap = Las zonas «{ $name }» y «{ $other }» se enciman en { $area }. Las zonas van una al lado de la otra.
plan-wrong-areas-too-large = Juntas son { $sum }, más de los { $available } que hay.
plan-wrong-duplicate-zone = Ya hay una zona «{ $name }». Escriba cada nombre una sola vez; las mayúsculas no cuentan.
plan-wrong-blank-name = El nombre está vacío. Escriba un nombre, como A o salón.
plan-wrong-two-rests = Las zonas «{ $other }» y «{ $name }» no tienen figura. Solo una zona puede ser el resto de la losa.
plan-wrong-empty-zone = No queda nada de la losa para la zona «{ $name }».
plan-wrong-lines-without-shape = Solo se conoce el área, así que ninguna línea tiene lugar. Dibuje primero la losa.
plan-wrong-line-off-slab = Nada de esta línea está sobre la losa ni en su zona. Una línea tiene una parte sobre ella y no corre por su orilla.
plan-wrong-too-many-lines = «{ $typed }» hace { $count } líneas; puede haber { $most }.
plan-wrong-border-too-wide = Una franja a «{ $typed }» de la orilla no deja nada adentro. Hágala más angosta.
plan-wrong-unknown-zone = No hay zona «{ $name }». Hay: { $known }.
