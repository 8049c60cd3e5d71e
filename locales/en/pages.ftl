# What stands around the answers on the pages.

skip-to-main = Skip to the page
menu = Menu
other-language = Español
to-metric = Meters and liters
to-imperial = Feet and gallons
to-dark = Dark
to-light = Light
sign-out = Sign out { $name }
outbox = Not sent yet
ways-of-slab = This slab
tag-demo = demo
demo-strip = Demo: an invented slab. Its clock stands at { $moment }.
clock-strip = The clock stands at { $moment }.
not-encrypted = This address is not encrypted: what you type can be read on the way, and nothing can be kept for work without signal. Put the server behind HTTPS.

way-slabs = Slabs
way-slab = Ready?
way-diary = Diary
way-add = Log
way-plan = Plan
way-order = Order
way-papers = Papers
way-drying = Drying
way-pour-day = Pour day
way-time = Time line
way-links = Share
way-sums = Calculators
way-glossary = Glossary
way-facts = Facts and sources
way-people = People
way-reading = Language and units

said-written = Logged in the diary.
said-written-what = Written in the diary: { $entry }.
said-corrected-what = Corrected: { $entry }. The old entry stays readable.
said-corrected = Corrected. The old entry stays readable.
said-opened = Slab started. Next: draw its plan and log the pour.
said-put-away = Archived. Nothing was deleted.
said-brought-back = Back on the list.
said-signed-in = Signed in.
said-saved = Saved.
said-plan-written = Plan logged in the diary.
said-link-made = Link made. Copy it now: it is shown only once.
said-link-withdrawn = Link withdrawn. It opens nothing any more.
said-approved = Thank you. Your choice is logged in the diary.

slabs-title = Slabs
slabs-none = No slab yet
slabs-none-what = A slab is one floor with its own diary: what was poured, tested, spilled and stained, and when. From it Underfoot tells whether the floor is ready for acid stain, what proves it and what to do next.
slabs-open-first = Start your first slab
slabs-open = New slab
slabs-demo-what = Or look at an invented slab with a whole diary. You can archive it afterwards.
slabs-demo = See the demo slab
slabs-count = { $count ->
        [one] 1 slab
       *[other] { $count } slabs
    }
slabs-search = Find a slab by name
search = Find
slabs-no-match = No slab has that in its name.
slabs-all = See all slabs
slabs-away = Archived
slabs-away-see = Archived slabs
bring-back = Take out of the archive
put-away = Archive this slab
put-away-what = It leaves the list and can be taken out of the archive at any time. Nothing is deleted.
page-before = Back
page-after = More

new-slab-title = New slab
new-slab-what = One floor, one diary. A name is enough; the rest can be corrected later.
new-slab-open = Start the slab

offline-title = No signal, and this page was not kept
offline-what = Pages of the slab that you opened last are kept on this phone, and so are the forms you use on it. What you log there waits and is sent when there is signal.

trouble-title = That did not work
trouble-not-found = There is no such page here
trouble-not-found-next = The address may be mistyped, or the slab may be kept elsewhere. Go to the list of slabs.
trouble-sign-in = Sign in first
trouble-sign-in-next = Go to the sign-in page.
trouble-forbidden = You may not do that here
trouble-forbidden-next = Guests read, crew logs, admins have a say over people and links. Ask an admin.
trouble-foreign-origin = That came from another site and was refused
trouble-foreign-origin-next = Open the page here and send it again.
trouble-foreign-host = This address is not one of this machine
trouble-foreign-host-next = Use localhost or 127.0.0.1 in the address.
trouble-wait = Too many tries. Wait { $time }
trouble-wait-next = Then try again.
trouble-mistakes = Something needs fixing
trouble-mistakes-next = Go back, fix it and send it again.
trouble-too-large = That is too large to send at once
trouble-too-large-next = Send fewer photographs at a time, at most 12, each up to 40 MB.
trouble-wrong-type = That came in a form that is not read here
trouble-wrong-type-next = Send it from the page's own form.
trouble-failed = Something failed here: { $what }
trouble-failed-next = Nothing was logged. Try again; if it stays so, check the disk of the server.

optional = optional
not-said = Not said
for-example = such as { $example }
choose = Choose one
mistakes-head = Nothing was logged yet. Fix this:
mistake-name-taken = A slab is already called "{ $name }". Accepted: a name no other slab has.
mistake-name = The name is empty, too long or has several lines. Accepted: 1 to 200 letters on one line.
mistake-already-written = This was already logged with other words. To change it, correct the entry in the diary.
mistake-happened = "{ $typed }" is no date we can read. Accepted: 2026-03-02 07:00, 3/2/2026 7:00 am, Mar 2 2026, yesterday 16:00
mistake-photo-empty = { $name }: the picture is empty. Take it again.
mistake-photo-bytes = { $name }: the picture is larger than 40 MB. Accepted: JPEG or PNG up to 40 MB.
mistake-photo-kind = { $name }: not a JPEG or PNG picture. Accepted: JPEG or PNG; set the phone's camera to save JPEG.
mistake-photo-pixels = { $name }: the picture has too many dots. Accepted: up to 48 million, such as 8192 by 6144.
mistake-photo-cut = { $name }: the picture is cut short. Send it again whole.
mistake-photo-broken = { $name }: the picture can't be read. Accepted: an ordinary JPEG or PNG.

slab-title = Ready?
slab-draw-plan = Draw the plan
slab-note-now = Log now
slab-note-other = Something else
slab-hold-points = Hold points
slab-by-zone = Zone by zone
slab-rests-on = Based on
slab-rests-on-nothing = No entry speaks to it yet.
why-this-matters = Why this matters

add-title = Log an entry
add-what = An entry is never changed or deleted. A mistake is corrected by another entry.
add-plan-why = The outline, the zones and the cut-outs: every place and area rests on it.
add-air-why = A weather file or a logger's file: for the drying forecast and for pour day.
group-files = Drawings and files
how-to-do-it = How to do it right
presets-head = One tap
presets-or = or with details:
happened-other = Another day or hour?
happened = When it happened
happened-hint = Empty means now.
happened-now = Empty means now.
happened-needed = What follows counts from this moment, so it is not taken to be now.
happened-example = 10/20/2026 7:30 am
mistake-no-moment = Say when it was. Accepted: a date and time such as 10/20/2026 7:30 am, or today 7:30
undo = Undo
said-taken-back = Taken back. It stays readable in the diary and counts for nothing.
never-head = This never happened
never-what = A wrong tap, or the wrong slab? It is struck out and counts for nothing. Diary and papers keep it readable.
never-why = What went wrong
never-do = Strike it out
never-already = Struck out: this never happened.
never-restore = It did happen: bring it back
write-down = Log
fix-title = Correct: { $what }
fix-what = A correction is a new entry in place of the old one. The old one stays readable.
photographs = Photographs
photographs-hint = JPEG or PNG, up to 40 MB each. Where a picture was taken is removed before it is kept.
card-by-numbers = The card by numbers
stopwatch-start = Start the stopwatch
stopwatch-stop = It soaked in
place = Where
place-on-plan = Tap the plan, or type it
place-x = Across
place-y = Up
place-radius = How far around
plan-to-tap = Plan to tap a place on
zoom-in = Closer
zoom-out = Farther
zoom-all = The whole plan
told-source = From
told-unknown = Written by a newer version
told-area = Area
told-wrong = Can't be drawn
told-point = at { $x }, { $y }
told-patch = a patch drawn on the plan

diary-title = Diary
diary-count = { $count ->
        [0] The diary is empty
        [one] 1 entry in the diary
       *[other] { $count } entries in the diary
    }
diary-add = Log an entry
diary-empty = Everything else is computed from this diary. Begin with the plan and the pour.
diary-only = Show only one kind
diary-all = All kinds
diary-older = Older entries
entry-corrected = corrected
entry-corrects = correction
entry-corrected-what = This entry was corrected and counts no more.
entry-see-correction = See the correction
entry-corrects-what = This corrects an older entry.
entry-see-old = See the old one
entry-happened = Happened
entry-noted = Logged
entry-of = About
entry-correct = Correct this entry
entry-to-diary = Back to the diary
entry-as-kept = As it is kept

entry-on-floor = What it is to this floor
entry-covers = It covers:
entry-covers-zone = { $area } of { $zone }
entry-reach-assumed = Nobody noted how far it reaches: a foot (30 cm) around its point is assumed.
entry-effect = What it does
entry-remedy = What helps
entry-visible = When it shows
entry-treat = It was treated
entry-retest = Look at the spot again
entry-drop = Water drop on the spot
entry-accept = The owner accepts it

way-drops = Several drops
drops-title = Several drops at once
drops-what = Set a drop and tap where it lies: its clock starts with the tap. Tap what it did when it ends. Nine can run at once; the clocks go on when the phone sleeps.
drops-without-script = The clocks of several drops need script in the browser. One at a time is written here:
drops-running = Drops that are watched
drops-in-zone = Drop in { $zone }
drops-one = Set a drop
