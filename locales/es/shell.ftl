# Lo que dice la línea de comandos alrededor de las respuestas.

slab-opened = Se creó { $name }. Sigue: dibuje su plano y anote el colado (underfoot log --help enseña cómo).
no-slabs-yet = Todavía no hay ninguna losa. Una losa es un piso con su propio diario. Cree una con: underfoot new "NOMBRE". O vea una completa con: underfoot demo
entries-written = { $added ->
        [0] Nada nuevo
        [one] Se escribió 1 anotación
       *[other] Se escribieron { $added } anotaciones
    }{ $already ->
        [0] .
        [one] ; 1 ya estaba.
       *[other] ; { $already } ya estaban.
    }
standing-head = { $slab }, { $moment }
standing-source = Fuente: { $source }. Grado: { $grade }.
standing-if-ignored = Si no se atiende: { $consequence }
standing-evidence = { $count ->
        [0] Todavía no hay anotación que lo diga.
        [one] Se apoya en 1 anotación.
       *[other] Se apoya en { $count } anotaciones.
    }
diary-corrected = (corregida)
paper-written = Se escribió { $file }
demo-head = Esto es una demostración: una losa inventada, leída de archivos de diario comunes.
demo-diary = Diario en { $dir }; vea más con: underfoot --data { $dir } diary
demo-as-of = Preguntado al { $moment }, el último día de su diario.
serve-at = Las páginas están en { $address }
serve-not-encrypted = Advertencia: esta dirección no va cifrada. Las contraseñas se pueden leer en el camino y nada funciona sin señal. Póngala detrás de HTTPS e indique --public.
serve-set-up = Estas losas todavía no tienen administrador. Abra { $address }/set-up y escriba este código, una sola vez: { $code }
serve-stop = Se detiene con Ctrl-C.
