# Entrar, usuarios, enlaces, y lo que muestra un enlace.

way-password = Mi contraseña
way-choice = Elegir un panel

set-up-title = Preparar
set-up-head = Este servidor todavía no tiene administrador
set-up-what = Escriba el código que está en la consola donde se arrancó el servidor: con él usted queda como administrador y agrega a los demás. Sirve una sola vez.
set-up-code = Código de la consola
set-up-code-hint = Da igual con mayúsculas o guiones.
set-up-do = Quedar como administrador
person-name = Nombre
person-name-hint = Queda junto a todo lo que esta persona anote en el diario.
person-password = Contraseña
person-password-new = Contraseña nueva
person-password-again = La misma contraseña otra vez
person-password-hint = Al menos { $count } letras, hasta 256. Una frase propia es fácil de recordar. No se pide nada más.

sign-in-title = Entrar
sign-in-do = Entrar
sign-in-forgot = ¿Olvidó la contraseña? Un administrador le puede hacer una nueva.

password-title = Mi contraseña
password-what = En todo otro lugar donde haya entrado tendrá que entrar de nuevo.
password-now = Contraseña de ahora
password-do = Cambiar la contraseña

people-count = { $count ->
        [one] 1 persona puede entrar
       *[other] { $count } personas pueden entrar
    }
people-me = usted
people-since = desde el { $date }
people-closed = cerrada desde el { $date }
people-closed-what = Ya no puede entrar. Lo que anotó se queda, con su nombre al lado.
people-made = Contraseña inicial de { $name }
people-made-what = Díctela o entréguela ahora: se muestra una sola vez. Pida que la cambie después de entrar la primera vez.
people-may = Puede
people-may-of = Qué puede hacer { $name }
people-change = Cambiar
people-new-password = Contraseña nueva para { $name }
people-new-password-what = Para quien la olvidó o perdió el teléfono: cierra su sesión en todas partes y hace una contraseña inicial nueva.
people-close = Cerrar la cuenta de { $name }
people-close-what = Cierra su sesión en todas partes, para siempre. Lo que anotó se queda. El nombre no se le puede dar a otra persona.
people-add = Agregar un usuario
people-add-do = Agregar a este usuario
people-typed-password = Escribir usted la contraseña inicial
role-owner = Administrador
role-crew = Cuadrilla
role-guest = Invitado
role-owner-may = Administrador: todo, también usuarios y enlaces
role-crew-may = Cuadrilla: leer todas las losas y anotar en todos los diarios
role-guest-may = Invitado: leer todas las losas, sin anotar nada
copy = Copiar

mistake-sign-in = El nombre o la contraseña están mal. Revise los dos e intente otra vez.
mistake-set-up-code = Ese no es el código de la consola. Se acepta: el código del último arranque, doce letras y cifras.
mistake-person-name = El nombre está vacío, es muy largo o tiene varias líneas. Se acepta: de 1 a 80 letras en una línea.
mistake-person-taken = Aquí alguien se llama o se llamó «{ $name }». Se acepta: un nombre que nadie tenga ni haya tenido.
mistake-password-short = La contraseña es muy corta o muy larga. Se acepta: de { $least } a 256 letras de cualquier clase.
mistake-password-again = Las dos contraseñas no son iguales. Se acepta: la misma dos veces.
mistake-password-now = Esa no es su contraseña de ahora.
mistake-role = Diga qué puede hacer esta persona. Se acepta: administrador, cuadrilla o invitado.
mistake-last-owner = { $name } es el único administrador. Primero haga administrador a otra persona.
mistake-person-closed = La cuenta de { $name } está cerrada. Se acepta: una cuenta abierta; agregue a la persona con otro nombre.

links-count = { $count ->
        [0] No hay enlaces abiertos
        [one] 1 enlace abierto
       *[other] { $count } enlaces abiertos
    }
links-what = Un enlace muestra las páginas elegidas de esta losa a quien lo tenga, sin contraseña. Se vence solo y se puede retirar cuando quiera. Las horas y los costos nunca se muestran.
links-here-only = Este servidor responde solo en esta máquina, así que un enlace abre solo aquí: en otro teléfono o computadora no lleva a nada. Arranque el servidor para usuarios si quiere compartir enlaces con otros.
links-fresh = Copie el enlace ahora: se muestra una sola vez
links-fresh-what = O apunte la cámara de un teléfono a la imagen. ¿Lo perdió? Retire este enlace y haga otro.
links-picture = El enlace como imagen para la cámara de un teléfono
links-make = Hacer un enlace
links-make-do = Hacer el enlace
links-pages = Qué muestra
links-choice = Los paneles, y un formulario donde el dueño del piso elige uno y acepta lo que hace el tinte. Revise que sus palabras digan lo mismo que su contrato.
links-standing = La respuesta, los puntos de espera y por qué. Se dice todo lo que impide teñir el piso.
links-plan = El plano con lo que se encontró en él
links-diary = Todas las anotaciones, sin horas ni costos
links-photographs = Todas las fotos del diario
links-order = Qué comprar
links-note = Para quién
links-note-hint = Queda junto a lo que se anote por el enlace, como «la dueña».
links-days = Se vence en
links-days-unit = días
links-all = Enlaces hasta ahora
links-no-note = Sin decir para quién
links-withdraw = Retirar
link-open = Abierto hasta { $moment }
link-over = Vencido desde { $moment }
link-withdrawn = Retirado { $moment }
link-made = Hecho { $moment }
mistake-link-page = No marcó nada que mostrar. Se acepta: al menos una página.
mistake-link-days = No se entiende en cuántos días se vence. Se acepta: de { $least } a { $most } días.
mistake-link-note = Para quién es muy largo o tiene varias líneas. Se acepta: hasta { $most } letras en una línea.
mistake-link-made = Este enlace ya se hizo y su dirección no se puede mostrar otra vez. Retírelo y haga otro.

trouble-link-over = Este enlace se venció el { $date }
trouble-link-over-next = Pida uno nuevo a quien se lo mandó.
trouble-link-withdrawn = Este enlace se retiró el { $date }
trouble-link-withdrawn-next = Pregunte a quien se lo mandó si hay uno nuevo.
trouble-link-not-found-next = El enlace puede estar cortado o mal escrito, o no muestra esta página. Ábralo otra vez desde el mensaje en que llegó, o pregunte a quien se lo mandó.
visit-photographs = { $count ->
        [0] Todavía no hay fotos
        [one] 1 foto
       *[other] { $count } fotos
    }

choice-head = Elija el color de su piso
choice-nothing = Todavía no hay panel que elegir
choice-nothing-what = Un panel es un pedazo del mismo concreto con el mismo acabado, teñido como quedaría el piso. Cuando haya uno teñido, se puede elegir aquí.
choice-what = Mire los paneles con la luz del cuarto, mojados y secos si puede. Una foto muestra el color solo más o menos; elija viendo el panel mismo.
choice-again = Puede elegir otra vez. Cada elección se queda en el diario.
choice-chosen = { $by } eligió el panel { $panel } el { $date }
choice-panels = Los paneles
choice-finish = Acabado: { $finish }
choice-stain = Tinte: { $mix }; manos: { $coats }
choice-on-floor = Una esquina del mismo piso
choice-not-stained = Todavía sin teñir
choice-bare = Sin teñir
choice-stained = Teñido, sin sellador
choice-sealed = Teñido y con sellador
choice-no-photographs = Todavía no hay foto de este panel.
choice-which = Cuál panel
choice-seen = Cómo lo vio
choice-words = Lo que usted acepta
choice-agree = Acepto las palabras de arriba.
choice-name = Su nombre
choice-do = Elegir este panel
agree-varies = El tinte reactivo no es pintura. Trabaja con lo que hay en el concreto, así que el color de cada piso varía de un lugar a otro, más claro y más oscuro. Eso es normal y no es un defecto.
agree-shows = Las grietas, los parches, las reparaciones, las marcas de llana y los derrames viejos se notan, algunos solo cuando el piso ya está teñido.
agree-panel = El color se elige con el panel que se nombra aquí. El piso se le va a parecer; no va a ser igual en todas partes.
agree-sealer = El sellador hace el color más oscuro y profundo. Un panel visto sin sellador se ve más claro que el piso sellado.
agree-stays = El tinte no se puede lavar ni deshacer. Otro color después quiere decir desbastar, recubrir o tapar el piso.
mistake-choice-panel = No eligió ningún panel. Se acepta: uno de los paneles teñidos.
mistake-choice-state = No dijo cómo vio el panel. Se acepta: teñido y con sellador, o teñido y sin sellador.
mistake-choice-name = Falta su nombre o es muy largo. Se acepta: de 1 a 80 letras.
mistake-choice-agree = La casilla debajo de las palabras no está marcada. Sin ella no se elige nada.
