# Words inside drawings and in the text beside them. Short: they stand in a picture on a phone.

pic-plan-desc = { $area } in all, { $width } by { $depth } at the widest. Zones: { $zones }.
pic-named = { $name }: { $value }
pic-cut-outs = Cut-outs (no slab there): { $area }
pic-floor-no-panel = hatched: no panel stands for it
pic-stretch = { $width } by { $depth }
pic-wall = Wall { $n }: { $length }
pic-more = and { $n } more in the list
pic-north = N
pic-open = open
pic-settled = dealt with
pic-in-zone = { $what }, { $zone }
pic-earlier = { $count ->
        [one] { $what }; { $n } earlier try there
       *[other] { $what }; { $n } earlier tries there
    }
pic-soaked = soaked in after { $time }
pic-stood = still stood after { $time }
pic-beads = stood as a bead
pic-seconds = { $n } s
pic-minutes = { $n } min
pic-hours = { $n } h
pic-short-stood = over { $time }
pic-short-beads = bead
pic-emission-pounds = { $n } lb
pic-emission-grams = { $n } g
pic-scrape-powder = powder
pic-scrape-shine-change = shine
pic-scrape-curl = curl
pic-scrape-flake = flakes
pic-scrape-tacky = tacky
pic-wipe-clean = clean
pic-wipe-shine-change = shine
pic-wipe-sticky-or-yellow = sticky or yellow
pic-fizz-strong = strong fizz
pic-fizz-weak = weak fizz
pic-fizz-none = no fizz
pic-sheet-dry = dry
pic-sheet-darkened = darker
pic-sheet-drops = drops
pic-defect-crack = crack
pic-defect-hole = hole
pic-defect-spall = spall
pic-defect-patch = old patch
pic-defect-dusting = dusting surface
pic-legend-open = open incident
pic-legend-settled = incident dealt with
pic-legend-next = test here next

pic-day = { $month } { $day }
pic-day-year = { $month } { $day }, { $year }
pic-month-1 = Jan
pic-month-2 = Feb
pic-month-3 = Mar
pic-month-4 = Apr
pic-month-5 = May
pic-month-6 = June
pic-month-7 = July
pic-month-8 = Aug
pic-month-9 = Sept
pic-month-10 = Oct
pic-month-11 = Nov
pic-month-12 = Dec
pic-hour-am = { $n } AM
pic-hour-pm = { $n } PM
pic-noon = noon
pic-midnight = midnight
pic-today = today
pic-today-is = Today, { $date }
pic-date = date
pic-what = what
pic-reading = reading
pic-reading-margin = reading with its margin
pic-forecast = forecast
pic-band = forecast: 8 slabs in 10 lie here
pic-middle = middle of the forecast
pic-low = low
pic-mid = middle
pic-high = high

pic-drying-axis = In-slab RH
pic-drying-desc = Humidity in the slab by day since the pour: forecast, readings and limits.
pic-drying-on = Forecast for { $date }: { $middle }; 8 slabs in 10 lie from { $low } to { $high }.
pic-drying-no-forecast = There is no forecast yet: it needs the thickness and the mix of the pour.
pic-drying-reach = { $limit }: half of the slabs are there by { $middle }, 9 in 10 by { $late }.
pic-drying-reach-open = { $limit }: half of the slabs are there by { $middle }; 9 in 10 are not within the forecast.
pic-drying-reach-never = { $limit }: half of the slabs are not there within the forecast.
pic-drying-last-reading = Last reading, { $date }: { $humidity }.
pic-drying-no-readings = No reading yet.
pic-drying-rule = one month per inch
pic-drying-rule-is = The rule of thumb of one month per inch runs out on { $date }; it proves nothing.
pic-drying-not-proof = A forecast is no test: only a measurement shows that the slab is dry.

pic-air-pounds = Water leaving, lb/ft² per hour
pic-air-kilograms = Water leaving, kg/m² per hour
pic-air-desc = Water leaving fresh concrete hour by hour, with its margin and the alarm lines.
pic-air-highest = Highest, { $date }, { $hour }: { $rate }.
pic-air-over = { $count ->
        [one] { $line }: { $n } hour at it or over.
       *[other] { $line }: { $n } hours at it or over.
    }
pic-air-may = { $count ->
        [one] { $line }: { $n } more hour may reach it within the margin.
       *[other] { $line }: { $n } more hours may reach it within the margin.
    }
pic-air-unknown = { $count ->
        [one] { $n } hour has no reading.
       *[other] { $n } hours have no reading.
    }
pic-air-hour = hour
pic-air-rate = rate
pic-air-below = below the lines
pic-air-possible = may reach a line
pic-air-above = at a line or over
pic-air-missing = not known

pic-line-desc = From the first entry at the top to the last date at the bottom. Dates are spread where much happened.
pic-line-happened = happened
pic-line-trouble = trouble
pic-line-milestone = mark on the calendar
pic-line-forecast = forecast: likely span, tick in its middle
pic-line-by = half by { $middle }, 9 in 10 by { $late }
pic-line-by-open = half by { $middle }; the late end is not within the forecast
pic-line-open = not likely within the forecast
pic-line-span = 1 in 10 by { $early }, { $rest }

pic-score-axis = Score, CIEDE2000 units
pic-score-even = can be one color below
pic-score-patchy = can be patchy from here
pic-score-none = none
pic-score-last = Last photograph, { $date }: { $score }.
pic-score-desc = Scores of photographs by day, with the two limits. A hollow mark is a photograph without a score.

pic-ground-share = { $share } { $what }
pic-share = { $n } %
pic-share-least = under 1 %
pic-ground-unsure = on { $share } the class is not sure
pic-ground-film = film
pic-ground-stands = water stands
pic-ground-slow = slow to drink
pic-ground-untested = not tested enough
pic-ground-dense = drinks, dense finish that often needs one more coat
pic-ground-drinks = drinks
pic-ground-spot = { $what }, { $state }
pic-ground-spot-assumed = { $spot } (its reach was assumed)
pic-ground-untreated = untreated
pic-ground-still-there = still there
pic-ground-stops-water = still stops water
pic-ground-faint = faint trace left
pic-ground-no-treatment = looks clear, no treatment noted
pic-ground-not-retested = treated, not tested again
pic-ground-no-drop = treated, no water drop yet
pic-ground-not-acceptable = has to be treated
pic-ground-nothing-takes-it-out = no known treatment takes it out
pic-ground-cleared = passed its test
pic-ground-accepted = accepted
pic-ground-not-settled = not settled
pic-bay = { $finish } ({ $zones })
pic-bay-no-finish = finish not noted
pic-bay-mapped = { $drops } drops; { $held } of { $timed } lay in the band that should hold 80 % when foretold from the others
pic-bay-unplaced = { $count ->
        [one] { $n } drop without a place is not on the map
       *[other] { $n } drops without a place are not on the map
    }
pic-bay-too-few = { $count ->
        [one] { $places } place has drops; still missing for a map: { $more }
       *[other] { $places } places have drops; still missing for a map: { $more }
    }
pic-bay-no-drops = no drops yet; a map needs { $more } places
pic-bay-stood = only { $timed } of { $drops } drops soaked in: no map; first find out why water stands
pic-bay-film = film: a drop tells nothing of the concrete under it
pic-bay-stands = water stands at every drop
pic-bay-none = these drops make no map
pic-next = Test here next
pic-next-settles = expected to settle { $area }
pic-next-first-map = { $count ->
        [one] no map here yet, { $n } place missing
       *[other] no map here yet, { $n } places missing
    }
pic-saw-cuts = Saw cuts: { $length } in all
pic-construction-joints = Construction joints: { $length } in all
pic-isolation-joints = Isolation joints: { $length } in all
pic-joints = Joints of a kind not noted: { $length } in all
pic-score-lines = Score lines: { $length } in all
pic-key-saw-cut = saw cut
pic-key-construction-joint = construction joint
pic-key-isolation-joint = isolation joint
pic-key-joint = joint, kind not noted
pic-key-score-line = score line
pic-key-section = between sections
pic-section = Section { $n }: { $area }
pic-section-short = Sec. { $n }
pic-key-drinks = drinks: a drop is gone within { $time }
pic-key-slow = slow to drink: { $low } to { $high }
pic-key-stands = water stands: over { $time }
pic-key-unsure = class not sure
pic-key-border = time a drop takes; thick where classes meet
pic-next-enough = Enough drops: a further one would hardly change where what is done.
pic-next-none = No place to put a drop is named: no bay here can be planned. Where a film was found or water stands everywhere, treat the surface first and try again.
