# Lo que dice el programa de las páginas en el teléfono. La página lleva estos textos en una
# plantilla con los huecos abiertos: cada uno debe leerse bien con cualquier número, sin plurales.

## Anotaciones que esperan en este teléfono

script-not-sent-yet = Sin enviar todavía: { $count }
script-send-now = Enviar ahora
script-sending = Enviando…
script-still-waits = El servidor no contesta. Las anotaciones se quedan en este teléfono y se volverán a enviar.
script-all-sent = Todo enviado
script-kept-on-phone = Guardada en este teléfono. Se envía cuando haya señal.
script-photographs = Fotos: { $count }
script-state-waiting = Espera a que haya señal
script-state-refused = No fue aceptada
script-state-needs-sign-in = Espera a que usted entre con permiso para escribir aquí
script-sign-in = Entrar
script-mend = Corregir
script-throw-away = Borrar
script-throw-away-sure = ¿Borrar «{ $label }»? No se ha enviado y no se puede recuperar.
script-waits-for-others = Esperan en este teléfono: { $count }. Cada una se envía cuando la persona que la escribió entre aquí.
script-sign-out-waiting = Sin enviar todavía: { $count }. Se quedan en este teléfono solo para usted y se envían cuando vuelva a entrar aquí. ¿Cerrar la sesión ahora?
script-signed-out = Su sesión está cerrada en este teléfono, pero el servidor no contestó. Cargue esta página otra vez.

## Lo que estaba mal

script-mistakes-head = Todavía no se anotó. Corrija esto:
script-refused-general = El servidor no aceptó esta anotación. Revísela y envíela otra vez.
script-photograph-too-large = { $name } pesa { $size } MB. Se pueden enviar { $limit } MB como máximo; escoja en la cámara un tamaño de foto más chico.
script-photograph-unreadable = Una foto no se pudo leer en este teléfono. Escójala otra vez.
script-no-room = En este teléfono no hay espacio para guardar la anotación, y tampoco se pudo enviar. Todo lo que escribió y las fotos siguen en este formulario: déjelo abierto. Haga espacio (borre fotos o aplicaciones que no necesite) o vaya a donde haya señal, y oprima otra vez. Si se cerró su sesión, entre primero en otra ventana.
script-cannot-store = Este navegador no guarda nada en el teléfono, y la anotación tampoco se pudo enviar. Todo lo que escribió y las fotos siguen en este formulario: déjelo abierto, vaya a donde haya señal y oprima otra vez. Si se cerró su sesión, entre primero en otra ventana.
script-unsaved = En este teléfono no hay espacio para guardar lo que está en este formulario mientras usted trabaja. Envíelo antes de salir de la página, o haga espacio: borre fotos o aplicaciones que no necesite.

## Borradores y páginas guardadas

script-restored = Se recuperó lo que usted había escrito.
script-start-afresh = Empezar de nuevo
script-kept-page = Está viendo esta página como se guardó: { $time }. Las anotaciones nuevas esperan en este teléfono.
script-keeping = Guardando en este teléfono todos los formularios de esta losa. Quédese donde haya señal hasta que esta línea diga que ya están.
script-all-kept = Todos los formularios de esta losa están en este teléfono. Sin señal, lo que anote espera aquí y se envía después. Solo los cálculos, los archivos y las líneas de juntas necesitan señal.
script-not-kept = Todavía no están en este teléfono, y sin señal no los tendrá: { $names }. Quédese donde haya señal y cargue esta página otra vez.
script-no-room-pages = En este teléfono no hay espacio para las páginas que se usan sin señal. Faltan: { $names }. Borre fotos o aplicaciones que no necesite y cargue esta página otra vez.
script-sum-needs-signal = Sin señal: los cálculos los hace el servidor. Lo que escribió sigue aquí; oprima otra vez cuando haya señal.

## Fotos

script-photograph-n = Foto escogida { $number }
script-remove-photograph = Quitar la foto { $number }
script-mark-photograph = La foto en la que se marca
script-card-tap = Toque dos esquinas opuestas de la tarjeta.
script-mark-second = Ahora toque la esquina opuesta.
script-panel-tap = Toque dos esquinas opuestas del panel entero.
script-panel-marked = Panel marcado: { $x } % desde la izquierda, { $y } % desde arriba, { $w } % de ancho, { $h } % de alto.
script-card-marked = Tarjeta marcada: { $x } % desde la izquierda, { $y } % desde arriba, { $w } % de ancho, { $h } % de alto.
script-mark-again = Marcar otra vez

## Junto a los campos

script-drop-soaked = Se absorbió
script-drop-stands = Sigue ahí
script-drop-beads = Forma perlas
script-drop-remove = Quitar
script-drop-written = La gota { $number } quedó en el diario.
script-drop-not-kept = No hay espacio en este teléfono para guardar la gota { $number }. Su reloj marcaba { $clock }: anótelo en papel, o libere espacio y toque otra vez.
script-stopwatch-runs = { $clock } ({ $seconds } s)
script-plan-at = Marcado a { $x } hacia la derecha y { $y } hacia arriba
script-cannot-look = No se puede revisar ahora: no hay señal. Abajo está como estaba antes.
script-cannot-ask = No hay señal. Se volverá a preguntar.
script-copied = Copiado
script-cannot-copy = No se pudo copiar. Marque el texto y cópielo a mano.
