# Captions of the drawings that show how a test is done, in their order. A caption stands under its drawing and is
# what a screen reader reads, so each is a whole sentence. No figure that a slab may set for itself.


step-water-drop-1 = Choose a clean spot and brush off the dust.
step-water-drop-2 = Let one drop of water fall on it.
step-water-drop-3 = Time it from when the drop touches until the shine is gone.
step-water-drop-4 = Soaked in, still standing, or up like a bead? Write it down with the time.
step-water-drop-5 = Do the same at several spots in each zone, and at the edges besides.

step-scrape-1 = Wear eye protection and keep the dust down: concrete dust holds silica.
step-scrape-2 = Scrape a small spot with a carbide blade and look at what comes up.
step-scrape-3 = Gray powder: so far it looks like bare or dense concrete, not a film.
step-scrape-4 = A curl like wax, flakes, or a tacky spot: that is a film.

step-solvent-wipe-1 = Wear gloves and goggles, and follow the solvent's safety data sheet.
step-solvent-wipe-2 = Open the doors, no flame or pilot light near: the vapor can catch fire.
step-solvent-wipe-3 = Rub one small spot with solvent on a white rag.
step-solvent-wipe-4 = Look at the rag: is it clean, or sticky or yellow?

step-acid-drop-1 = Wear goggles and gloves, keep water at hand, follow the acid's safety data sheet.
step-acid-drop-2 = Let one drop of dilute acid fall on a hidden spot.
step-acid-drop-3 = Look: does it fizz strongly, a little, or not at all?
step-acid-drop-4 = Keep goggles and gloves on, and neutralize as the safety data sheet says.
step-acid-drop-5 = Rinse with water, and take the water up again.

step-slab-humidity-1 = Drill by the test's own rules, with a dust collector: the dust holds silica.
step-slab-humidity-2 = Brush the hole and vacuum it clean.
step-slab-humidity-3 = Line the hole and close it tight, by the test's own rules.
step-slab-humidity-4 = Leave it closed for as long as the test asks.
step-slab-humidity-5 = Read with a checked probe; write down the depth and how long the hole stood closed.

step-plastic-sheet-1 = Lay clear plastic flat, out of the sun, where tape marks will not show.
step-plastic-sheet-2 = Tape all four sides down.
step-plastic-sheet-3 = Leave it closed for as long as the test asks.
step-plastic-sheet-4 = Lift it and look at once, at the sheet and at the slab.
step-plastic-sheet-5 = Dry, darker, or with drops? Write down which.

step-card-1 = Lay a gray card or white paper flat on the slab, or beside the panel.
step-card-2 = Keep shadows off it, your own too.
step-card-3 = Stand square over it and hold the phone level.
step-card-4 = Get the whole card into the picture, well inside the edges.
step-card-5 = Mark where the card lies in the picture: two opposite corners.
