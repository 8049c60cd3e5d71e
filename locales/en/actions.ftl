# What to do next: an order without its period, since the time may follow in parentheses.
# .care is the caution that stands beside the step where it is dangerous. The signal words follow the
# meanings of ANSI Z535. The safety data sheet and local rules always come first.

do-note-pour = Log the pour date
do-wait-for-age = Let the slab get older; it is too green to judge its color
do-look-for-one-color = Look at the slab dry and then misted, and note whether it is one even color; if it is patchy, wait
do-drop-and-scrape = Drop water at { $missing ->
        [one] one place
       *[other] { $missing } places at least 2 ft apart
    }, and scrape beside a drop
do-repeat-drop-and-scrape = Repeat the water drops and the scrape side by side at fresh spots
do-scrape = Scrape a small spot with a carbide blade and note what comes up
do-water-drops = Drop water at { $missing ->
        [one] one more place, at least 2 ft from the others
       *[other] { $missing } more places, at least 2 ft apart
    }, and time each drop until it soaks in
do-more-drops = Time { $missing ->
        [one] one more drop
       *[other] { $missing } more drops
    } at other places: center, edges, each load
do-screen-place = Screen that place evenly and to a natural edge, then drop water there again
    .care = Warning: silica dust can cause lung disease. Use water or a dust collector and follow the silica rules. Stop at black mastic or old tile: it can hold asbestos.
do-mix-by-zone = Stain a separate panel or mock-up for the slow zone, and mix a separate batch for it: { $slow_zone }
    .care = Warning: acid can blind or burn. Wear goggles, face shield and gloves, keep the eyewash at hand, and follow the safety data sheet.
do-mock-up-both-ends = Make two mock-ups on the floor, one at the slowest place and one at the fastest, stain both, and show them to the owner
    .care = Warning: acid can blind or burn. Wear goggles, face shield and gloves, keep the eyewash at hand, and follow the safety data sheet.
do-scrape-where-water-stands = Scrape at the very spot where the water stands and note what comes up
do-acid-drop = Put one drop of dilute acid on a spot that will not show, watch whether it fizzes, and wash it off
    .care = Warning: acid can blind or burn. Wear goggles, face shield and gloves, keep the eyewash at hand, and follow the safety data sheet.
do-ask-about-concrete = Don't stain here. Find out what this top is: ask who poured it, or have a core looked at
do-try-this-concrete = Stain a panel or a mock-up of this very concrete and see whether it takes the color
    .care = Warning: acid can blind or burn. Wear goggles, face shield and gloves, keep the eyewash at hand, and follow the safety data sheet.
do-solvent-wipe = Wipe one small spot with solvent on a white rag, doors open and no flame near, and look at the rag
    .care = Warning: solvent vapor can catch fire and make you ill. Put out pilot lights, keep air moving, wear gloves and goggles, and follow the solvent's safety data sheet.
do-strip-and-retest = Take the film off with a matched stripper or by grinding, then repeat water drops and scrape
    .care = Warning: stripper can burn skin and eyes, its vapor can make you ill, and grinding makes silica dust. Ventilate, use water or a dust collector, wear gloves and goggles, and follow the safety data sheet. Stop at black mastic or old tile: it can hold asbestos.
do-screen-and-retest = Screen or grind the whole zone evenly, edge to edge, then repeat the water drops
    .care = Warning: silica dust can cause lung disease. Use water or a dust collector and follow the silica rules. Stop at black mastic or old tile: it can hold asbestos.
do-try-on-panel-or-screen = Try the stain on a panel with this same finish, or screen where the water is slow and test again
    .care = Warning: acid stain can blind or burn, and screening makes silica dust. Wear goggles, face shield and gloves, keep the eyewash at hand, use water or a dust collector, and follow the safety data sheet.
do-mist-and-look = Mist the slab, look low across it for oil, marks, drips and shadows, and note what you find
do-lift-mist-and-look = Lift the cover, mist the slab, look low across it, and note what you find
do-treat-and-retest = Treat the spot (what may help: { $remedy }), rinse, then look again and put down a water drop
    .care = Warning: removers, degreasers and solvents can burn you or catch fire. Ventilate, no flames, never mix cleaners, wear gloves and goggles, and follow the safety data sheet.
do-retest-spot = Look at the treated spot again and put down a water drop
do-ask-owner-to-accept = Show the owner what will stay visible and get the acceptance in writing
do-choose-sealer = Choose the sealer and note its maker's moisture limits
do-end-wet-cure = Note the day the wet covers come off
do-set-probes = Set humidity probes in the slab, or calcium chloride tests, where their marks may show, and read them after the wait
    .care = Caution: probe holes and the ground spots of calcium chloride tests will show on the stained floor; put them in closets, under cabinets or where the owner agrees. Warning: drilling concrete makes silica dust, which can cause lung disease. Use a dust collector and follow the silica rules.
do-lay-sheet = Tape { $missing ->
        [one] a clear plastic sheet
       *[other] { $missing } clear plastic sheets
    } to the slab and look under after the wait
do-measure-moisture-again = Measure the moisture again, by the test's own rules
do-dry-and-measure-again = Let the slab dry with air moving over it, then measure again
do-ask-sealer-maker = Ask the sealer's maker in writing how much moisture it allows
do-test-ph = Test the surface pH at { $missing ->
        [one] one place
       *[other] { $missing } places
    }, with distilled water and pH paper or a meter
do-wait-dwell = Leave the stain alone; no walking, brushing or fanning
do-lay-coat = Lay coat { $coat } of { $of }
    .care = Warning: acid stain can blind or burn. Wear goggles, face shield, gloves and boots with grip, keep the eyewash at hand, keep others off, and follow the safety data sheet.
do-mock-up-or-grind = Try the stain on a small mock-up; if the color is weak, grind to fresh paste
    .care = Warning: acid stain can blind or burn, and grinding makes silica dust. Wear goggles, face shield and gloves, keep the eyewash at hand, use water or a dust collector, and follow the safety data sheet.
do-neutralize-and-rinse = Neutralize, scrub, rinse, vacuum up the water, then test again
    .care = Warning: acid may still be on this floor. Wear goggles, gloves and boots with grip, never use bleach, never mix cleaners, keep the rinse water out of drains and soil, and follow the safety data sheets.
do-map-cracks = Walk the slab and map every crack, hole and patch
do-measure-crack = Measure the crack with a crack gauge and note whether its sides move
do-repair-or-accept = Repair it with cement, or get the owner's acceptance in writing
    .care = Caution: wet cement can burn skin. Wear gloves.
do-ask-engineer = Have a licensed engineer look at the moving crack
do-try-stain-on-patch = Try the stain on a small corner of the patch
    .care = Warning: acid stain can blind or burn. Wear goggles, face shield and gloves, keep the eyewash at hand, and follow the safety data sheet.
do-make-panel = Make a sample panel of this concrete with this finish, or mask off a mock-up on this floor
    .care = Caution: wet concrete can burn skin. Wear gloves.
do-stain-panels = Stain the panels the way you mean to stain the floor
    .care = Warning: acid stain can blind or burn. Wear goggles, face shield and gloves, keep the eyewash at hand, pour acid into water and never water into acid, and follow the safety data sheet.
do-note-panel = Note how the panel was made, and the mix and finish of panel and floor
do-seal-panel-and-show = Seal the approved panel with the chosen sealer, photograph it, and show it to the owner again
    .care = Warning: sealer vapor can catch fire and make you ill. Put out flames and pilot lights, keep air moving, and wear what the safety data sheet asks for. A sealed floor is slippery when wet.
do-get-approval = Show the owner the stained panels with sealer on them and get the choice in writing
do-set-up-site = Set up water, a tested eyewash, the waste-water plan and the safety data sheets
do-check-site-again = Check water, eyewash, waste-water plan and safety data sheets again this morning
do-read-air = Read air temperature, air humidity and the slab's surface temperature
do-wait-for-air = Wait for better air, then read it again
do-agree-probe-place = Agree with the owner on a place where a probe hole or a dish mark may show, such as a closet, before anything is drilled or ground
do-lay-sealer-coat = Lay coat { $coat } of { $of } of sealer, not before { $from }
    .care = Warning: sealer vapor can catch fire and make you ill. Put out flames and pilot lights, keep air moving, and wear what the safety data sheet asks for. A sealed floor is slippery when wet.
do-keep-off = Keep everybody off the floor until { $until }
