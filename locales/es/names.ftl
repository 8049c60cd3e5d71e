# Nombres de las entradas del diario, de lo que debe haber en la obra y de los grados.


term-water = agua
term-eyewash = lavaojos probado
term-waste-plan = plan del agua residual
term-data-sheets = hojas de seguridad (SDS)

grade-verified = verificado
grade-secondary-copy = verificado, copia secundaria
grade-from-memory = de memoria
grade-common-practice = práctica común, sin fuente
grade-expert-judgment = criterio de experto

cite-common-practice = práctica común
cite-none = sin fuente
