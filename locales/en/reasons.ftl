# Why a hold point stands as it does: one sentence or two for each reason code of the core.
# What each code carries is listed in crates/words/tests/all/carried.rs. Two more are made on the way:
# $window is "low to high" and $read is "lowest to highest"; $side tells on which side of the dew
# point the surface lies.

## Age

why-old-slab = This is an old floor. Old floors are never held for their age.
why-one-color = The slab is one even color all over. That counts as old enough at any age.
why-one-color-but-green = It is still very young: lime, moisture and color are still moving. The stain can come out stronger and less even.
why-old-enough = Poured { $poured }, { $days ->
        [one] 1 day
       *[other] { $days } days
    } ago. The rule asks for { $needed ->
        [one] 1 day
       *[other] { $needed } days
    }.
why-no-pour-date = The diary has no pour date, and nobody has noted one even color. Nothing shows that this slab is old enough.
why-too-young = { $days ->
        [0] The slab was poured today
        [one] The slab is 1 day old
       *[other] The slab is { $days } days old
    }; the rule is { $needed ->
        [one] 1 day
       *[other] { $needed } days
    } or one even color, whichever comes first. It gets there on { $ready }.
why-cold-cure = The slab cured cold. With temperature counted in, it is as old as { $window } at 68 °F (20 °C). The rule goes by days or by color, so this changes nothing; look once more at the color before you stain.
why-equivalent-age = With temperature counted in, the slab is as old as { $window } at 68 °F (20 °C).
why-equivalent-age-reached = With temperature counted in, the slab is as old as { $window } at 68 °F (20 °C): the age the rule asks for.
why-no-temperature-record = There is no temperature record since the pour, so a cold cure would go unnoticed.
why-temperature-gaps = The temperature record has gaps, so this age is a range.
why-color-patchy = The last look found light and dark patches.
why-color-cant-tell = The last look does not settle whether the color is even.

## Membrane

why-membrane-on-slab = A curing compound or cure-and-seal was applied on { $date }, and nothing in the diary says it came off. It blocks the stain, and time does not remove it.
why-tests-look-clear-all-the-same = The drops and scrapes look clear all the same. A film can be there and not show: tests count only after it was taken off.
why-no-film-test = No water drop and no scrape yet. Nobody knows whether there is a film.
why-film-on-blade = The blade lifts a waxy curl or flakes, or finds it tacky. That is a film, even where water soaks in and even if you can't see it, and stain does not react through a film.
why-film-on-blade-water-stopped = Water is slow or stands, and the blade lifts a film. Both tests say the same: the film must come off first.
why-beads-on-powder = Water beads, but the blade brings up only gray powder. Oil or silicone can do that, and so can a treatment that sank in. A solvent wipe can find the first two.
why-water-stands-no-blade = Water stands or beads, and no scrape has brought up bare gray powder. Something stops the water: treat it as a film until a scrape says otherwise.
why-slow-on-powder = Water is slow or stands, and the blade brings up gray powder. That is dense paste, or a treatment that sank in and that no blade lifts. A clean rag and a fizzing acid drop tell them apart.
why-rag-changes-shine = The rag changed the shine. That could be a thin film, or a treatment that sank in; only stain on a spot that will not show tells.
why-clean-rag-no-acid-drop = The blade does not settle it, and the rag came up clean. Only an acid drop tells whether something sank in that keeps the stain out.
why-clean-rag-weak-fizz = The rag came up clean, but an acid drop fizzes only weakly. Something may have sunk in that keeps the stain out.
why-penetrating-treatment = Water is slow or stands, the blade brings up powder, the rag is clean and an acid drop does not fizz: something sank in that keeps water and acid out, as silane, siloxane or silicate treatments do. A solvent wipe does not find it.
why-film-on-rag = The rag comes up sticky or yellow, and nothing speaks against it. That is a film, and stain does not react through a film.
why-rag-against-water = Water soaks in and the blade lifts no film, but the rag comes up sticky or yellow. The tests contradict each other: don't stain on this.
why-scrape-missing = { $drops ->
        [0] No scrape and no water drop yet.
        [one] 1 water drop so far, but no scrape.
       *[other] { $drops } water drops so far, but no scrape.
    } A film can be there and not show: drop and scrape must agree.
why-drop-missing = { $scrapes ->
        [one] The scrape brought up gray powder,
       *[other] { $scrapes } scrapes brought up gray powder,
    } but there is no water drop yet. Drop and scrape must agree.
why-shine-change-only = The blade only changed the shine. That could be a thin film or dense paste; a solvent wipe comes next.
why-too-few-drops = { $drops ->
        [one] 1 water drop counts so far;
       *[other] { $drops } water drops count so far;
    } { $needed ->
        [one] 1 is needed
       *[other] { $needed } are needed
    } here.
why-powder-where-water-stands = Water stands, yet the blade brought up gray powder. So far that looks like dense paste, not a film.
why-water-and-blade-agree = { $drops ->
        [one] The water drop soaked in
       *[other] All { $drops } water drops soaked in
    } and the blade brought up gray powder. The two tests agree: no film found.
why-dense-paste-not-film = The blade and the rag found no film, and an acid drop fizzes strongly: dense paste, no film found.
why-water-stands-in-places = { $drops ->
        [one] Water is slow or stands
       *[other] Water is slow or stands at some of the { $drops } drops
    }, and nobody has scraped at that spot. It could be a patch of film.
why-older-tests-outdated = Older tests no longer count: the surface was changed after them.
why-tests-lapsed = Some tests are too old to speak for a slab on which others work.
why-tests-without-place = Some tests don't say in which zone they were made, so they count for none.

## Absorbency

why-trowel-burn = A trowel burn was noted on { $date } and has not been opened since. Stain can come out pale there or wash off.
why-no-drops = Nobody has timed how fast water soaks in. { $needed ->
        [one] 1 water drop is needed
       *[other] { $needed } water drops are needed
    } here.
why-dense-finish-needs-coat = A finish this dense often needs one more coat of stain.
why-film-hides-absorbency = There is a film, so the drops tell nothing about the concrete under it.
why-burnished = Water stands, but the blade brings up gray powder: the surface is burnished shut. Stain can wash off it.
why-water-stands-unknown-why = Water stands or beads and nobody knows why: a film, oil, or a burnished surface.
why-drinks-unevenly = On this finish the fastest drop soaks in within { $fastest }, the slowest takes { $slowest }: { $factor } times as long. The color will follow, strong here and weak there.
why-drinks-somewhat-unevenly = On this finish the fastest drop soaks in within { $fastest }, the slowest takes { $slowest }: { $factor } times as long. That is neither even nor clearly uneven.
why-slow-places-together = On this finish the fastest drop soaks in within { $fastest }, the slowest takes { $slowest }: { $factor } times as long. More drops will not change that; the slow ones lie together.
why-slow-by-zone = On this finish the fastest drop soaks in within { $fastest }, the slowest takes { $slowest }: { $factor } times as long. More drops will not change that; the slow ones fill zones of their own.
why-slow-scattered = On this finish the fastest drop soaks in within { $fastest }, the slowest takes { $slowest }: { $factor } times as long. More drops will not change that; the slow ones lie here and there.
why-both-ends-approved = On this finish the fastest drop soaks in within { $fastest }, the slowest takes { $slowest }: { $factor } times as long. Mock-ups at both places were stained and approved.
why-drinks-slowly = At least one drop is slow: too slow to pass, too fast to call the surface closed. Stain may take weakly there.
why-too-few-places = { $places ->
        [one] 1 water drop counts over the whole slab;
       *[other] { $places } water drops count over the whole slab;
    } { $places_needed ->
        [one] 1 place is needed:
       *[other] { $places_needed } places are needed:
    } center, edges, each load.
why-drinks-evenly = { $drops ->
        [one] The water drop soaked in.
       *[other] All { $drops } water drops soaked in.
    } On this finish the fastest takes { $fastest } and the slowest { $slowest }: even.

## Reaction

why-no-fizz = An acid drop did not fizz: it met no free lime for the stain to react with. It may be a gypsum or polymer topping, or something keeps the acid out. Reactive stain gives no color here.
why-weak-fizz = An acid drop fizzes only weakly. Only a panel or a mock-up of this concrete shows whether it takes the stain.
why-strong-fizz = An acid drop fizzes strongly: this concrete reacts.
why-plain-portland = The mix ticket says plain Portland concrete, with little fly ash and no chloride.
why-much-fly-ash = The mix has { $share } fly ash; over { $limit } it can react weakly or unevenly. Only a panel or a mock-up of this concrete shows what it does.
why-chloride-in-mix = The mix has chloride, which can make the color blotchy. Only a panel or a mock-up of this concrete shows what it does.
why-old-topping-unknown = This is an old floor, and nobody knows what its top is made of. Toppings of gypsum or polymer do not react.
why-reaction-untried = Nobody has tried whether this concrete reacts: no acid drop, no full mix ticket, no panel of it that was stained.
why-panel-took-stain = Panel { $panel } is of this concrete and took the stain.

## Contamination

why-incident-untreated = { $what }, { $date }: nothing has been done about it.
why-incident-still-there = { $what }, { $date }: the last look still found it.
why-incident-stops-water = { $what }, { $date }: water still stands there, or the blade still lifts something.
why-incident-faint = { $what }, { $date }: a faint trace is left. It may show through the stain.
why-looks-clear-but-water-stops = { $what }, { $date }: the spot looks clean, but water stands or the blade lifts something. What sits in the pores can't be seen.
why-clear-without-treatment = { $what }, { $date }: the test looks clear, but the diary has no treatment. Deposits don't leave by themselves.
why-treated-not-retested = { $what }, { $date }: treated, but nobody has tested the spot since.
why-treated-looks-clear-no-drop = { $what }, { $date }: treated, and it looks clean. What sits in the pores can't be seen: only a water drop shows it.
why-incident-cleared = { $what }, { $date }: treated, and the spot passed its test.
why-incident-accepted = { $what }, { $date }: accepted as it is by { $by }.
why-incident-not-acceptable = It was accepted, but this kind is settled only by treatment and test.
why-nothing-takes-it-out = { $what }, { $date }: no treatment is known to take it out. Only the owner's acceptance settles it.
why-cover-still-lies = The cover laid on { $date } is still down. Nobody can see what is under it.
why-ink-lay-against-slab = The cover laid on { $date } had its printed side down, and nobody has looked since it was lifted. Ink can stay in the surface.
why-plastic-lay-on-slab = Plastic was laid on { $date }, and nobody has looked since it was lifted. It can leave marbled lines.
why-no-survey = Nobody has gone over the slab to look for oil, marks, drips and shadows.
why-survey-old = The last look over the slab was on { $date }, { $days ->
        [one] 1 day
       *[other] { $days } days
    } ago. With other trades around, a look holds for { $keeps ->
        [one] 1 day
       *[other] { $keeps } days
    }.
why-survey-under-cover = The look over the slab on { $date } was made while a cover lay there. What lay under it nobody saw.
why-surveyed = The slab was looked over on { $date }. With other trades around, a look holds for { $keeps ->
        [one] 1 day
       *[other] { $keeps } days
    }.

## Moisture

why-no-sealer-chosen = No sealer is chosen. How dry the slab must be depends on the sealer.
why-still-wet-curing = The wet cure began on { $date } and no end is noted. A moisture test under wet covers tells nothing.
why-moisture-tests-outdated = Older moisture tests no longer count: they were made before the wet cure ended or before the last rinse.
why-moisture-tests-wetted = Moisture tests from before water came onto the slab no longer count.
why-moisture-tests-lapsed = Some moisture tests are too old to count.
why-moisture-tests-disagree = One moisture test is over the limit and another is under it. The tests contradict each other: don't seal on this. Limits for the sealer "{ $sealer }": { $humidity_limit } humidity in the slab, emission of { $emission_limit }.
why-moisture-tests-weak = The moisture tests were not done by the test's own rules: wrong probe depth, too short a wait, or wrong dish time. They can't release anything. Limits for the sealer "{ $sealer }": { $humidity_limit } humidity in the slab, emission of { $emission_limit }.
why-slab-too-humid = A probe in the slab reads { $humidity_read }; the limit for the sealer "{ $sealer }" is { $humidity_limit }. If it is sealed now, the sealer can turn white, blister or peel.
why-emission-too-high = A calcium chloride test reads { $emission_read }; the limit for the sealer "{ $sealer }" is { $emission_limit }. If it is sealed now, the sealer can turn white, blister or peel.
why-sheet-wet = There were drops under the plastic sheet: too wet for the sealer "{ $sealer }".
why-sheet-wet-sealer-tolerates = There were drops under the plastic sheet. The sealer "{ $sealer }" is said to tolerate damp; how much, only its maker can say.
why-sheet-dry = Nothing under the plastic sheet: no drops, no darkening. That is enough for the sealer "{ $sealer }".
why-too-few-sheets = { $have ->
        [one] 1 dry plastic sheet so far;
       *[other] { $have } dry plastic sheets so far;
    } { $needed ->
        [one] 1 is needed
       *[other] { $needed } are needed
    } here for the sealer "{ $sealer }".
why-sheet-darkened = The slab was darker under the plastic sheet, with no drops. Not clearly dry, not clearly wet.
why-sheet-too-short = The plastic sheet did not stay down long enough to count.
why-sheet-is-not-enough = A plastic sheet is not enough for the sealer "{ $sealer }". It needs humidity probes in the slab, or calcium chloride tests.
why-humidity-needs-maker = A probe in the slab reads { $humidity_read }, over { $humidity_limit }. Some makers of the sealer "{ $sealer }" allow that and some don't: get it in writing.
why-no-moisture-test = No moisture test counts yet for the sealer "{ $sealer }". Only a test shows that a slab is dry.
why-too-few-moisture-tests = { $have ->
        [one] 1 moisture test so far;
       *[other] { $have } moisture tests so far;
    } { $needed ->
        [one] 1 is needed
       *[other] { $needed } are needed
    } over the whole slab.
why-dry-enough = The moisture tests are within the limit for the sealer "{ $sealer }": at most { $humidity_limit } humidity in the slab, or emission of { $emission_limit }.
why-month-per-inch = Rule of thumb only, one month per inch: { $thickness } of concrete drying since { $from } would be dry around { $date }. Only a test tells.

## Surface pH

why-no-ph-test = No surface pH test counts yet. { $needed ->
        [one] 1 is needed
       *[other] { $needed } are needed
    } here.
why-no-ph-test-after-rinse = No surface pH test since the last rinse. { $needed ->
        [one] 1 is needed
       *[other] { $needed } are needed
    } here.
why-dwell-runs = The stain is still working: leave it alone until { $until }.
why-dwell-not-noted = Nobody noted how long the stain is to work. Leave it alone for as long as its maker's sheet says.
why-coat-to-come = The recipe asks for { $of } coats; coat { $coat } has not been laid.
why-ph-test-older-than-wash = The surface pH test is older than the last wash or spill and no longer counts. { $needed ->
        [one] 1 new one is needed
       *[other] { $needed } new ones are needed
    } here.
why-ph-test-lapsed = The surface pH tests are too old to count. { $needed ->
        [one] 1 new one is needed
       *[other] { $needed } new ones are needed
    } here.
why-ph-too-low = The surface pH is down to { $lowest }; the stain wants { $window }. There is little lime left to react with, so the color may be weak or missing.
why-ph-outside-window = The surface pH reads { $read }; it should be { $window }. The result is in doubt.
why-too-few-ph-tests = { $have ->
        [one] 1 surface pH test so far;
       *[other] { $have } surface pH tests so far;
    } { $needed ->
        [one] 1 is needed
       *[other] { $needed } are needed
    } here.
why-ph-fit = The surface pH reads { $read }, inside { $window }.
why-not-neutralized = The floor has been stained and not neutralized since. Acid may still be on it.
why-not-rinsed = The floor has been neutralized and not rinsed since. Residue may still be on it.
why-rag-colored = The white rag came up colored. Loose residue is still there, and sealer can peel from it.
why-rag-faint = The surface pH fits, but the white rag came up with a faint tint. Some residue may be left.
why-no-rag = Nobody wiped a white rag after the rinse. It would show loose residue.
why-acid-left = The surface pH is down to { $lowest }; after the rinse it should be { $window }. Acid is left on the floor, and sealer can peel from it.

## Cracks and patches

why-cracks-not-mapped = Nobody has looked over the slab for cracks, holes and patches.
why-no-defects = Looked over on { $date }: no cracks, holes or patches noted.
why-defects-mapped = { $count ->
        [one] 1 crack, hole or patch is on the list.
       *[other] { $count } cracks, holes and patches are on the list.
    }
why-defect-accepted = Accepted as it is by { $by }.
why-crack-moves = The two sides of this crack move. It can open again whatever is put into it: that is a question for a licensed engineer.
why-crack-not-measured = Nobody has measured how wide this crack is.
why-crack-wide = This crack is { $width } wide; over { $limit } somebody has to decide. Stain gathers in it.
why-crack-hairline = Hairline crack, { $width } wide. Stain will still show it.
why-hole-open = There is an open hole. Stain gathers in it, and a patch can take another color.
why-spall-open = There is an open spall. Stain gathers in it, and a patch can take another color.
why-patch-untried = There is an old patch, and nobody has tried stain on it. It may take another color, or none.
why-surface-dusts = The surface dusts. The weak top layer can carry the stain away.
why-repaired-owner-told = Repaired with cement. The owner knows that it will show.
why-repaired-owner-not-told = Repaired with cement, but the owner has not been told that it will show.
why-repair-takes-no-stain = Repaired with polymer or gypsum, which takes no stain. The spot will stay pale.

## Sample panel

why-no-panel = There is no sample panel. Nobody knows what color this concrete gives.
why-panels-bare = The panels are made but not stained.
why-no-choice-yet = Panels are stained, but nobody has approved one.
why-panel-origin-unknown = { $by } approved panel { $panel } on { $date }, but the diary does not say how it was made. Nobody knows whether it stands for this floor.
why-panel-finish-unknown = { $by } approved panel { $panel } on { $date }, but the finish of the panel or of this floor is not noted. Nobody knows whether they match.
why-panel-mix-unknown = { $by } approved panel { $panel } on { $date }, but the mix of the panel or of this floor is not noted. Nobody knows whether they match.
why-panel-other-finish = Panel { $panel }, approved by { $by } on { $date }, does not have the finish of this floor: { $panel_has } there, { $zone_has } here. It does not stand for this floor.
why-panel-other-mix = Panel { $panel }, approved by { $by } on { $date }, is not of the mix of this floor: { $panel_has } there, { $zone_has } here. It does not stand for this floor.
why-panel-other-zone = Panel { $panel }, approved by { $by } on { $date }, is a mock-up on another part of the floor. It does not stand for this one.
why-floor-changed-since-panel = This floor has been screened, ground, blasted or acid-washed since. Panel { $panel }, approved by { $by } on { $date }, no longer shows what this floor is.
why-approved-before-stained = { $by } approved panel { $panel } on { $date }, but the diary does not say how it was stained.
why-stained-again-since-approval = Panel { $panel } was stained again after { $by } approved it on { $date }. The approval was for another color.
why-choice-withdrawn = { $by } took back the choice of panel { $panel } on { $date }: "{ $reason }".
why-part-without-panel = A part of this floor is of other concrete or finish ("{ $part_is }"), and no approved panel shows what the stain does there.
why-panel-approved = { $by } approved panel { $panel } on { $date }. It has the concrete and finish of this floor.
why-approved-unsealed = { $by } approved panel { $panel } on { $date } without sealer on it. Sealer can change the color, so nobody can tell yet whether it is the color that was chosen.

## Site

why-site-not-checked = Nobody has checked water, eyewash, waste-water plan and safety data sheets.
why-site-partly-checked = Not checked yet: { $item }.
why-site-check-old = Water, eyewash, waste-water plan and safety data sheets were last checked on { $date }, { $days ->
        [one] 1 day
       *[other] { $days } days
    } ago. A check counts for { $keeps ->
        [one] 1 day
       *[other] { $keeps } days
    }.
why-site-check-not-today = Water, eyewash, waste-water plan and safety data sheets were last checked on { $date }. On the day of the work they are checked again.
why-site-lacks = Missing on site: { $item }. No acid work without it.
why-site-ready = Water, eyewash, waste-water plan and safety data sheets are checked.
why-site-again-on-the-day = On the day of the work they are checked again.

## Air

why-no-fresh-air-reading = There is no fresh reading of air and slab surface. Only a reading taken for the work at hand counts.
why-no-surface-temperature = There is no fresh reading of the slab's surface temperature.
why-no-humidity-reading = There is no fresh reading of air temperature and humidity together.
why-surface-too-cold = The slab surface is { $surface }; under { $limit } it is too cold to work. Stain can come out weak and sealer may not cure.
why-surface-too-hot = The slab surface is { $surface }; over { $limit } it is too hot to work. Stain and sealer can dry too fast and leave lap marks.
why-surface-marginal = The slab surface is { $surface }; { $window } gives no trouble. This is at the edge.
why-surface-fit = The slab surface is { $surface }.
why-air-too-humid = The air is at { $humidity } humidity; the limit is { $limit }.
why-near-dew-point = { $side ->
        [below] The slab surface is { $spread } below the dew point ({ $dew_point }): water is condensing on it.
       *[above] The slab surface is only { $spread } above the dew point ({ $dew_point }): water can condense on it.
    } It should be at least { $wanted } above.
why-dew-point-marginal = The slab surface is { $spread } above the dew point ({ $dew_point }); it should be at least { $wanted } above. This is at the edge.
why-above-dew-point = The slab surface is far enough above the dew point.
why-rain = Rain, or rain in the forecast for the work.
why-wind-too-strong = The wind is { $wind }; over { $limit } no stain is laid outdoors: it dries while it works and is carried onto other things.
why-wind-no-spraying = The wind is { $wind }; over { $limit } nothing is sprayed outdoors. Lay it with a brush or a broom.

## Release by a person

why-released-by-person = { $by } released this on { $date }: "{ $reason }".
why-release-lapsed = { $by } released this on { $date } ("{ $reason }"). Newer evidence speaks against it, so the release no longer counts.
why-nobody-may-release-site = { $by } released this on { $date } ("{ $reason }"). Nobody's word replaces water, eyewash, waste-water plan and safety data sheets.
why-nobody-may-release-air = { $by } released this on { $date } ("{ $reason }"). The air is not released by word: only a reading within the hours of the work counts.
why-word-does-not-settle = { $by } released this on { $date } ("{ $reason }"). Nobody's word changes what is known here, so the release does not count.
why-closed-by-stain = Stain is on. This is how it stood before the first coat; nothing is tested here anymore.
remedy-unknown = find out first what it is
