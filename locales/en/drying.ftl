# When the slab is likely to be dry, and the evaporation on the day of the pour. No surer than the
# calculations: a forecast is said to be one, and never releases anything.

## What the forecast took for granted
drying-assumed-sides-not-noted = Nobody noted how many sides can dry: one is assumed, the top.
drying-assumed-cure-not-noted = No cure is noted: the slab is assumed kept wet until { $until }, a long cure.
drying-assumed-cure-not-ended = The end of the wet cure is not noted: { $until } is assumed.
drying-assumed-membrane-cure = A curing membrane is noted. It slows drying until it comes off, and that is not counted: expect later dates.
drying-assumed-cure-method-unknown = How the slab was cured is not known: drying was counted from that entry on.
drying-assumed-several-pours = { $count } pours lie on this slab: the youngest, of { $taken }, was followed.
drying-assumed-fly-ash-not-counted = The mix holds { $share } fly ash or slag, which the drying tables behind this don't cover.
drying-assumed-no-sealer-chosen = No sealer is chosen for part of the slab: the two usual limits stand in, for breathing sealers and for tight films.
drying-assumed-air-humidity-assumed = No humidity of the air is on record: { $humidity } is assumed, as in the drying tables.
drying-assumed-air-temperature-assumed = No temperature is on record: { $temperature } is assumed, as in the drying tables.
drying-assumed-humidity-on-few-days = The humidity of the air is on record for { $known ->
        [one] 1 day
       *[other] { $known } days
    } of { $of }: a straight line joins them.
drying-assumed-temperature-on-few-days = The temperature is on record for { $known ->
        [one] 1 day
       *[other] { $known } days
    } of { $of }: a straight line joins them.
drying-assumed-humidity-after-record = After the record the air is assumed to stay at { $humidity }, the mean of the last month on record.
drying-assumed-temperature-after-record = After the record the temperature is assumed to stay at { $temperature }, the mean of the last month on record.
drying-assumed-weather-not-room = The slab lies under a roof: the weather file was not used for the air over it.
drying-assumed-typical-year-outdoors = Days without a record were taken from a typical year: such days, not those dates.
drying-assumed-rain-not-counted = Rain wets a slab outdoors again, and that is not counted.
drying-assumed-zones-as-one-slab = The readings of { $zones } zones are used as if of one slab.
drying-assumed-rinse-not-counted = The floor was rinsed on { $date }, and that water is not counted: expect later dates.

## Why there is no forecast
drying-cannot-no-pour = No pour is noted. Log the pour with thickness and water-cement ratio to get a forecast.
drying-cannot-existing-floor = This is an old floor and no pour is noted: nothing can be forecast. Measure.
drying-cannot-no-thickness = The pour has no thickness. Correct the pour entry, such as 4 in (100 mm).
drying-cannot-no-water-cement = The pour has no water-cement ratio, and drying hangs on it. Ask the plant for the mix, and correct the pour entry.
drying-cannot-thickness-outside = No forecast for a slab { $thickness } thick: correct the pour entry, or measure.
drying-cannot-water-cement-outside = No forecast for a water-cement ratio of { $ratio }: the tables behind it reach from 0.35 to 0.75. Correct the pour entry, or measure.
drying-cannot-outdoors-no-air = The slab lies outdoors and no humidity of the air is on record. Bring in a weather file, or log air readings.

## What belongs beside a forecast
drying-caution-forecast-never-releases = A forecast never releases a hold point: a measurement in the slab does.
drying-caution-makers-sheet-governs = The sealer maker's sheet governs.
drying-caution-prior-needs-readings = No reading in this slab is counted yet: this is based on recalled drying tables. Probes in this slab narrow it.
drying-caution-readings-unexplained = The readings don't fit this slab as it was entered, so no date is given. Check the probes, the mix, the thickness, the cure and the room.
drying-caution-rule-earlier = The rule of thumb comes too early here: by this forecast nine slabs in ten are still too wet then.
drying-caution-past-horizon = A date that is not given lies past the time looked at.

## Why a reading was left out
drying-left-out-before-pour = Taken before this concrete was placed.
drying-left-out-under-wet-cure = Taken before the slab began to dry.
drying-left-out-no-depth = The depth of the probe is not noted.
drying-left-out-deeper-than-slab = The depth noted is more than the slab is thick.
drying-left-out-not-equilibrated = The hole must stand closed for { $needed } first; it didn't, or nobody noted it.
drying-left-out-other-pour = It lies in a zone poured at another time.

## Readings that don't fit, limits, and the rule of thumb
drying-unexplained-reading = A reading of { $read } can't be this slab's: the nearest of the likely slabs has { $nearest }.
drying-unexplained-too-few-agree = Too few of the likely slabs agree with all readings together.
drying-limit-maker = { $humidity }: the maker's limit for the sealer "{ $sealer }"
drying-limit-class = { $humidity }: the usual limit for the sealer "{ $sealer }"
drying-limit-class-if-maker-says = { $humidity }: for the sealer "{ $sealer }", only where its maker allows it in writing
drying-limit-breathing = { $humidity }: the usual limit for breathing sealers
drying-limit-film = { $humidity }: the usual limit for tight films
drying-rule-agrees = The rule of thumb, one month per inch, falls within the forecast.
drying-rule-earlier = The rule of thumb, one month per inch, falls before the forecast.
drying-rule-later = The rule of thumb, one month per inch, falls after the forecast.
drying-rule-cannot-tell = The forecast doesn't reach far enough to compare with the rule of thumb.
drying-rests-description = It is based on what was entered for the slab alone.
drying-rests-readings = It is based on the readings in this slab too.
drying-rests-nothing = No date is given: the readings don't fit this slab.

## Evaporation on the day of the pour
pour-day-assumed-concrete-temperature = The temperature of the concrete is not on record: { $taken } is assumed, the middle of what is asked for at the truck ({ $window }).
pour-day-assumed-wind-from-station = The wind is that of a weather station; { $share } of it is assumed at the slab. A reading at the slab is better.
pour-day-assumed-typical-year = The hours are of a typical year: such a day, not that date.
pour-day-assumed-open-to-the-weather = The weather is that of open ground; under a roof and between walls it is calmer.
pour-day-assumed-stamped-at-the-end = Each row of the file was read as the end of its time.
pour-day-cannot-no-day = No day is given and no pour is noted. Choose a day.
pour-day-cannot-no-series = The diary holds no weather file. Bring one in with air temperature, humidity and wind.
pour-day-cannot-day-not-covered = No weather file in the diary covers { $day }.
pour-day-cannot-no-air-reading = No reading of the air is noted. Read air temperature, humidity and wind at the slab.
pour-day-cannot-reading-lacks = The air reading lacks { $lacks }.
pour-day-cannot-outside-formula = A number lies outside what the formula covers. Check the weather, and the slab's own alarm and wind share.
pour-day-lacks-air = air temperature
pour-day-lacks-humidity = humidity
pour-day-lacks-wind = wind
pour-day-level-below = below the alarm
pour-day-level-possible = possibly above the alarm
pour-day-level-above = above the alarm
