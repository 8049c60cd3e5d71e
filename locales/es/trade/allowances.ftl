# Por qué se agrega un tanto a lo calculado, de trade/allowances.toml.
# Redacción propia, sin revisión de un segundo hablante nativo.

allowance-stain-waste = brisa, fondos de cubeta, retoques
allowance-porous-edge-extra = las orillas hechas con llana de mano absorben más
allowance-touch-up-reserve = guardar un envase cerrado del mismo lote
allowance-sealer-waste = lo que se queda en el rodillo y la charola
allowance-wax-waste = pérdida al aplicar
allowance-neutralizer-waste = pérdida al aplicar
allowance-masking-waste = traslapes
