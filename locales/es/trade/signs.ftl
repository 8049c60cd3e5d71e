# Los letreros de trade/signs.toml.
# Redacción propia, sin revisión de un segundo hablante nativo.

sign-solvent-zone = Vapor inflamable. Una llama o chispa causará fuego y quemaduras. No use llamas, pilotos, cigarros ni interruptores. No entre.
sign-mixing-table = Ácido corrosivo. Una salpicadura puede cegar o quemar. Use goggles, careta, guantes y mandil. Eche el ácido al agua, nunca agua al ácido.
sign-chemical-store = Nunca mezcle con cloro ni con limpiadores con amoniaco. El gas tóxico puede matar.
sign-grinding-zone = El polvo de sílice puede causar enfermedades del pulmón. No desbaste sin agua o colector de polvo.
sign-eyewash = Lavaojos. No obstruya. Enjuague 15 minutos y pida ayuda.
sign-wet-floor = Piso mojado. Puede resbalar y lastimarse. Use el otro paso.
sign-slab-protection = Esta losa es el piso terminado. Solo gis azul o blanco; sin marcador, sin cinta, sin clavos, sin derrames. Avise de daños hoy mismo.
sign-waste-drums = Agua de enjuague. Sin analizar. No vacíe. Llame al mayordomo.
sign-curing-slab = Curado húmedo en proceso. No mueva las mantas ni cierre el agua.
sign-finished-floor = Sellador en curado hasta ___. Sin zapatos, cinta, tapetes ni muebles.
