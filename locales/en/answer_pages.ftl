# Pages that answer: calculators, glossary, facts, what to buy, papers.

sums-title = Calculators
sums-what = One question, one answer, with what it is based on. No slab is needed, and nothing is logged.
sums-answer = Answer
sums-refused = This can't be worked out yet:
sums-file-again = A browser does not keep a chosen file: choose it again.
sums-understood = Worked out with
sums-given = What
sums-typed = Typed
sums-taken = Used
sums-assumed = not typed: usual value
sums-noticed = Noticed in the file
sums-rests-on = Based on
sums-change = Change something
sums-give = What is known
sums-example = Fill in an example
sums-more = More
sums-work-out = Work it out
sums-share = The address of this page holds what was typed: send it, and the other person sees the same answer.
sums-all = All calculators
sums-usual = Empty means: { $usual }
sums-usual-choice = The usual
sums-lines = One on each line.
sums-instead = Not together with: { $names }
sums-needs = Only together with: { $names }

glossary-title = Glossary
glossary-what = What the crew calls it, in English and Spanish, with Mexican trade words first. How sure, where nothing else is said: { $grade }.
glossary-search = Find a word in either language
glossary-from-english = English to Spanish
glossary-from-spanish = Spanish to English
glossary-count = { $count ->
        [0] No word has that in it. Try a shorter part of it.
        [one] 1 word
       *[other] { $count } words
    }
glossary-all = See all words
glossary-letters = Letters

facts-title = Facts and sources
facts-what = Every rule and figure that an answer may be based on, how sure it is, and where it comes from. A product's own sheet, local code and the engineer come first.
facts-english-only = The records are kept in English only; the figures are in your units.
facts-search = Find in the facts
facts-topic = About
facts-every-topic = Everything
facts-count = { $count ->
        [0] Nothing has that in it. Try fewer words, or everything.
        [one] 1 record
       *[other] { $count } records
    }
facts-all = See all
facts-groups = Groups
facts-tests = Hold point tests
facts-rules = Rules of the trade
facts-limits = Limits and thresholds
facts-safety = Hazards and cautions
facts-defer = This list never replaces the safety data sheet, local code, the sewer authority or licensed practice.
facts-figures = Figures for ordering
facts-finishes = Finishes
facts-sealers = Sealer classes
facts-incidents = What others leave on a slab
facts-pour = Clauses of the pour sheet
facts-conflicts = Where sources disagree
facts-sources = Sources
facts-sources-what = As they were seen. Pages of firms are left unnamed on purpose and carry no more than common practice.
facts-how = How
facts-passes = Passes
facts-uncertain = Can't tell
facts-fails = Fails
facts-remedy = What helps
facts-if-ignored = If skipped
facts-grade = How sure: { $grade }.
facts-two-grades = { $idea }; its figures or details: { $rest }
facts-source = Source:
facts-a-coat = { $amount } a coat
facts-each = { $amount } each
facts-an-hour = { $amount } an hour
facts-months = { $count ->
        [one] { $n } month
       *[other] { $n } months
    }
facts-for-each = { $amount } for each { $per }
facts-at-most = at most { $amount }
facts-at-least = at least { $amount }
facts-above = above { $amount }
facts-below = below { $amount }
facts-about = about { $amount }
facts-usually = { $range }, usually { $usual }
facts-topic-bond = Bond of the sealer
facts-topic-care = Care
facts-topic-conflicts = Where sources disagree
facts-topic-film = Film of the sealer
facts-topic-finishes = Finishes
facts-topic-health = Health and safety
facts-topic-money = Money
facts-topic-order = Ordering
facts-topic-pour = Pour
facts-topic-practice = Rules of the trade
facts-topic-residue = Residue after staining
facts-topic-sealers = Sealers
facts-topic-slip = Slip
facts-topic-substrate = The slab itself
facts-topic-waste = Waste water

order-title = Order
order-answer = To buy for { $area } of floor
order-no-area = Nothing to buy yet: the plan is missing, so no area is known.
order-no-area-what = Draw the plan, or log just the area. Two minutes.
order-no-finish = The finish of a zone is not noted, so the range of all finishes is used.
order-note-finish = Log the finish
order-no-recipe = No panel is approved yet, so usual coats and water are assumed. A panel with the amount used narrows the order.
order-make-panel = Log a panel
order-approve = Log the approved panel
order-no-sealer = No sealer is chosen, so none is in the list.
order-choose-sealer = Choose the sealer
order-file = Save as a file for a spreadsheet
order-items = Need and packs
order-range = Low and high are the ends of what is seen, not a promise; packs cover the high end.
order-item = Item
order-packs = Buy
order-low = Low
order-usual = Usual
order-high = High
order-unit = Unit
order-pieces-unit = pieces
order-grade = How sure
order-notes = To know
order-why = Each item: what to know and what it is based on
order-facts = Facts used
order-coverage = How far the stain goes
order-zone-head = Zone
order-whole-slab = Whole slab
order-area = Area
order-finish = Finish
order-a-coat = A coat
order-basis = Based on
order-zone-evidence = { $zone }: entries it is based on

papers-title = Papers
papers-what = Two papers for other people on the site. Each is a PDF to print or send.
papers-refused = This paper can't be made yet:
papers-site-notice = Site notice
papers-site-notice-what = One sheet in English and Spanish for the wall: this slab is the finished floor, and what keeps it so.
papers-found = { $count ->
        [0] Nothing found on the slab is open.
        [one] It names 1 thing found on the slab that is not settled.
       *[other] It names the { $count } things found on the slab that are not settled.
    }
papers-link = Link to print as a code
papers-link-hint = Paste a share link of this slab. Whoever reads the notice can open it: use a link of its own, and withdraw it at the end of the job.
papers-link-wrong = That is no web address that can be printed. Accepted: up to 200 plain signs, beginning with https://.
papers-size = Paper
papers-letter = US letter
papers-a4 = A4
papers-make-notice = Make the site notice
papers-pour-sheet = Pour sheet
papers-pour-sheet-what = What to agree with the concrete contractor before the pour: mix, finish, cure, panels, and the hours when the surface may dry too fast.
papers-poured = This slab was poured on { $date }. A pour sheet made now tells what could have been asked; it changes nothing in the slab.
papers-no-area = The plan is missing, so no zone has an area. Accepted: a plan, or one with just the area.
papers-from-diary = From the diary: { $value }
papers-pour-day = Pour day
papers-thickness = Thickness
papers-finish = Finish: { $zone }
papers-panels = Sample panels of each finish
papers-panels-hint = Poured the same day, from the same truck. 0 for none.
papers-waste = Concrete added for waste
papers-make-pour-sheet = Make the pour sheet
papers-day-wrong = That is no day. Accepted: 2026-06-02.
papers-thickness-wrong = That thickness can't be taken. Accepted: above 0, up to 36 in, such as 4 in or 100 mm.
papers-thickness-missing = The thickness is missing, and the diary has none. Accepted: 4 in or 100 mm.
papers-finish-wrong = That is no finish of the list. Accepted: one of the list.
papers-finish-missing = The finish is missing, and the diary has none. Accepted: one of the list.
papers-panels-wrong = That number of panels can't be taken. Accepted: 0 to 99.
papers-waste-wrong = That share can't be taken. Accepted: 0 % to 50 %.
papers-glyph = The sign { $sign } in "{ $text }" can't be printed. Accepted: letters, figures and common signs, without emoji. Correct the entry in the diary.
papers-failed = The paper could not be made: { $what }
