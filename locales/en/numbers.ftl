# Units, dates and lists. $n is the printed number; $count is the same as a number, for the plural.

length-inches = { $n } in
length-feet = { $n } ft
length-millimeters = { $n } mm
length-meters = { $n } m
area-square-feet = { $n } ft²
area-square-meters = { $n } m²
volume-gallons = { $n } gal
volume-fluid-ounces = { $n } fl oz
volume-liters = { $n } L
volume-milliliters = { $n } mL
concrete-cubic-yards = { $n } yd³
concrete-cubic-meters = { $n } m³
mass-pounds = { $n } lb
mass-ounces = { $n } oz
mass-kilograms = { $n } kg
mass-grams = { $n } g
coverage-square-feet-per-gallon = { $n } ft²/gal
coverage-square-meters-per-liter = { $n } m²/L
film-mils = { $n } mil
film-micrometers = { $n } µm
emission-pounds = { $n } lb per 1000 ft² in 24 h
emission-grams = { $n } g/m² per day
temperature-fahrenheit = { $n } °F
temperature-celsius = { $n } °C
humidity-percent = { $n } %

duration-seconds = { $count ->
        [one] { $n } second
       *[other] { $n } seconds
    }
duration-minutes = { $count ->
        [one] { $n } minute
       *[other] { $n } minutes
    }
duration-hours = { $count ->
        [one] { $n } hour
       *[other] { $n } hours
    }
duration-days = { $count ->
        [one] { $n } day
       *[other] { $n } days
    }

range = { $low } to { $high }
list-comma = { $first }, { $rest }
list-and = { $first } and { $last }

date = { $month } { $day }, { $year }
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December

evaporation-pounds = { $n } lb/ft² per hour
evaporation-kilograms = { $n } kg/m² per hour
speed-miles = { $n } mph
speed-meters = { $n } m/s
flow-cubic-feet = { $n } cfm
flow-cubic-meters = { $n } m³/h
space-cubic-feet = { $n } ft³
concentration-ppm = { $n } ppm
share-percent = { $n } %
density-pounds = { $n } lb/gal
density-grams = { $n } g/mL
pressure-mercury = { $n } inHg
pressure-kilopascals = { $n } kPa
pressure-psi = { $n } psi
pressure-megapascals = { $n } MPa
diffusivity = { $n } m²/s
degree-hours-fahrenheit = { $n } °F·h
degree-hours-celsius = { $n } °C·h
typed-and-own = { $typed } ({ $own })
