# Nombres en español de acabados, incidentes y selladores. Los nombres en inglés están en trade/.

## Acabados

term-broom = Escobillado medio
term-rock-salt = Sal de roca
term-float = Talocha (madera o magnesio)
term-light-steel-trowel = Llana metálica ligera
term-hard-steel-trowel = Llana metálica dura
term-burnished = Bruñido o quemado
term-screened = Lijado con malla 60-120
term-ground-light = Desbastado CSP 1-2
term-ground-heavy = Desbastado CSP 3+
term-microtopping = Microcapa de cemento

## Incidentes

term-red-chalk = Líneas de gis rojo o negro
term-line-holder-spray = Fijador de líneas en espray o silicón
term-marker = Marcador, crayón o lápiz graso en la losa
term-lumber-left = Soleras o madera sobre losa fresca
term-stacked-material = Triplay, panel de yeso o loseta apilados
term-plastic-sheet = Plástico arrugado sobre losa fresca
term-membrane-compound = Membrana de curado o curador-sellador
term-trowel-burn = Quemado de llana
term-chloride-or-mix-change = Cloruro de calcio o cambio de mezcla
term-nails-left = Clavos, granalla, flejes o rebaba de acero dejados en mojado
term-nailed-into-field = Soleras o puntales clavados en el piso terminado
term-pipe-glue = Pegamento o primer de tubería, fundente, aceite de rosca
term-lift-oil = Aceite hidráulico o de plataforma elevadora
term-tire-marks = Marcas negras de llanta
term-drywall-mud = Pasta y polvo de panel de yeso
term-overspray = Brisa de pintura o de textura
term-spray-foam = Goteo de espuma en espray
term-varnish = Goteo de tinte de madera, poliuretano o barniz
term-tape = Cinta pegada a la losa
term-acid-or-bleach = Ácido muriático, limpiador fuerte o cloro
term-pest-chemical = Insecticida encima de la losa
term-footprints = Pisadas en losa fresca o botas mojadas después
term-water-puddle = Lluvia, gotera, charco de manguera o goteo de aire acondicionado
term-patch-smear = Embarres de parche de yeso o autonivelante
term-food = Comida, refresco o tabaco
term-torch-spatter = Fuego, soplete o chispas de plasma
term-early-cover = Cubiertas puestas muy pronto sobre losa fresca
term-scratches = Patas de escalera o cajas arrastradas
term-printed-cover = Cartón o papel impreso con la tinta contra la losa
term-cutting-oil = Tubería cortada o roscada sobre la losa (aceite de corte, rebaba)

## Selladores

term-acrylic-solvent = Acrílico, base solvente
term-acrylic-water = Acrílico, base agua
term-epoxy-water = Epóxico base agua, 2 componentes
term-epoxy-solid = Epóxico, 100 % sólidos
term-urethane-one-part = Uretano, 1 componente, de humedad o base agua
term-urethane-two-part = Uretano o poliaspártico, 2 componentes
term-penetrating-silane = Silano o siloxano penetrante
term-silicate-densifier = Endurecedor de silicato de litio o sodio
term-oil-wax = Aceite o cera penetrante
term-floor-finish = Cera acrílica de piso (encima)
