# Unidades, fechas y listas. $n es el número impreso; $count es el mismo número, para el plural.
# "mil" en español es mil; por eso la milésima de pulgada se escribe "mils".

length-inches = { $n } pulg
length-feet = { $n } pies
length-millimeters = { $n } mm
length-meters = { $n } m
area-square-feet = { $n } pies²
area-square-meters = { $n } m²
volume-gallons = { $n } gal
volume-fluid-ounces = { $n } onzas líquidas
volume-liters = { $n } L
volume-milliliters = { $n } mL
concrete-cubic-yards = { $n } yd³
concrete-cubic-meters = { $n } m³
mass-pounds = { $n } lb
mass-ounces = { $n } oz
mass-kilograms = { $n } kg
mass-grams = { $n } g
coverage-square-feet-per-gallon = { $n } pies²/gal
coverage-square-meters-per-liter = { $n } m²/L
film-mils = { $n } mils
film-micrometers = { $n } µm
emission-pounds = { $n } lb por 1000 pies² en 24 h
emission-grams = { $n } g/m² por día
temperature-fahrenheit = { $n } °F
temperature-celsius = { $n } °C
humidity-percent = { $n } %

duration-seconds = { $count ->
        [one] { $n } segundo
       *[other] { $n } segundos
    }
duration-minutes = { $count ->
        [one] { $n } minuto
       *[other] { $n } minutos
    }
duration-hours = { $count ->
        [one] { $n } hora
       *[other] { $n } horas
    }
duration-days = { $count ->
        [one] { $n } día
       *[other] { $n } días
    }

range = { $low } a { $high }
list-comma = { $first }, { $rest }
list-and = { $first } y { $last }

date = { $day } de { $month } de { $year }
month-1 = enero
month-2 = febrero
month-3 = marzo
month-4 = abril
month-5 = mayo
month-6 = junio
month-7 = julio
month-8 = agosto
month-9 = septiembre
month-10 = octubre
month-11 = noviembre
month-12 = diciembre

evaporation-pounds = { $n } lb/pie² por hora
evaporation-kilograms = { $n } kg/m² por hora
speed-miles = { $n } mph
speed-meters = { $n } m/s
flow-cubic-feet = { $n } pies³/min
flow-cubic-meters = { $n } m³/h
space-cubic-feet = { $n } pies³
concentration-ppm = { $n } ppm
share-percent = { $n } %
density-pounds = { $n } lb/gal
density-grams = { $n } g/mL
pressure-mercury = { $n } pulgHg
pressure-kilopascals = { $n } kPa
pressure-psi = { $n } psi
pressure-megapascals = { $n } MPa
diffusivity = { $n } m²/s
degree-hours-fahrenheit = { $n } °F·h
degree-hours-celsius = { $n } °C·h
typed-and-own = { $typed } ({ $own })
