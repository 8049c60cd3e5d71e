# Los renglones de trade/materials.toml, que el pedido nombra.
# Redacción propia, sin revisión de un segundo hablante nativo.

material-stain-smooth-trowel = Tinte reactivo, llana lisa
material-stain-light-trowel = Tinte reactivo, llana ligera
material-stain-broom-or-float = Tinte reactivo, escobillado o talocha
material-dilution-water = Agua para diluir 1 parte de tinte
material-stain-coats = Manos de tinte
material-dwell-per-coat = Tiempo de reacción de cada mano
material-bicarbonate-solution = Solución de bicarbonato de sodio
material-ammonia-solution = Solución de amoniaco de casa (3-10 %)
material-alkaline-soap-solution = Jabón o limpiador alcalino
material-neutralizer-spread = Cuánto se extiende la solución del neutralizador
material-rinse-water-indoor = Agua de enjuague adentro, con fregadora y aspiradora
material-rinse-water-outdoor = Agua de enjuague afuera, con manguera
material-rinse-passes = Pasadas de enjuagar y tallar después de neutralizar
material-wet-vacuum-recovery = Lo que recoge la aspiradora de agua
material-waste-drum = Tambos para el agua residual
material-masking-plastic = Plástico para enmascarar
material-degreaser = Desengrasante
material-screening-discs = Mallas de grano 60-120
material-sacrificial-floor-finish = Cera acrílica de piso (acabado sacrificable)
material-protective-board = Cartón de protección o papel grueso para piso
material-grit-additive = Grano antiderrapante en el sellador
