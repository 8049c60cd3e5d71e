# What the command line says around the answers.

slab-opened = Started { $name }. Next: draw its plan and log the pour (underfoot log --help shows how).
no-slabs-yet = No slab yet. A slab is one floor with its own diary. Start one with: underfoot new "NAME". Or see a whole one with: underfoot demo
entries-written = { $added ->
        [0] Nothing new
        [one] 1 entry written
       *[other] { $added } entries written
    }{ $already ->
        [0] .
        [one] ; 1 was there already.
       *[other] ; { $already } were there already.
    }
standing-head = { $slab }, { $moment }
standing-source = Source: { $source }. Grade: { $grade }.
standing-if-ignored = If ignored: { $consequence }
standing-evidence = { $count ->
        [0] No entry speaks to it yet.
        [one] Based on 1 entry.
       *[other] Based on { $count } entries.
    }
diary-corrected = (corrected)
paper-written = Wrote { $file }
demo-head = This is a demo: an invented slab, read from ordinary diary files.
demo-diary = Diary in { $dir }; look further with: underfoot --data { $dir } diary
demo-as-of = Asked as of { $moment }, the last day of its diary.
serve-at = The pages are at { $address }
serve-not-encrypted = Warning: this address is not encrypted. Passwords can be read on the way and nothing works without signal. Put it behind HTTPS and give --public.
serve-set-up = These slabs have no admin yet. Open { $address }/set-up and type this code, once: { $code }
serve-stop = Stop with Ctrl-C.
