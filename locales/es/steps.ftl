# Lo que va debajo de los dibujos de cada prueba, en su orden. Es también lo que lee un lector de pantalla: frases
# completas, y ningún número que una losa pueda fijar por su cuenta.


step-water-drop-1 = Escoja un lugar limpio y cepille el polvo.
step-water-drop-2 = Deje caer ahí una gota de agua.
step-water-drop-3 = Mida desde que la gota toca hasta que se va el brillo.
step-water-drop-4 = ¿Se absorbió, se queda parada o se hizo bolita? Anótelo con el tiempo.
step-water-drop-5 = Haga lo mismo en varios lugares de cada zona, además de las orillas.

step-scrape-1 = Proteja los ojos y no levante polvo: el polvo de concreto tiene sílice.
step-scrape-2 = Raspe un lugar pequeño con espátula de carburo y mire qué sale.
step-scrape-3 = Polvo gris: hasta ahora parece concreto limpio o denso, no película.
step-scrape-4 = Una viruta como de cera, escamas o un lugar pegajoso: eso es una película.

step-solvent-wipe-1 = Use guantes y goggles, y siga la hoja de seguridad del solvente.
step-solvent-wipe-2 = Abra las puertas, sin llama ni piloto cerca: el vapor puede incendiarse.
step-solvent-wipe-3 = Frote un lugar pequeño con solvente en un trapo blanco.
step-solvent-wipe-4 = Mire el trapo: ¿está limpio, o pegajoso o amarillo?

step-acid-drop-1 = Use goggles y guantes, tenga agua a la mano y siga la hoja de seguridad del ácido.
step-acid-drop-2 = Deje caer una gota de ácido diluido en un lugar escondido.
step-acid-drop-3 = Mire: ¿burbujea fuerte, un poco o nada?
step-acid-drop-4 = Sin quitarse goggles ni guantes, neutralice como dice la hoja de seguridad.
step-acid-drop-5 = Enjuague con agua y recoja esa agua.

step-slab-humidity-1 = Perfore según la prueba, con colector de polvo: ese polvo tiene sílice.
step-slab-humidity-2 = Cepille el hoyo y límpielo con aspiradora.
step-slab-humidity-3 = Ponga el tubo en el hoyo y tápelo bien, según las reglas de la prueba.
step-slab-humidity-4 = Déjelo tapado todo el tiempo que pide la prueba.
step-slab-humidity-5 = Lea con una sonda calibrada; anote la profundidad y cuánto estuvo tapado.

step-plastic-sheet-1 = Ponga plástico transparente plano, sin sol, donde la marca de la cinta no se vea.
step-plastic-sheet-2 = Pegue los cuatro lados con cinta.
step-plastic-sheet-3 = Déjelo cerrado todo el tiempo que pide la prueba.
step-plastic-sheet-4 = Levántelo y mire enseguida, el plástico y la losa.
step-plastic-sheet-5 = ¿Seco, más oscuro o con gotas? Anote cuál.

step-card-1 = Ponga una tarjeta gris o papel blanco, plano en la losa o junto al panel.
step-card-2 = Que no le caiga sombra, tampoco la suya.
step-card-3 = Tome la foto derecho desde arriba, con el teléfono a nivel.
step-card-4 = Que la tarjeta salga completa, lejos de las orillas de la foto.
step-card-5 = Marque dónde está la tarjeta en la foto: dos esquinas opuestas.
