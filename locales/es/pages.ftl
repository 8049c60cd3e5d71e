# Lo que rodea a las respuestas en las páginas.

skip-to-main = Ir a la página
menu = Menú
other-language = English
to-metric = Metros y litros
to-imperial = Pies y galones
to-dark = Oscuro
to-light = Claro
sign-out = Cerrar la sesión de { $name }
outbox = Sin enviar todavía
ways-of-slab = Esta losa
tag-demo = demostración
demo-strip = Demostración: una losa inventada. Su reloj está parado en el { $moment }.
clock-strip = El reloj está parado en el { $moment }.
not-encrypted = Esta dirección no va cifrada: lo que usted escribe se puede leer en el camino, y nada se puede guardar para trabajar sin señal. Ponga el servidor detrás de HTTPS.

way-slabs = Losas
way-slab = ¿Lista?
way-diary = Diario
way-add = Anotar
way-plan = Plano
way-order = Pedido
way-papers = Papeles
way-drying = Secado
way-pour-day = Día del colado
way-time = Línea de tiempo
way-links = Compartir
way-sums = Cálculos
way-glossary = Palabras del oficio
way-facts = Datos y fuentes
way-people = Usuarios
way-reading = Idioma y unidades

said-written = Anotado en el diario.
said-written-what = Anotado en el diario: { $entry }.
said-corrected-what = Corregido: { $entry }. La anotación anterior se puede seguir leyendo.
said-corrected = Corregido. La anotación anterior se puede seguir leyendo.
said-opened = Losa creada. Sigue: dibuje el plano y anote el colado.
said-put-away = Archivada. No se borró nada.
said-brought-back = De vuelta en la lista.
said-signed-in = Usted ya entró.
said-saved = Guardado.
said-plan-written = Plano anotado en el diario.
said-link-made = Enlace hecho. Cópielo ahora: se muestra una sola vez.
said-link-withdrawn = Enlace retirado. Ya no abre nada.
said-approved = Gracias. Su elección quedó anotada en el diario.

slabs-title = Losas
slabs-none = Todavía no hay losas
slabs-none-what = Una losa es un solo piso con su propio diario: qué se coló, se probó, se derramó y se tiñó, y cuándo. Con él, Underfoot dice si el piso está listo para el tinte ácido, qué lo prueba y qué hacer después.
slabs-open-first = Crear su primera losa
slabs-open = Losa nueva
slabs-demo-what = O mire una losa inventada con un diario completo. Después la puede archivar.
slabs-demo = Ver la losa de demostración
slabs-count = { $count ->
        [one] 1 losa
       *[other] { $count } losas
    }
slabs-search = Buscar una losa por nombre
search = Buscar
slabs-no-match = Ninguna losa tiene eso en su nombre.
slabs-all = Ver todas las losas
slabs-away = Archivadas
slabs-away-see = Losas archivadas
bring-back = Sacar del archivo
put-away = Archivar esta losa
put-away-what = Sale de la lista y se puede sacar del archivo cuando quiera. No se borra nada.
page-before = Atrás
page-after = Más

new-slab-title = Losa nueva
new-slab-what = Un piso, un diario. Basta con un nombre; lo demás se puede corregir después.
new-slab-open = Crear la losa

offline-title = Sin señal, y esta página no estaba guardada
offline-what = Las páginas de la última losa que abrió están guardadas en este teléfono, y también los formularios que usa en ella. Lo que anote ahí espera y se envía cuando haya señal.

trouble-title = Eso no funcionó
trouble-not-found = Aquí no hay tal página
trouble-not-found-next = La dirección puede estar mal escrita, o la losa puede estar en otro lugar. Vaya a la lista de losas.
trouble-sign-in = Primero entre con su nombre y contraseña
trouble-sign-in-next = Vaya a la página para entrar.
trouble-forbidden = Usted no puede hacer eso aquí
trouble-forbidden-next = Los invitados leen, la cuadrilla anota, los administradores deciden sobre usuarios y enlaces. Pregunte a un administrador.
trouble-foreign-origin = Eso vino de otro sitio y se rechazó
trouble-foreign-origin-next = Abra la página aquí y envíelo otra vez.
trouble-foreign-host = Esta dirección no es de esta máquina
trouble-foreign-host-next = Use localhost o 127.0.0.1 en la dirección.
trouble-wait = Demasiados intentos. Espere { $time }
trouble-wait-next = Después intente otra vez.
trouble-mistakes = Hay algo que corregir
trouble-mistakes-next = Regrese, corríjalo y envíelo otra vez.
trouble-too-large = Eso es demasiado grande para enviarlo de una vez
trouble-too-large-next = Envíe menos fotos a la vez, 12 a lo más, cada una de hasta 40 MB.
trouble-wrong-type = Eso vino en una forma que aquí no se lee
trouble-wrong-type-next = Envíelo con el formulario de la página.
trouble-failed = Algo falló aquí: { $what }
trouble-failed-next = No se anotó nada. Intente otra vez; si sigue igual, revise el disco del servidor.

optional = opcional
not-said = Sin dato
for-example = como { $example }
choose = Elija una
mistakes-head = Todavía no se anotó nada. Corrija esto:
mistake-name-taken = Ya hay una losa que se llama «{ $name }». Se acepta: un nombre que no tenga otra losa.
mistake-name = El nombre está vacío, es muy largo o tiene varias líneas. Se acepta: de 1 a 200 letras en una línea.
mistake-already-written = Esto ya se anotó con otras palabras. Para cambiarlo, corrija la anotación en el diario.
mistake-happened = «{ $typed }» no se entiende como fecha. Se acepta: 2026-03-02 07:00, 2 mar 2026 7:00, ayer 16:00
mistake-photo-empty = { $name }: la foto está vacía. Tómela otra vez.
mistake-photo-bytes = { $name }: la foto pasa de 40 MB. Se acepta: JPEG o PNG de hasta 40 MB.
mistake-photo-kind = { $name }: no es una foto JPEG o PNG. Se acepta: JPEG o PNG; ponga la cámara del teléfono en JPEG.
mistake-photo-pixels = { $name }: la foto tiene demasiados puntos. Se acepta: hasta 48 millones, como 8192 por 6144.
mistake-photo-cut = { $name }: la foto está cortada. Envíela otra vez completa.
mistake-photo-broken = { $name }: la foto no se puede leer. Se acepta: un JPEG o PNG común.

slab-title = ¿Lista?
slab-draw-plan = Dibujar el plano
slab-note-now = Anotar ahora
slab-note-other = Otra cosa
slab-hold-points = Puntos de espera
slab-by-zone = Zona por zona
slab-rests-on = Se basa en
slab-rests-on-nothing = Ninguna anotación dice algo de esto todavía.
why-this-matters = Por qué importa

add-title = Anotar en el diario
add-what = Una anotación nunca se cambia ni se borra. Un error se corrige con otra anotación.
add-plan-why = El contorno, las zonas y los huecos: de él dependen cada lugar y cada área.
add-air-why = Un archivo del clima o de un registrador: para el pronóstico de secado y para el día del colado.
group-files = Dibujos y archivos
how-to-do-it = Cómo hacerlo bien
presets-head = Un solo toque
presets-or = o con detalle:
happened-other = ¿Fue otro día u otra hora?
happened = Cuándo pasó
happened-hint = Fecha y hora, como usted las escribe.
happened-now = Vacío quiere decir ahora.
happened-needed = Lo que sigue se cuenta desde este momento; por eso no se toma como ahora.
happened-example = 20 oct 2026 7:30
mistake-no-moment = Diga cuándo fue. Se acepta: fecha y hora, como 20 oct 2026 7:30, u hoy 7:30
undo = Deshacer
said-taken-back = Retirado. Se puede leer en el diario y no cuenta para nada.
never-head = Esto nunca pasó
never-what = ¿Fue un toque por error, o era otra losa? Se retira y no cuenta para nada. En el diario se puede seguir leyendo.
never-why = Qué salió mal
never-do = Retirarlo
never-already = Retirado: esto nunca pasó.
never-restore = Sí pasó: recuperarlo
write-down = Anotar
fix-title = Corregir: { $what }
fix-what = Una corrección es una anotación nueva en lugar de la anterior. La anterior se puede seguir leyendo.
photographs = Fotos
photographs-hint = JPEG o PNG, hasta 40 MB cada una. El lugar donde se tomó se quita antes de guardarla.
card-by-numbers = La tarjeta con números
stopwatch-start = Empezar el cronómetro
stopwatch-stop = Ya se absorbió
place = Dónde
place-on-plan = Toque el plano, o escríbalo
place-x = Hacia la derecha
place-y = Hacia arriba
place-radius = Cuánto alrededor
plan-to-tap = Plano para tocar un lugar
zoom-in = Más cerca
zoom-out = Más lejos
zoom-all = Todo el plano
told-source = De
told-unknown = Escrito por una versión más nueva
told-area = Área
told-wrong = No se puede dibujar
told-point = en { $x }, { $y }
told-patch = una mancha dibujada en el plano

diary-title = Diario
diary-count = { $count ->
        [0] El diario está vacío
        [one] 1 anotación en el diario
       *[other] { $count } anotaciones en el diario
    }
diary-add = Anotar en el diario
diary-empty = Todo lo demás se calcula con este diario. Empiece con el plano y el colado.
diary-only = Mostrar un solo tipo
diary-all = Todos los tipos
diary-older = Anotaciones anteriores
entry-corrected = corregida
entry-corrects = corrección
entry-corrected-what = Esta anotación se corrigió y ya no cuenta.
entry-see-correction = Ver la corrección
entry-corrects-what = Esta corrige una anotación anterior.
entry-see-old = Ver la anterior
entry-happened = Pasó
entry-noted = Anotado
entry-of = Sobre
entry-correct = Corregir esta anotación
entry-to-diary = Volver al diario
entry-as-kept = Como se guarda

entry-on-floor = Qué es para este piso
entry-covers = Cubre:
entry-covers-zone = { $area } de { $zone }
entry-reach-assumed = Nadie anotó hasta dónde llega: se supuso un pie (30 cm) alrededor de su punto.
entry-effect = Qué hace
entry-remedy = Qué ayuda
entry-visible = Cuándo se nota
entry-treat = Se trató
entry-retest = Volver a mirar el lugar
entry-drop = Gota de agua en el lugar
entry-accept = El dueño lo acepta

way-drops = Varias gotas
drops-title = Varias gotas a la vez
drops-what = Ponga una gota y toque dónde quedó: su reloj empieza con el toque. Cuando termine, toque lo que hizo. Pueden correr nueve a la vez; los relojes siguen aunque el teléfono se duerma.
drops-without-script = Los relojes de varias gotas necesitan JavaScript en el navegador. De una en una se anotan aquí:
drops-running = Gotas en observación
drops-in-zone = Gota en { $zone }
drops-one = Poner una gota
