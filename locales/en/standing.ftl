# Hold points, states, and the answer in one line.

hold-age = age
hold-membrane = membrane
hold-absorbency = absorbency
hold-reaction = reaction
hold-contamination = contamination
hold-moisture = moisture
hold-surface-ph = surface pH
hold-repairs = cracks and patches
hold-panel = sample panel
hold-site = site setup
hold-air = air

ask-age = Is the slab old enough, or one even color?
ask-membrane = Free of film?
ask-absorbency = Does the slab soak up water, and evenly?
ask-reaction = Does this concrete react with the stain?
ask-contamination = Free of oil, marks, drips and shadows?
ask-moisture = Is the slab dry enough for the chosen sealer?
ask-surface-ph = Does the surface pH suit the next step?
ask-repairs = Are cracks, holes and patches mapped and settled?
ask-panel = Is a panel of this concrete with this finish approved?
ask-site = Are water, eyewash, waste-water plan and safety data sheets ready?
ask-air = Are air and slab surface fit for work right now?

# What happens if it is skipped: no surer than the trade records on the tests.
ignored-age = The color can come out blotchy, shift after sealing, or grow white salts.
ignored-membrane = The stain can sit on top, wipe off and leave patches.
ignored-absorbency = The color can come out light at the edges or dark in the center; on a closed surface the stain can wash off.
ignored-reaction = The stain can give no color at all, or a weak and blotchy one, and nothing takes it out again.
ignored-contamination = Pale spots, lines and shadows can stay in the floor for good.
ignored-moisture = The color can come out uneven; the sealer can turn white, blister or peel.
ignored-surface-ph = Before the stain: the color can come out weak or not at all. After the rinse: the sealer can peel or grow white salts.
ignored-repairs = Cracks and patches can take another color, and that can end in a dispute.
ignored-panel = Nobody knows the color before the floor is stained, and a reactive color can't be lightened afterwards.
ignored-site = Acid in the eyes or on the skin can't be flushed at once, and rinse water can end up where it must not. Don't start acid work.
ignored-air = The stain can come out weak or with lap marks; the sealer can turn white.

state-released = OK
state-unproven = Not tested
state-cant-tell = Can't tell
state-held = Hold

overall-released = Ready to stain: all { $asked } hold points are released.
overall-released-stained = Ready to seal: all { $asked } hold points that are still asked are released.
overall-released-zones = { $zones }: ready to stain. All hold points asked there are released.
overall-open-floor = Done: the floor may be walked on.
overall-sealing = Sealed; more is to come.
overall-curing = Sealed, and hardening.
stage-bare = { $zones }: not stained yet.
stage-dwell = { $zones }: the stain works until { $until }.
stage-dwell-unknown = { $zones }: the stain is working; nobody noted for how long.
stage-next-coat = { $zones }: coat { $coat } of { $of } comes next.
stage-neutralize = { $zones }: stained, to be neutralized.
stage-rinse = { $zones }: neutralized, to be rinsed.
stage-dry = { $zones }: rinsed, to be tested and dried.
stage-seal = { $zones }: coat { $coat } of { $of } of sealer, not before { $from }.
stage-cure = { $zones }: sealed; nobody walks on it before { $until }.
stage-open = { $zones }: may be walked on.
overall-unproven = Not yet: { $point }.
overall-cant-tell = Can't tell yet: { $point }.
overall-held = On hold: { $point }.
overall-point-at = { $point }, { $where }
overall-released-where = Ready to stain, { $where }: all { $asked } hold points are released.
where-whole = the whole floor
where-area = { $zone } ({ $area })
where-many-area = { $zones } zones ({ $area })
where-many = { $zones } zones
overall-next = { $action } ({ $time }).
overall-next-untimed = { $action }.
overall-where = { $zones }: { $step }
overall-at = { $order } (at { $place })
overall-by-word = Released by word: { $points }.
overall-own-limit = This slab has its own figure for: { $facts }.
overall-open = { $open ->
        [0] No hold point is open.
        [one] 1 of { $all } hold points is open.
       *[other] { $open } of { $all } hold points are open.
    }

time-work-wait = { $work }, then wait { $wait }
time-wait = wait { $wait }

reason-in-zone = { $zone }: { $reason }
overall-both-ends = { $order } (slowest at { $slow }; fastest at { $fast })
the-floor = The floor
overall-meanwhile = Meanwhile, for { $point }: { $step }

ready-deed = { $step }. It is for: { $points }.
ready-unknown = Nobody can tell yet what would release: { $points }.
ready-nothing = Everything that is asked is released.
ready-in-all = { $waits ->
        [0] Work: { $work }.
       *[other] Work: { $work }; the longest wait: { $wait }.
    } Even if every test passes, not ready before { $earliest }. A test that fails brings work of its own.
ready-question = What would make this ready?
ready-head = What would make { $slab } ready, as of { $moment }:
overall-lapses = This proof counts until { $until }.
overall-own-figures = This slab goes by figures of its own for: { $points }.
