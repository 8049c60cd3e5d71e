# Qué hacer ahora: una orden sin punto final, porque el tiempo puede seguir entre paréntesis.
# .care es la advertencia que va junto al paso peligroso. Las palabras de señal siguen el sentido de
# ANSI Z535. La hoja de seguridad y las reglas locales van siempre primero.

do-note-pour = Anote la fecha del colado
do-wait-for-age = Deje que la losa tenga más días; está muy verde para juzgar el color
do-look-for-one-color = Mire la losa seca y luego rociada con agua, y anote si tiene un solo color parejo; si está dispareja, espere
do-drop-and-scrape = Ponga gotas de agua en { $missing ->
        [one] un lugar
       *[other] { $missing } lugares a 2 pies (60 cm) o más uno de otro
    }, y raspe junto a una gota
do-repeat-drop-and-scrape = Repita las gotas de agua y el raspado, lado a lado, en lugares nuevos
do-scrape = Raspe un lugar pequeño con espátula de carburo y anote qué sale
do-water-drops = Ponga gotas de agua en { $missing ->
        [one] un lugar más, a 2 pies (60 cm) o más de los otros
       *[other] { $missing } lugares más, a 2 pies (60 cm) o más uno de otro
    }, y mida cuánto tarda cada una en absorberse
do-more-drops = Mida { $missing ->
        [one] una gota más
       *[other] { $missing } gotas más
    } en otros lugares: centro, orillas y cada camión
do-screen-place = Pase malla parejo en ese lugar, hasta una orilla natural, y vuelva a poner gotas de agua ahí
    .care = Advertencia: el polvo de sílice puede causar enfermedades del pulmón. Use agua o colector de polvo y siga las reglas de sílice. Pare si hay mastique negro o loseta vieja: puede tener asbesto.
do-mix-by-zone = Tiña aparte un panel o una muestra en sitio para la zona lenta, y prepárele su propia mezcla: { $slow_zone }
    .care = Advertencia: el ácido puede cegar o quemar. Use goggles, careta y guantes, tenga el lavaojos a la mano, y siga la hoja de seguridad.
do-mock-up-both-ends = Haga dos muestras en sitio, una en el lugar más lento y otra en el más rápido, tiña las dos y muéstreselas al dueño
    .care = Advertencia: el ácido puede cegar o quemar. Use goggles, careta y guantes, tenga el lavaojos a la mano, y siga la hoja de seguridad.
do-scrape-where-water-stands = Raspe justo donde el agua se queda parada y anote qué sale
do-acid-drop = Ponga una gota de ácido diluido en un lugar que no se vea, mire si burbujea, y enjuáguela
    .care = Advertencia: el ácido puede cegar o quemar. Use goggles, careta y guantes, tenga el lavaojos a la mano, y siga la hoja de seguridad.
do-ask-about-concrete = No tiña aquí. Averigüe de qué es esta capa: pregúntele a quien la coló, o mande revisar un núcleo
do-try-this-concrete = Tiña un panel o una muestra en sitio de este mismo concreto y vea si toma el color
    .care = Advertencia: el ácido puede cegar o quemar. Use goggles, careta y guantes, tenga el lavaojos a la mano, y siga la hoja de seguridad.
do-solvent-wipe = Pase un trapo blanco con solvente en un lugar pequeño, con las puertas abiertas y sin llama cerca, y revise el trapo
    .care = Advertencia: el vapor del solvente puede incendiarse y hacerle daño. Apague los pilotos, mantenga el aire en movimiento, use guantes y goggles, y siga la hoja de seguridad del solvente.
do-strip-and-retest = Quite la película con un removedor adecuado o desbastando; después repita las gotas de agua y el raspado
    .care = Advertencia: el removedor puede quemar la piel y los ojos, su vapor puede hacerle daño, y desbastar levanta polvo de sílice. Ventile, use agua o colector de polvo, use guantes y goggles, y siga la hoja de seguridad. Pare si hay mastique negro o loseta vieja: puede tener asbesto.
do-screen-and-retest = Pase malla o desbaste parejo toda la zona, hasta las orillas; después repita las gotas de agua
    .care = Advertencia: el polvo de sílice puede causar enfermedades del pulmón. Use agua o colector de polvo y siga las reglas de sílice. Pare si hay mastique negro o loseta vieja: puede tener asbesto.
do-try-on-panel-or-screen = Pruebe el tinte en un panel con este mismo acabado, o pase malla donde el agua tarda y vuelva a probar
    .care = Advertencia: el tinte ácido puede cegar o quemar, y lijar levanta polvo de sílice. Use goggles, careta y guantes, tenga el lavaojos a la mano, use agua o colector de polvo, y siga la hoja de seguridad.
do-mist-and-look = Rocíe la losa con agua, mire a ras de piso buscando aceite, marcas, goteos y sombras, y anote lo que encuentre
do-lift-mist-and-look = Levante la protección, rocíe la losa con agua, mire a ras de piso y anote lo que encuentre
do-treat-and-retest = Trate el lugar (puede ayudar: { $remedy }), enjuague, vuelva a revisar y ponga una gota de agua
    .care = Advertencia: los removedores, desengrasantes y solventes pueden causarle quemaduras o incendiarse. Ventile, sin llamas, nunca mezcle limpiadores, use guantes y goggles, y siga la hoja de seguridad.
do-retest-spot = Revise otra vez el lugar tratado y ponga una gota de agua
do-ask-owner-to-accept = Muéstrele al dueño lo que se va a notar y consiga que lo acepte por escrito
do-choose-sealer = Elija el sellador y anote los límites de humedad de su fabricante
do-end-wet-cure = Anote el día en que se quiten las mantas mojadas
do-set-probes = Ponga sondas de humedad en la losa, o pruebas de cloruro de calcio, donde no importe que se vean sus marcas, y léalas después de la espera
    .care = Precaución: los hoyos de las sondas y los lugares desbastados para los platos se van a ver en el piso teñido; póngalos en clósets, bajo gabinetes o donde el dueño acepte. Advertencia: perforar concreto levanta polvo de sílice, que puede causar enfermedades del pulmón. Use colector de polvo y siga las reglas de sílice.
do-lay-sheet = Pegue con cinta { $missing ->
        [one] un plástico transparente
       *[other] { $missing } plásticos transparentes
    } a la losa y revise por debajo después de la espera
do-measure-moisture-again = Mida la humedad otra vez, según las reglas de la prueba
do-dry-and-measure-again = Deje secar la losa con aire en movimiento y vuelva a medir
do-ask-sealer-maker = Pregunte por escrito al fabricante del sellador cuánta humedad permite
do-test-ph = Mida el pH de la superficie en { $missing ->
        [one] un lugar
       *[other] { $missing } lugares
    }, con agua destilada y papel de pH o medidor
do-wait-dwell = Deje el tinte en paz; no lo pise, no lo cepille, no le eche aire
do-lay-coat = Ponga la mano { $coat } de { $of }
    .care = Advertencia: el tinte ácido puede cegar o quemar. Use goggles, careta, guantes y botas que no resbalen, tenga el lavaojos a la mano, no deje pasar a nadie, y siga la hoja de seguridad.
do-mock-up-or-grind = Pruebe el tinte en una muestra en sitio pequeña; si el color sale débil, desbaste hasta pasta fresca
    .care = Advertencia: el tinte ácido puede cegar o quemar, y desbastar levanta polvo de sílice. Use goggles, careta y guantes, tenga el lavaojos a la mano, use agua o colector de polvo, y siga la hoja de seguridad.
do-neutralize-and-rinse = Neutralice, talle, enjuague, aspire el agua y vuelva a probar
    .care = Advertencia: este piso todavía puede tener ácido. Use goggles, guantes y botas que no resbalen, nunca use cloro, nunca mezcle limpiadores, no deje que el agua de enjuague llegue a drenajes ni a la tierra, y siga las hojas de seguridad.
do-map-cracks = Recorra la losa y anote en el plano cada grieta, hoyo y parche
do-measure-crack = Mida la grieta con un medidor de grietas y anote si sus lados se mueven
do-repair-or-accept = Repárelo con cemento, o consiga que el dueño lo acepte por escrito
    .care = Precaución: el cemento fresco puede quemar la piel. Use guantes.
do-ask-engineer = Pida que un ingeniero con licencia revise la grieta que se mueve
do-try-stain-on-patch = Pruebe el tinte en una esquina pequeña del parche
    .care = Advertencia: el tinte ácido puede cegar o quemar. Use goggles, careta y guantes, tenga el lavaojos a la mano, y siga la hoja de seguridad.
do-make-panel = Haga un panel de muestra de este concreto con este acabado, o enmascare una muestra en sitio en este piso
    .care = Precaución: el concreto fresco puede quemar la piel. Use guantes.
do-stain-panels = Tiña los paneles como piensa teñir el piso
    .care = Advertencia: el tinte ácido puede cegar o quemar. Use goggles, careta y guantes, tenga el lavaojos a la mano, eche el ácido al agua y nunca el agua al ácido, y siga la hoja de seguridad.
do-note-panel = Anote cómo se hizo el panel, y la mezcla y el acabado del panel y del piso
do-seal-panel-and-show = Selle el panel aprobado con el sellador elegido, fotografíelo y muéstreselo otra vez al dueño
    .care = Advertencia: el vapor del sellador puede incendiarse y hacerle daño. Apague llamas y pilotos, mantenga el aire en movimiento y use lo que pide la hoja de seguridad. Un piso sellado resbala cuando está mojado.
do-get-approval = Muéstrele al dueño los paneles teñidos y con sellador, y consiga su elección por escrito
do-set-up-site = Prepare el agua, un lavaojos probado, el plan del agua residual y las hojas de seguridad
do-check-site-again = Revise otra vez esta mañana el agua, el lavaojos, el plan del agua residual y las hojas de seguridad
do-read-air = Mida la temperatura y la humedad del aire, y la temperatura de la superficie de la losa
do-wait-for-air = Espere a que mejore el aire y vuelva a medir
do-agree-probe-place = Acuerde con el dueño un lugar donde no importe que se vea el hoyo de una sonda o la marca de un plato, como un clóset, antes de perforar o desbastar
do-lay-sealer-coat = Ponga la mano { $coat } de { $of } de sellador, no antes del { $from }
    .care = Advertencia: el vapor del sellador puede incendiarse y hacerle daño. Apague llamas y pilotos, mantenga el aire en movimiento y use lo que pide la hoja de seguridad. Un piso sellado resbala cuando está mojado.
do-keep-off = Que nadie pise el piso hasta el { $until }
