# Puntos de espera, estados y la respuesta en una línea.

hold-age = edad
hold-membrane = membrana
hold-absorbency = absorción
hold-reaction = reacción
hold-contamination = contaminación
hold-moisture = humedad
hold-surface-ph = pH de la superficie
hold-repairs = grietas y parches
hold-panel = panel de muestra
hold-site = preparación de la obra
hold-air = aire

ask-age = ¿Ya tiene los días la losa, o está toda de un solo color?
ask-membrane = ¿Está libre de película la superficie?
ask-absorbency = ¿La losa absorbe agua, y parejo?
ask-reaction = ¿Reacciona este concreto con el tinte?
ask-contamination = ¿Está limpia de aceite, marcas, goteos y sombras?
ask-moisture = ¿Está lo bastante seca la losa para el sellador elegido?
ask-surface-ph = ¿Sirve el pH de la superficie para el paso que sigue?
ask-repairs = ¿Están anotados y resueltos los parches, hoyos y grietas?
ask-panel = ¿Está aprobado un panel de este concreto con este acabado?
ask-site = ¿Están listos el agua, el lavaojos, el plan del agua residual y las hojas de seguridad (SDS)?
ask-air = ¿Sirven el aire y la superficie de la losa para trabajar ahora mismo?

# Qué pasa si se omite: nunca más seguro que los registros del oficio sobre las pruebas.
ignored-age = El color puede salir manchado, cambiar después de sellar o sacar salitre.
ignored-membrane = El tinte puede quedarse encima, borrarse al limpiar y dejar manchones.
ignored-absorbency = El color puede salir claro en las orillas u oscuro en el centro; en una superficie cerrada el tinte se puede ir con el lavado.
ignored-reaction = El tinte puede no dar color, o darlo débil y manchado, y después nada lo quita.
ignored-contamination = Pueden quedar manchas pálidas, líneas y sombras en el piso para siempre.
ignored-moisture = El color puede salir disparejo; el sellador puede ponerse blanco, hacer ampollas o pelarse.
ignored-surface-ph = Antes del tinte: el color puede salir débil o no salir. Después del enjuague: el sellador puede pelarse o sacar salitre.
ignored-repairs = Las grietas y los parches pueden tomar otro color, y eso puede acabar en pleito.
ignored-panel = Nadie sabe el color antes de teñir el piso, y un color reactivo no se puede aclarar después.
ignored-site = El ácido en los ojos o en la piel no se podría enjuagar al momento, y el agua de enjuague puede ir a dar a donde no debe. No empiece a trabajar con ácido.
ignored-air = El tinte puede salir débil o con traslapes marcados; el sellador puede ponerse blanco.

state-released = Bien
state-unproven = Sin comprobar
state-cant-tell = No se sabe
state-held = Alto

overall-released = Lista para teñir: los { $asked } puntos de espera están liberados.
overall-released-stained = Lista para sellar: los { $asked } puntos de espera que todavía se preguntan están liberados.
overall-released-zones = { $zones }: ya se puede teñir. Todos los puntos de espera que ahí se preguntan están liberados.
overall-open-floor = Terminado: ya se puede pisar.
overall-sealing = Sellado; todavía falta trabajo.
overall-curing = Sellado y endureciendo.
stage-bare = { $zones }: sin teñir todavía.
stage-dwell = { $zones }: el tinte trabaja hasta el { $until }.
stage-dwell-unknown = { $zones }: el tinte está trabajando; nadie anotó por cuánto tiempo.
stage-next-coat = { $zones }: sigue la mano { $coat } de { $of }.
stage-neutralize = { $zones }: ya se tiñó; falta neutralizar.
stage-rinse = { $zones }: ya se neutralizó; falta enjuagar.
stage-dry = { $zones }: ya se enjuagó; falta probar y secar.
stage-seal = { $zones }: mano { $coat } de { $of } de sellador, no antes del { $from }.
stage-cure = { $zones }: ya se selló; que nadie pise ahí antes del { $until }.
stage-open = { $zones }: ya se puede pisar.
overall-unproven = Todavía no: { $point }.
overall-cant-tell = Todavía no se sabe: { $point }.
overall-held = Alto: { $point }.
overall-point-at = { $point }, { $where }
overall-released-where = Lista para teñir, { $where }: los { $asked } puntos de espera están liberados.
where-whole = todo el piso
where-area = { $zone } ({ $area })
where-many-area = { $zones } zonas ({ $area })
where-many = { $zones } zonas
overall-next = { $action } ({ $time }).
overall-next-untimed = { $action }.
overall-where = { $zones }: { $step }
overall-at = { $order } (en { $place })
overall-by-word = Liberado de palabra: { $points }.
overall-own-limit = Esta losa tiene su propia cifra para: { $facts }.
overall-open = { $open ->
        [0] No queda ningún punto de espera abierto.
        [one] Queda abierto 1 de { $all } puntos de espera.
       *[other] Quedan abiertos { $open } de { $all } puntos de espera.
    }

time-work-wait = { $work }, luego esperar { $wait }
time-wait = esperar { $wait }

reason-in-zone = { $zone }: { $reason }
overall-both-ends = { $order } (el más lento en { $slow }; el más rápido en { $fast })
the-floor = El piso
overall-meanwhile = Mientras tanto, para { $point }: { $step }

ready-deed = { $step }. Es para: { $points }.
ready-unknown = Nadie sabe todavía qué haría falta para liberar: { $points }.
ready-nothing = Todo lo que se pregunta está liberado.
ready-in-all = { $waits ->
        [0] Trabajo: { $work }.
       *[other] Trabajo: { $work }; la espera más larga: { $wait }.
    } Aunque pasen todas las pruebas, no estará lista antes del { $earliest }. Si una prueba no pasa, habrá más trabajo.
ready-question = ¿Qué falta para que esté lista?
ready-head = Qué falta para que la losa «{ $slab }» esté lista, al { $moment }:
overall-lapses = Lo comprobado vale hasta el { $until }.
overall-own-figures = Esta losa va por cifras propias en: { $points }.
