# The pages of drying, pour day, time line and air record. No surer than the calculations.

drawing-as-table = The same as a table
page-assumed = Assumptions
page-grade = Grade: { $grade }.

## Drying
drying-answer-between = { $basis ->
        [readings] By the readings
       *[mix] By mix, thickness and air alone
    }, 8 in 10 such slabs come down to { $limit } between { $early } and { $late }.
drying-answer-open = { $basis ->
        [readings] By the readings
       *[mix] By mix, thickness and air alone
    }, 1 in 10 such slabs is down to { $limit } by { $early }, and fewer than 9 in 10 by { $horizon }.
drying-answer-late = { $basis ->
        [readings] By the readings
       *[mix] By mix, thickness and air alone
    }, fewer than 1 in 10 such slabs come down to { $limit } by { $horizon }.
drying-answer-reached = { $basis ->
        [readings] By the readings
       *[mix] By mix, thickness and air alone
    }, 9 in 10 such slabs were down to { $limit } by { $late }: measure now.
drying-answer-nothing = Can't tell: the readings don't fit this slab as it was entered
drying-answer-no-limit = The chosen sealer sets no limit for the humidity in the slab
drying-answer-cannot = Can't tell yet when the slab will be dry
drying-answer-working = The forecast is being worked out. It takes a while; you can leave and come back.
drying-answer-failed = The forecast broke off. Nothing entered was lost; measure in the slab.
drying-work = How far the forecast is
drying-work-following = Following { $count } possible slabs
drying-work-weighing = Weighing them by the readings
drying-work-drawing = Drawing the chart
drying-do-read = Log a reading in the slab
drying-do-pour = Log the pour
drying-do-fix-pour = Correct the pour
drying-do-air = Bring in a weather or logger file
drying-do-look = Look at the reading that doesn't fit
drying-chart-readings = Humidity in the slab, by the readings
drying-chart-mix = Humidity in the slab, by mix, thickness and air
drying-chart-before = What was likely before the readings
drying-line-breathing = breathing sealers
drying-line-film = tight films
drying-limits = Limits and dates
drying-limits-what = Share of such slabs at or below each limit, and by which day
drying-limit = Limit
drying-early = 1 in 10 by
drying-middle = Half by
drying-late = 9 in 10 by
drying-past = past the time looked at
drying-mind = Before you count on it
drying-left-out = Readings that were left out
drying-model = How drying is followed:

## Pour day
pour-day-answer-above = Above the alarm { $times } on { $day }
pour-day-answer-possible = Possibly above the alarm { $times } on { $day }
pour-day-answer-below = Below the alarm all day on { $day }
pour-day-answer-below-known = Below the alarm on { $day }, in the hours that are known
pour-day-answer-unknown = Can't tell for { $day }: the file has no hour with air, humidity and wind
pour-day-answer-cannot = Can't tell how fast the fresh slab would lose water
pour-day-also-possible = Possibly above it { $times }.
pour-day-protect = Fresh concrete may crack before it sets. Pour in the calm hours, or have wind breaks, shade, fog and clean covers at the slab before the truck comes. No evaporation film unless a sample has shown that the stain takes on it.
pour-day-look-back = That day is past. Look for short parallel cracks from the first hours and log what you find.
pour-day-silica-fume = With silica fume in the mix the alarm is half: at it or possibly above it { $times }.
pour-day-on = { $date }
pour-day-typical = a typical { $month } { $day }
pour-day-stretch = from { $from } to { $to }
pour-day-chart = Water leaving fresh concrete on { $day }
pour-day-line-usual = alarm
pour-day-line-silica-fume = silica fume
pour-day-day = Day
pour-day-see = See that day
pour-day-mistake = "{ $typed }" is not a day. Accepted: a date such as 2026-05-03.
pour-day-hour = Hour
pour-day-rate = Water leaving, with its margin
pour-day-level = Against the alarm
pour-day-air = Air
pour-day-humidity = Humidity
pour-day-wind = Wind at the slab
pour-day-highest = Most at { $hour }: { $rate }.
pour-day-not-known = not known
pour-day-last-reading = By the last air reading
pour-day-moment = { $moment }: { $rate }, with its margin { $span }; { $level }.
pour-day-do-air = Log the air at the slab
pour-day-do-crack = Log a crack
pour-day-why = Where water leaves faster than it bleeds up, the skin shrinks before it has strength: short cracks and a weak, blotchy surface that stain shows for good. The rate is an estimate for fresh, wet concrete, good to about 40 %; it says nothing of concrete that has set.
pour-day-formula = The formula:
pour-day-fact-alarm = Alarm: { $value }.
pour-day-fact-silica-fume = Alarm with silica fume: { $value }.
pour-day-fact-concrete = Temperature of the concrete: { $value }.
pour-day-fact-wind = Wind at the slab: { $value } of the station's.

## Time line
time-answer-day = { $days ->
        [0] The day of the pour
        [one] Day 1 since the pour
       *[other] Day { $days } since the pour
    }
time-answer-no-pour = No pour is logged yet
time-days-since-pour = { $days } days since the pour
time-equivalent-age = { $days } days with temperature counted in
time-dry-enough = Down to { $limit }
time-counted = { $count ->
        [one] { $what }
       *[other] { $what } × { $count }
    }
time-chart = From pour to hand-over
time-do-next = See what to do next
time-why = The waits between pour and hand-over cannot be hurried, only planned: the age, the drying, the rinse water. A date promised without them is what comes back as a failed floor.
time-empty = Pour, cure, panels, tests, spills, coats and rinse stand here as soon as they are logged.

## Air record: a weather file or a logger's table
air-title = Bring in a weather or logger file
air-what = For the drying forecast and for pour day. You see what was read before anything is logged.
air-file = The file
air-file-hint = CSV, EPW or TMY3, up to 8 MB and 60,000 rows
air-look = See what is in it
air-look-again = Read it that way
air-other = Another file
air-accepted = What is read
air-accepted-epw = A weather year in EPW form.
air-accepted-tmy3 = A typical year in TMY3 form.
air-accepted-table = A table saved as CSV with a line of names: a time, and at least one of air temperature, humidity and slab temperature. Wind is needed for pour day. Units stand in the names:
air-answer = { $count ->
        [one] 1 row, { $from }. Nothing is logged yet.
       *[other] { $n } rows from { $from } to { $to }. Nothing is logged yet.
    }
air-answer-typical = { $count ->
        [one] 1 hour of a typical year, { $from }. Nothing is logged yet.
       *[other] { $n } hours of a typical year, from { $from } to { $to }. Nothing is logged yet.
    }
air-step = One row every { $step }.
air-source = Call it
air-source-hint = Where it comes from, such as the station or the place of the logger
air-columns = What was found
air-columns-what = Columns that are used
air-quantity = What
air-column = Column in the file
air-count = Readings
air-low = Lowest
air-high = Highest
air-when = When
air-first-rows = The first rows as read
air-left-out = Left out or doubtful
air-nothing-left-out = Nothing: every row is good.
air-more = And { $count } more of that kind.
air-map = Something is in the wrong column
air-map-what = Choose the column for what was not recognized or was read wrongly. The rest can stay as it is.
air-map-recognized = as found
air-map-time = Date and time in one column
air-map-date = Date
air-map-clock = Time of day
air-map-unit = { $quantity }: unit
air-quantity-air = Air temperature
air-quantity-humidity = Humidity
air-quantity-dew-point = Dew point
air-quantity-wind = Wind
air-quantity-slab = Slab temperature
air-quantity-pressure = Air pressure
air-quantity-rain = Rain
air-mistake-no-file = No file came. Choose a CSV, EPW or TMY3 file.
air-mistake-gone = The file is not kept here any more. Choose it again.
air-mistake-bytes = The file is larger than 8 MB. Accepted: up to 8 MB; have the logger save every hour.
air-mistake-rows = The file has { $count } rows. Accepted: up to 60,000; have the logger save every hour, or cut the file.
air-refused-empty = The file is empty. Accepted: EPW, TMY3, or a table with a line of names.
air-refused-binary = This is not a text file. Accepted: EPW, TMY3, or a table; save a spreadsheet as CSV.
air-refused-header = Line { $line }, "{ $found }": not the line this form has there. Accepted: the file as the weather service gives it; download it again.
air-refused-site-field = Line { $line }, { $field } "{ $found }": can't be read. Accepted: the file as the weather service gives it; download it again.
air-refused-no-time = No column of time was recognized among: { $found }. Choose it below.
air-refused-no-reading = No column of air, humidity or slab was recognized among: { $found }. Choose it below.
air-refused-no-columns = Neither time nor readings were recognized among: { $found }. Choose the columns below, or give the table a line of names such as time, air °F, RH %.
air-refused-no-such-column = There is no column "{ $column }". Accepted: one of { $found }.
air-refused-unknown-unit = "{ $found }" is not a unit for that. Accepted: { $accepted }.
air-refused-unit-missing = Column "{ $column }" does not say its unit, and 30 degrees may be a frost or a hot day. Accepted: { $accepted }. Choose it below.
air-refused-mapping = The columns of a weather year are fixed. Leave every choice as found.
air-refused-no-rows = No row follows the names in line { $line }. Accepted: one row for each time.
air-refused-no-good-row = { $count ->
        [one] No row can be used. { $first }
       *[other] No row can be used; { $count } were left out, the first: { $first }
    }
air-assumed-utf16 = The text was read as UTF-16.
air-assumed-latin1 = The text was read as Latin-1.
air-assumed-header-line = The names stand in line { $line }; what stands above is not used.
air-assumed-tab = Tabs part the columns.
air-assumed-separator = The sign "{ $sign }" parts the columns.
air-assumed-decimal-comma = Some numbers have a decimal comma.
air-assumed-time = The time is from { $columns }.
air-assumed-unused = Not used: { $columns }.
air-assumed-two-digit-years = Years of two digits were put in the 2000s.
air-assumed-local-times = Times without an offset were read as local time of { $zone }.
air-assumed-stated-offset = Times were read at UTC offset { $offset }, as the file says.
air-assumed-repeated-hour = { $count ->
        [one] 1 row from line { $line } on lies in the hour that clocks repeat: the first pass was read as the earlier hour.
       *[other] { $count } rows from line { $line } on lie in the hour that clocks repeat: the first pass was read as the earlier hour.
    }
air-assumed-hour-ending = Each row is stamped at the end of its hour, in standard time, UTC offset { $offset }.
air-assumed-wind-at-station = The wind is as the weather station reads it, usually 10 m above open ground; at the slab it is less.
air-assumed-doubtful-rain = { $count ->
        [one] The file itself marks 1 hour of rain as doubtful: don't plan by it.
       *[other] The file itself marks { $count } hours of rain as doubtful: don't plan by them.
    }
air-assumed-typical-year = A typical year, its months taken from the years { $first } to { $last }: such days, not those dates.
air-assumed-sorted = { $count ->
        [one] 1 row was out of order and was put in its place.
       *[other] { $count } rows were out of order and were put in their places.
    }
air-date-order-twelve = Dates were read with the { $order ->
        [month] month
       *[day] day
    } first: a number above 12 can only be a day.
air-date-order-majority = Dates were read with the { $order ->
        [month] month
       *[day] day
    } first, as most of them ask; the others were left out.
air-date-order-shorter = Dates were read with the { $order ->
        [month] month
       *[day] day
    } first: the other way the record would cover far more time.
air-date-order-habit = Dates were read with the { $order ->
        [month] month
       *[day] day
    } first. Nothing in the file decides that: check it.
air-skipped-cell = Line { $line }, column { $column }, "{ $value }": { $why }
air-skipped-row = Line { $line }, "{ $value }": { $why }
air-why-not-a-number = not a number. Accepted: { $accepted }.
air-why-unknown-unit = a unit that is not known for that. Accepted: { $accepted }.
air-why-out-of-range = more or less than can be measured outdoors. Accepted: { $accepted }.
air-why-other-period = rain over another time than one hour. Accepted: 1 hour.
air-why-bad-time = not a date with a time of day. Accepted: 2026-03-02 14:00, or 3/2/2026 2:00 PM.
air-why-no-such-local-time = clocks were put forward over that time. Accepted: a time that exists, or times with an offset such as 2026-03-08T02:30-05:00.
air-why-leap-day = a typical year has no February 29. Accepted: any other day.
air-why-cut-short = the row is cut short. Accepted: as many cells as the rows before.
air-why-too-many-cells = the row has more cells than names. Accepted: quotes around numbers with a decimal comma.
air-why-nothing-measured = nothing was measured. Accepted: a row with at least one reading.
air-number-from = a number from { $range }
air-gap = Nothing from { $from } to { $to }.
air-double = Line { $line } has the same time as line { $kept }, which was kept.
