# Nombres en español de acabados, incidentes y selladores. Los nombres en inglés están en trade/.

## Acabados

broom = Escobillado medio
rock-salt = Sal de roca
float = Talocha (madera o magnesio)
light-steel-trowel = Llana metálica ligera
hard-steel-trowel = Llana metálica dura
burnished = Bruñido o quemado
screened = Lijado con malla 60-120
ground-light = Desbastado CSP 1-2
ground-heavy = Desbastado CSP 3+
microtopping = Microcapa de cemento

## Incidentes

red-chalk = Líneas de gis rojo o negro
line-holder-spray = Fijador de líneas en espray o silicón
marker = Marcador, crayón o lápiz graso en la losa
lumber-left = Soleras o madera sobre losa fresca
stacked-material = Triplay, panel de yeso o loseta apilados
plastic-sheet = Plástico arrugado sobre losa fresca
membrane-compound = Membrana de curado o curador-sellador
trowel-burn = Quemado de llana
chloride-or-mix-change = Cloruro de calcio o cambio de mezcla
nails-left = Clavos, granalla, flejes o rebaba de acero dejados en mojado
nailed-into-field = Soleras o puntales clavados en el piso terminado
pipe-glue = Pegamento o primer de tubería, fundente, aceite de rosca
lift-oil = Aceite hidráulico o de plataforma elevadora
tire-marks = Marcas negras de llanta
drywall-mud = Pasta y polvo de panel de yeso
overspray = Brisa de pintura o de textura
spray-foam = Goteo de espuma en espray
varnish = Goteo de tinte de madera, poliuretano o barniz
tape = Cinta pegada a la losa
acid-or-bleach = Ácido muriático, limpiador fuerte o cloro
pest-chemical = Insecticida encima de la losa
footprints = Pisadas en losa fresca o botas mojadas después
water-puddle = Lluvia, gotera, charco de manguera o goteo de aire acondicionado
patch-smear = Embarres de parche de yeso o autonivelante
food = Comida, refresco o tabaco
torch-spatter = Fuego, soplete o chispas de plasma
early-cover = Cubiertas puestas muy pronto sobre losa fresca
scratches = Patas de escalera o cajas arrastradas
printed-cover = Cartón o papel impreso con la tinta contra la losa
cutting-oil = Tubería cortada o roscada sobre la losa (aceite de corte, rebaba)

## Selladores

acrylic-solvent = Acrílico, base solvente
acrylic-water = Acrílico, base agua
epoxy-water = Epóxico base agua, 2 componentes
epoxy-solid = Epóxico, 100 % sólidos
urethane-one-part = Uretano, 1 componente, de humedad o base agua
urethane-two-part = Uretano o poliaspártico, 2 componentes
penetrating-silane = Silano o siloxano penetrante
silicate-densifier = Endurecedor de silicato de litio o sodio
oil-wax = Aceite o cera penetrante
floor-finish = Cera acrílica de piso (encima)
