# What to buy: names of the lines and what to know about each.

item-stain = Reactive stain
item-mixing-water = Water to dilute the stain
item-bicarbonate = Sodium bicarbonate (baking soda)
item-neutralizer-water = Water for the neutralizer
item-rinse-water = Rinse water
item-waste-water = Waste water to collect
item-drums = Waste drums
item-sealer = Sealer
item-masking-plastic = Masking plastic for the wall band
item-spot-work = Spots to treat before staining
item-protective-board = Board or paper over the finished floor

note-coverage-from-panels = Coverage as measured on this slab's own panels, with room for a floor that drinks more or less.
note-coverage-from-table = Coverage from the trade's range for the finish. A panel with the amount used would narrow it.
note-finish-unknown = No finish is noted for a zone: the range of all finishes is used.
note-finish-may-refuse = A finish on this slab may refuse the stain. Try it on a panel before you buy.
note-recipe-from-choice = Coats, mix and water as on the approved panel.
note-recipe-assumed = No panel is approved yet: usual coats and water are assumed.
note-one-batch = Buy one batch, or pour all containers together before use.
note-touch-up-kept = One sealed container of the batch is kept back for touch-up.
note-stoichiometry-governs = Chemistry could ask for more than practice does, so the larger amount is used.
note-practice-covers-stoichiometry = By practice. What is bought would also take up all the acid in the stain, if that is as strong as assumed.
note-acid-assumed = The acid in the stain is assumed until its safety data sheet is at hand. The pH paper decides, not this figure.
note-foams = It foams. Add it slowly, and leave drums open until the bubbling ends.
note-stop-on-tests = Stop on tests (clean rag, pH), not on a count of passes.
note-ask-sewer-authority = Ask the sewer authority where it may go before any acid arrives. Neutral is not free of metals; nothing goes to a storm drain or on soil.
note-sealer-by-film = From the film and solids noted with the sealer.
note-sealer-by-coverage = From the trade's coverage range for this class.
note-makers-sheet-governs = The maker's sheet governs.
note-no-sealer = No sealer is chosen.
note-perimeter-from-plan = Along every wall and opening edge of the plan.
note-reach-assumed = Nobody noted how far a spot reaches: a foot (30 cm) around its point is assumed. Mark its extent.
note-perimeter-of-square = No plan is drawn: the edge of a square of this area, the least there can be.

order-head = What to buy for { $slab }
order-recipe-panel = Recipe of panel { $panel }: { $coats ->
        [one] 1 coat
       *[other] { $coats } coats
    }, { $water ->
        [one] 1 part
       *[other] { $water } parts
    } water to 1 part stain.
order-recipe-usual = No panel is approved: { $low } to { $high } coats, 0 to { $water } parts water to 1 part stain.
order-zone = { $zone }: { $area }, { $finish }, { $coverage } a coat
order-zone-panels = { $count ->
        [one] measured on 1 panel
       *[other] measured on { $count } panels
    }
order-zone-table = trade range
order-zone-unknown = finish not noted
order-need = need { $range }, usually { $usual }
order-need-exact = need { $usual }
order-buy = buy { $packs }
order-pack = { $count } × { $size }
order-pieces = { $count ->
        [one] 1 piece
       *[other] { $count } pieces
    }
order-next = Next: get a price on these amounts, and ask the sewer authority where the rinse water may go.
