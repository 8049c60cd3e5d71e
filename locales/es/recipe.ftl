# Recetas de tinte, y lo que un modelo de los paneles puede y no puede decir.

recipe-line = { $mix }; { $water }; { $coats }
recipe-parts = { $count ->
        [one] 1 parte de { $stain }
       *[other] { $count } partes de { $stain }
    }
recipe-share = { $share } de { $stain }
recipe-no-water = sin agua
recipe-water = { $count ->
        [one] 1 parte de agua por 1 de tinte
       *[other] { $n } partes de agua por 1 de tinte
    }
recipe-coats = { $count ->
        [one] 1 mano
       *[other] { $count } manos
    }

recipe-no-radius-too-few-panels = No se puede decir cuánto puede errar con { $panels ->
        [one] 1 panel teñido
       *[other] { $panels } paneles teñidos
    } de { $stains ->
        [one] 1 tinte
       *[other] { $stains } tintes
    }: hacen falta { $needed }, y uno sin teñir al lado.
recipe-no-radius-no-mix = No se puede decir cuánto puede errar: ninguno de los { $panels } paneles mezcla dos de los { $stains } tintes. Hace falta una mezcla.
recipe-no-radius-stain-in-one-panel = No se puede decir cuánto puede errar: { $stain } está en un solo panel. Hacen falta dos.
recipe-no-radius-no-fit-without-panel = No se puede decir cuánto puede errar: sin el panel { $panel } nada concuerda con los demás. Revise su color y su receta.

recipe-no-model-bare = Ningún panel de este concreto se midió sin teñir. Tome la foto de uno sin tinte, con una tarjeta gris al lado.
recipe-no-model-panels = No se midió ningún panel teñido de este concreto.
recipe-no-model-fit = Ninguna fuerza de los tintes concuerda con estos paneles. Revise que ningún color ni receta esté mal escrito.
recipe-no-model-light = El panel { $panel } se midió como negro o como blanco: ningún concreto lo es. Mídalo otra vez.

recipe-left-out-not-photographed = sin foto en este estado
recipe-left-out-not-measured = no se midió su color: marque la tarjeta gris en su foto
recipe-left-out-stained-since = se tiñó otra vez después de su foto
recipe-left-out-recipe-unknown = no está anotado cómo se tiñó
recipe-left-out-recipe-wrong = lo anotado no puede ser una receta
recipe-left-out-too-many-stains = lleva un tinte más: un modelo separa tres

recipe-bare-same-state = El concreto sin teñir se vio en el mismo estado.
recipe-bare-without-sealer = El panel sin teñir se vio sin sellador. El sellador oscurece: un panel sin teñir con el mismo sellador diría más.

recipe-edge-more-coats = Está en el límite de manos que se probaron. Un panel con una más diría si es mejor.
recipe-edge-fewer-coats = Está en el mínimo de manos que se probaron. Un panel con una menos diría si es mejor.
recipe-edge-more-water = Está en el máximo de agua que se probó. Un panel con más diría si es mejor.
recipe-edge-less-water = Está en el mínimo de agua que se probó. Un panel con menos diría si es mejor.
recipe-edge-shares = Está donde terminan las mezclas que se probaron. Un panel más allá diría si es mejor.

recipe-title = Recetas de los paneles de { $name }
recipe-set = { $state ->
        [sealed] Paneles sellados
       *[other] Paneles teñidos, sin sellar
    } de { $concrete }
recipe-concrete = concreto «{ $mix }», { $finish }
recipe-mix-unknown = sin anotar
recipe-finish-unknown = acabado sin anotar
recipe-panel = Panel { $panel }: { $recipe }; { $color }
recipe-bare-panel = Panel { $panel }: sin teñir; { $color }
recipe-panel-out = El panel { $panel } no se usa: { $why }.
recipe-color = L { $l }, a { $a }, b { $b } ({ $hex })
recipe-wish = Color que se busca: { $color }
recipe-best = Receta más cercana: { $recipe }
recipe-gives = Debería dar { $color }.
recipe-radius = 9 de cada 10 paneles deberían salir a menos de { $radius } de eso (CIEDE2000; cerca de 1 es lo menos que nota un ojo entrenado lado a lado).
recipe-expected = Se espera: a { $difference } del color que se busca.
recipe-off = A { $difference } del color que se busca, si sale como se calculó.
recipe-within = El color que se busca está dentro de lo que esta receta puede dar.
recipe-beyond = Ninguna receta de lo probado se acerca lo suficiente: el color que se busca está fuera de lo que esta puede dar.
recipe-runner-up = La siguiente: { $recipe }; se espera a { $difference } del color que se busca.
recipe-nearest = El panel real más cercano es { $panel }, a { $difference } del color que se busca.
recipe-tried = El panel { $panel } es esta misma receta: mírelo.
recipe-regression = Calculado solo con estos paneles: vale para este concreto, este acabado, estos tintes, y las manos y diluciones que se probaron. Haga un panel antes de prometerlo.
recipe-no-panels = Todavía no hay ningún panel medido. Haga paneles, tíñalos, tome la foto de cada uno con una tarjeta gris al lado, teñido y sellado, y de uno sin teñir.
recipe-wish-how = Pida un color: --wish "#7a563a", --wish "42, 9, 15" (L, a, b), o --wish P1.
preview-note = Ilustración del color y del jaspeado, no del dibujo: vetas, marcas de llana y orillas de charcos no se pueden mostrar. Panel { $panel }, { $state }.
preview-note-recipe = Ilustración del color y del jaspeado, no del dibujo: vetas, marcas de llana y orillas de charcos no se pueden mostrar. El color está calculado, no visto; el jaspeado es el del panel { $panel }, { $state }.
preview-scale-assumed = El tamaño del jaspeado es una suposición: marque el panel entero en su foto, y anote su lado.
preview-shown = A este tamaño se alcanza a ver { $share } de la variación del panel.
preview-state-stained = teñido, sin sellar
preview-state-sealed = sellado
preview-state-bare = sin teñir

map-title = Qué es cada lugar de { $name }
