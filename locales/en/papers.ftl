# The papers: pour sheet and site notice. What they say of finishes, clauses and incidents is in trade/.

## Hours and the foot of a sheet

paper-hour-am = { $hour } am
paper-hour-pm = { $hour } pm
paper-hour-noon = 12 noon
paper-hour-midnight = midnight
paper-sheet = Sheet
paper-sheet-of = of

## Signal words, grades, grip, marbling

paper-signal-warning = WARNING
paper-signal-caution = CAUTION
paper-signal-notice = NOTICE

paper-grade-verified = read in the source
paper-grade-secondary-copy = read in a copy or quotation
paper-grade-from-memory = the named document, from memory
paper-grade-common-practice = common practice, no source
paper-grade-expert-judgment = our judgment

paper-grip-poor = poor
paper-grip-fair = fair
paper-grip-good = good

paper-marbling-low = little
paper-marbling-low-to-medium = little to medium
paper-marbling-medium = medium
paper-marbling-high = much
paper-marbling-varies = varies

## What a paper rests on

paper-sources-heading = Sources and grades
paper-sources-grades = Grades:
paper-sources-none = no document named
paper-sources-defer = The licensed engineer, the products' safety data sheets and local code come before this paper.

## The pour sheet

paper-pour-title = Pour sheet
paper-pour-document = Pour sheet: { $job }, { $slab }
paper-pour-whom = For the concrete contractor, to be agreed before the pour
paper-pour-job = Job
paper-pour-slab = Slab
paper-pour-prepared = Prepared
paper-pour-day = Pour day
paper-pour-day-open = not set
paper-pour-lead = This slab is the finished floor. A reactive stain will color the bare concrete itself, so what the mix, the finish and the cure leave in the surface will show.
paper-pour-governs = Structure, reinforcement, loads and code belong to the licensed engineer. Where this sheet differs from the engineer's documents, local code or a safety data sheet, those come first: tell us before the pour.
paper-pour-no-membrane = No membrane curing compound on this slab
paper-pour-no-membrane-what = No spray-on cure, no cure-and-seal, no sealer, no hardener, no release oil. This includes ASTM C309 and C1315 products. “Dissipating” kinds: only with a written removal test.
paper-pour-no-membrane-why = A film keeps the stain off and can be invisible. It has to come off with chemicals, and usually by abrasion too.
paper-pour-asked = What we ask
paper-pour-why = Why
paper-pour-grade = Grade

paper-zones-heading = Finish, zone by zone
paper-zones-zone = Zone
paper-zones-area = Area
paper-zones-finish = Finish
paper-zones-grip = Grip dry / wet
paper-zones-marbling = Marbling
paper-zones-meaning = What it means here
paper-zones-caution = Grip is a rough rating of the kind of finish, not a measured friction, and the sealer changes it. Settle grip with the owner before the pour wherever the floor gets wet; accessibility rules ask for a slip-resistant surface.
paper-zones-burnished = Zone { $zone } asks for a burnished finish, which may not take stain until it is opened. Ask us before placing.

paper-concrete-heading = Concrete to order
paper-concrete-slab = Slab: { $area } at { $thickness }
paper-concrete-panels = Sample panels: { $count }
paper-concrete-waste = Waste allowance, { $percent } % (set for this job)
paper-concrete-total = Order, rounded up to the quarter yard
paper-concrete-not-in = Thickened edges, footings, steps and low spots in the subgrade are not in this figure: add them from the drawings.

paper-mix-heading = Mix and delivery

paper-joints-heading = Thickness and joints
paper-joints-spacing = Joint spacing
paper-joints-spacing-why = { $low_times } to { $high_times } times the thickness
paper-joints-spacing-capped = { $low_times } to { $high_times } times the thickness, held to { $most } at most
paper-joints-depth = Joint depth
paper-joints-depth-value = at least { $depth }
paper-joints-depth-why = a quarter of the thickness
paper-joints-cut = When to cut
paper-joints-cut-value = { $early_low } to { $early_high } h after finishing with an early-entry saw, { $wet_low } to { $wet_high } h with a wet saw
paper-joints-saw = Sawing concrete makes silica dust that can cause lung disease. Saw with water or a dust collector, as 29 CFR 1926.1153 lays down.

paper-placing-heading = Placing and finishing
paper-placing-skin = Wet concrete is caustic and can burn skin and eyes badly. Waterproof gloves and boots, eye protection; wash off at once. Follow the cement's safety data sheet.

paper-curing-heading = Curing that is allowed
paper-curing-lead = Wet cure, at least { $days } days (7 to 10 is better), the whole slab alike, so the lime stays even:
paper-curing-start = Start as soon as the surface is firm enough not to mark.
paper-curing-water = Clean water; non-staining burlap or one uniform blanket, lapped, no gaps. A flat sheet in full contact only if sampled.
paper-curing-wet = Keep every part wet, day and night; no dry patches. Keep it at { $warm } or warmer.
paper-curing-panels = Cure the sample panels the same way on the same days.
paper-curing-lift = Lift all covers together and write down the day and hour: { $line }

paper-weather-heading = Weather: hours to avoid
paper-weather-rule = Above { $limit } lb/ft² per hour of evaporation the fresh surface needs protection. Then: place earlier in the day, put up wind breaks and shade, fog the air above the slab (never water on the surface), have the wet covers ready.
paper-weather-often = Above the alarm on half of the days or more: { $hours }.
paper-weather-often-none = No hour is above the alarm on half of the days.
paper-weather-seldom = On one day in ten or fewer: { $hours }.
paper-weather-seldom-none = No hour stays at one day in ten or fewer.
paper-weather-unknown = No readings: { $hours }.
paper-weather-estimate = Estimate, ±{ "\u00A0" }{ $error }{ "\u00A0" }%. { $month } at { $place }, from { $basis }, with the concrete taken as { $concrete }. It shows what the month is like; it is not a forecast. Check the forecast, and measure on the day.
paper-weather-basis-typical = a typical weather year
paper-weather-basis-recorded = recorded hours
paper-weather-no-series = No weather file was given for this slab: look up air, humidity and wind for the day and estimate the evaporation before placing.
paper-weather-axis = share of days above the alarm
paper-weather-above = above the alarm
paper-weather-possible = above it only within the ±{ "\u00A0" }{ $error }{ "\u00A0" }%
paper-weather-chart = Bar chart, { $month }: share of days above the evaporation alarm, by hour. { $hours }
paper-weather-chart-hour = { $hour }: { $above } %, up to { $reach } %
paper-weather-chart-unknown = { $hour }: no readings

paper-panels-usual = Usual: { $range }.
paper-panels-heading = Sample panels, poured the same day
paper-panels-lead = From the same load, with the same finish and the same cure as the zone they stand for. Number each one, write load and zone on it, store it beside the slab.
paper-panels-finish = Finish
paper-panels-count = Number
paper-panels-size = Size
paper-panels-thickness = Thickness
paper-panels-concrete = Concrete
paper-panels-weight = Each weighs about
paper-panels-heavy = Panels are heavy and break: let them harden, lift with two people or a cart.
paper-panels-none = No panels are asked for. Without panels from this concrete the color cannot be settled before the floor is touched.
paper-panels-all = All panels

paper-agreed-heading = Agreed before the pour
paper-agreed-changes = Changes agreed:
paper-agreed-concrete = Concrete contractor
paper-agreed-stain = Stain contractor
paper-agreed-general = General contractor or owner
paper-agreed-name = Name
paper-agreed-signature = Signature
paper-agreed-date = Date

## The site notice

paper-notice-title =
    This slab is
    the finished floor
paper-notice-document = Site notice: { $job }, { $slab }
paper-notice-report = Report damage today.
paper-notice-braces = Anchor braces outside the slab.
paper-notice-found = Already found here
paper-notice-found-none = Nothing noted so far.
paper-notice-found-all = { $count } noted in the diary
paper-notice-found-more = and { $count } more in the diary
paper-notice-call = Call
paper-notice-job = Job
paper-notice-posted = Posted
paper-notice-code = This slab on your phone
paper-notice-code-alt = Code that opens { $address }
paper-notice-spanish = Spanish: own wording, not reviewed by a second native speaker.

## What the drawings show, for those who cannot see them

paper-picture-chalk = Dark chalk stick crossed out, light chalk stick allowed
paper-picture-marker = Marker on the slab, crossed out
paper-picture-tape = Tape stuck to the slab, crossed out
paper-picture-nail = Nailed brace in the slab, crossed out
paper-picture-lumber = Boards lying on the slab, crossed out
paper-picture-battens = Stack held off the slab by battens
paper-picture-plastic = Wrinkled plastic sheet on the slab, crossed out
paper-picture-printed = Cover sheet with the print facing up
paper-picture-pipe = Threaded pipe dripping oil, crossed out
paper-picture-tray = Pipe glued over a tray
paper-picture-lift = Lift with a drip pan under it
paper-picture-boot = Clean dry boot
paper-picture-acid = Bottle of acid or bleach, crossed out
paper-picture-spray = Spray gun over a covered slab
paper-picture-puddle = Drops and a puddle, crossed out
paper-picture-cup = Cup, crossed out
paper-picture-slab = Slab with an exclamation mark
paper-picture-report = Speech over a spot on the slab
