# Los acabados de trade/finishes.toml: nombre y qué significa aquí.
# Redacción propia, sin revisión de un segundo hablante nativo.

finish-broom = Escobillado medio
    .meaning = Agarre y aspecto parejo, como piedra.
finish-rock-salt = Sal de roca
    .meaning = Entre escobillado y llana, en agarre y en veteado. No para zonas de heladas.
finish-float = Talocha (madera o magnesio)
    .meaning = Agarre en exteriores; superficie abierta, toma más tinte.
finish-light-steel-trowel = Llana metálica ligera
    .meaning = Casi siempre lo mejor para el veteado. Pare antes de que se ponga oscura y brillosa.
finish-hard-steel-trowel = Llana metálica dura
    .meaning = Vetea, pero toma menos tinte. Pare mucho antes de quemarla.
finish-burnished = Bruñido o quemado
    .meaning = Puede rechazar el tinte. No se acepta sin pasarle malla.
finish-screened = Lijado con malla 60-120
    .meaning = Se abre con malla después del curado; más color en lo alto.
finish-ground-light = Desbastado CSP 1-2
    .meaning = Se ven arena y piedra; el color puede salir más débil.
finish-ground-heavy = Desbastado CSP 3+
    .meaning = Aspecto de agregado; no bajo un sellador transparente delgado.
finish-microtopping = Microcemento (sobrecapa delgada)
    .meaning = Muy reactivo; necesita sus propios paneles.
