# Qué comprar: nombres de los renglones y qué saber de cada uno.

item-stain = Tinte reactivo
item-mixing-water = Agua para diluir el tinte
item-bicarbonate = Bicarbonato de sodio
item-neutralizer-water = Agua para el neutralizador
item-rinse-water = Agua de enjuague
item-waste-water = Agua residual que hay que recoger (la del enjuague)
item-drums = Tambos para el agua residual
item-sealer = Sellador
item-masking-plastic = Plástico para tapar la franja de pared
item-spot-work = Lugares por tratar antes de teñir
item-protective-board = Cartón de protección o papel sobre el piso terminado

note-coverage-from-panels = Rendimiento medido en los propios paneles de esta losa, con margen por si el piso absorbe más o menos.
note-coverage-from-table = Rendimiento según el rango del oficio para el acabado. Un panel con la cantidad usada lo afinaría.
note-finish-unknown = Hay una zona sin acabado anotado: se usó el rango de todos los acabados.
note-finish-may-refuse = Puede que un acabado de esta losa no acepte el tinte. Pruébelo en un panel antes de comprar.
note-recipe-from-choice = Manos, mezcla y agua como en el panel aprobado.
note-recipe-assumed = Todavía no hay panel aprobado: se supusieron las manos y el agua de costumbre.
note-one-batch = Compre un solo lote, o junte todos los envases antes de usarlos.
note-touch-up-kept = Se guarda un envase cerrado del mismo lote para retoques.
note-stoichiometry-governs = La química podría pedir más que la costumbre, así que se usó la cantidad mayor.
note-practice-covers-stoichiometry = Según la costumbre. Lo que se compra alcanzaría también para todo el ácido del tinte, si es tan fuerte como se supone.
note-acid-assumed = El ácido del tinte es un supuesto hasta tener su hoja de seguridad. Decide el papel de pH, no esta cifra.
note-foams = Hace espuma. Agréguelo despacio y deje los tambos abiertos hasta que deje de burbujear.
note-stop-on-tests = Termine por las pruebas (trapo limpio, pH), no por el número de pasadas.
note-ask-sewer-authority = Pregunte a la autoridad del drenaje a dónde puede ir antes de que llegue el ácido. Neutra no quiere decir sin metales; nada va al drenaje pluvial ni a la tierra.
note-sealer-by-film = Según la película y los sólidos anotados con el sellador.
note-sealer-by-coverage = Según el rango de rendimiento del oficio para esta clase.
note-makers-sheet-governs = Manda la hoja del fabricante.
note-no-sealer = No se ha elegido sellador.
note-perimeter-from-plan = A lo largo de cada pared y cada orilla del plano.
note-reach-assumed = Nadie anotó hasta dónde llega una mancha: se supuso un pie (30 cm) alrededor de su punto. Marque su extensión.
note-perimeter-of-square = No hay plano dibujado: la orilla de un cuadrado de esta área, lo mínimo posible.

order-head = Qué comprar para { $slab }
order-recipe-panel = Receta del panel { $panel }: { $coats ->
        [one] 1 mano
       *[other] { $coats } manos
    }, { $water ->
        [one] 1 parte
       *[other] { $water } partes
    } de agua por 1 parte de tinte.
order-recipe-usual = No hay panel aprobado: de { $low } a { $high } manos, de 0 a { $water } partes de agua por 1 parte de tinte.
order-zone = { $zone }: { $area }, { $finish }, { $coverage } por mano
order-zone-panels = { $count ->
        [one] medido en 1 panel
       *[other] medido en { $count } paneles
    }
order-zone-table = rango del oficio
order-zone-unknown = acabado sin anotar
order-need = se necesita { $range }, normalmente { $usual }
order-need-exact = se necesita { $usual }
order-buy = compre { $packs }
order-pack = { $count } × { $size }
order-pieces = { $count ->
        [one] 1 pieza
       *[other] { $count } piezas
    }
order-next = Sigue: pida precio por estas cantidades y pregunte a la autoridad del drenaje a dónde puede ir el agua de enjuague.
