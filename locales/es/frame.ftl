# Lo que va en cada página y alrededor: nombres cortos para la lista de puntos de espera, la barra al pie,
# cómo se ve la página. Los nombres cortos caben en una línea de medio teléfono.

short-age = Edad
short-membrane = Membrana
short-absorbency = Absorción
short-reaction = Reacción
short-contamination = Contaminación
short-moisture = Humedad
short-surface-ph = pH
short-repairs = Grietas
short-panel = Panel
short-site = Obra
short-air = Aire

bar-photograph = Foto
photograph-take = Tomar foto
photograph-choose = De la galería
to-device = Claro u oscuro como el aparato
