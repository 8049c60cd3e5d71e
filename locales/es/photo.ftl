# Por qué una foto de la losa dice parejo, disparejo o no se sabe. Los números llegan con formato.
# Los límites son provisionales: salen de imágenes hechas, no de losas.

photo-verdict-even = Un solo color, hasta donde muestra esta foto. Que el color sea parejo no prueba que esté seca.
photo-verdict-patchy = Más de un color.
photo-verdict-cant-tell = Esta foto no lo decide.
photo-second = Tome otra foto del mismo lugar desde otro lado o a otra hora: lo que se queda está en la losa.
photo-provisional = Los límites son provisionales: se fijaron con imágenes hechas, no con losas.

photo-why-too_small = La foto tiene { $width } por { $height } píxeles; el lado corto necesita { $least }.
photo-why-no_color = La foto está en blanco y negro. Mándela en color.
photo-why-clipped = { $share } de la foto está demasiado claro u oscuro para medirlo; se acepta { $most }. Tómela otra vez con menos o más exposición.
photo-why-dark = La foto está demasiado oscura. Tómela otra vez con más luz.
photo-why-little_slab = Solo { $share } de la foto es losa que se puede medir; hace falta { $least }. Acérquese y deje fuera lo demás.
photo-why-uneven_light = La luz cae demasiado de un lado a otro de la foto. Tómela desde más arriba o con sombra pareja.
photo-why-hard_edge = { $count ->
        [one] Hay un borde recto y duro
       *[other] Hay { $count } bordes rectos y duros
    } en la foto, como los de una sombra.
photo-why-joints = { $count ->
        [one] Se dejó fuera una junta recta.
       *[other] Se dejaron fuera { $count } juntas rectas.
    }
photo-why-could_be_shade = Hay un dibujo, pero su color es el de la sombra: lo oscuro no es más cálido.
photo-why-could_be_glare = Lo claro se apaga desde el centro, como un reflejo.
photo-why-could_be_colored_light = El dibujo es más de color que de claridad, como el de dos lámparas de distinto color.
photo-why-things = { $share } de la foto es algo que no es losa. Quítelo y tome la foto otra vez.
photo-why-small_marks = { $count ->
        [one] Destaca una marca pequeña
       *[other] Destacan { $count } marcas pequeñas
    }, { $share } de la losa, como pisadas mojadas o manchas. Mírelas en la obra.
photo-why-mottle = El color varía como un jaspeado natural, y no en manchas.
photo-why-faint_pattern = Hay dos tonos, aunque muy cercanos.
photo-why-large_pattern = Queda un dibujo ancho y débil que la luz no explica.
photo-why-blurred = La foto está borrosa. Sujétela firme y tómela otra vez.
photo-why-compressed = La foto está demasiado comprimida. Mande el archivo como lo escribió la cámara.
photo-why-blank = Partes de la foto no tienen ningún detalle ({ $share }). Mande el archivo como lo escribió la cámara.
photo-why-smooth_damp = La propia luz es más cálida donde es más oscura, como en una losa que seca despacio desde un lado.
photo-why-between = Los colores difieren en { $score_de00 }: más que en una losa pareja, menos que en una dispareja.
photo-why-no_card = No hay tarjeta en la foto: solo las diferencias significan algo.
photo-why-bad_card = No se pudo leer la tarjeta: está demasiado clara, no es uniforme, es muy pequeña o no está en la foto. Solo las diferencias significan algo.
photo-why-colored_light = La luz tiene mucho color. Tome la foto con luz de día.
photo-why-not_the_same = Las dos fotos no dicen lo mismo.
photo-why-scores_apart = Las dos fotos difieren demasiado: { $first } contra { $second }.
photo-why-not_laid_over = Las fotos no se pusieron una sobre otra: solo se compararon sus respuestas.

photo-score = Puntaje { $score }: qué tanto se apartan los campos de un solo color, en unidades CIEDE2000.
photo-found-gray-card = Se encontró una tarjeta gris y se usó.
photo-found-white-paper = Se encontró una hoja de papel blanco y se usó; se supone que devuelve el 87 % de la luz.
photo-series-title = Qué tan lejos de un solo color, por día
photo-trend-too-few = Hay muy pocas fotos que se puedan medir para decir hacia dónde va; hacen falta tres en más de un día.
photo-trend-more-even = La losa se está emparejando.
photo-trend-no-change = Ningún cambio que cuente.
photo-trend-less-even = La losa se está desemparejando.
photo-color = L { $l }, a { $a }, b { $b } ({ $hex }); jaspeado { $mottling } en unidades CIEDE2000.
