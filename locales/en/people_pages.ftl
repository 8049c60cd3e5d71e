# Signing in, people, share links, and what a link shows.

way-password = My password
way-choice = Choose a panel

set-up-title = Set up
set-up-head = This server has no admin yet
set-up-what = The first admin adds everybody else. Type the code that stands in the terminal where the server was started: it works once.
set-up-code = Code from the terminal
set-up-code-hint = Capitals and dashes make no difference.
set-up-do = Make me the admin
person-name = Name
person-name-hint = It stands beside everything this person writes in the diary.
person-password = Password
person-password-new = New password
person-password-again = The same password again
person-password-hint = At least { $count } letters, up to 256. A sentence of your own is easy to keep in mind. Nothing else is demanded.

sign-in-title = Sign in
sign-in-do = Sign in
sign-in-forgot = Forgot the password? An admin can make you a new one.

password-title = My password
password-what = Wherever else you are signed in, you will have to sign in again.
password-now = Password now
password-do = Change the password

people-count = { $count ->
        [one] 1 person may sign in
       *[other] { $count } people may sign in
    }
people-me = you
people-since = since { $date }
people-closed = closed since { $date }
people-closed-what = Can't sign in any more. What this person wrote stays, with the name beside it.
people-made = Starting password of { $name }
people-made-what = Read it out or hand it over now: it is shown only once. Ask for it to be changed after the first sign-in.
people-may = May
people-may-of = What { $name } may do
people-change = Change
people-new-password = New password for { $name }
people-new-password-what = For somebody who forgot it or lost a phone: signs them out everywhere and makes a new starting password.
people-close = Close the account of { $name }
people-close-what = Signs them out everywhere, for good. What they wrote stays. The name can't be given to another person.
people-add = Add a person
people-add-do = Add this person
people-typed-password = Type a starting password yourself
role-owner = Admin
role-crew = Crew
role-guest = Guest
role-owner-may = Admin: everything, people and share links too
role-crew-may = Crew: read every slab and write in every diary
role-guest-may = Guest: read every slab, write nothing
copy = Copy

mistake-sign-in = Name or password is wrong. Check both and try again.
mistake-set-up-code = That is not the code in the terminal. Accepted: the code of the last start, twelve letters and digits.
mistake-person-name = The name is empty, too long or has several lines. Accepted: 1 to 80 letters on one line.
mistake-person-taken = Somebody is or was called "{ $name }" here. Accepted: a name that nobody has or had.
mistake-password-short = The password is too short or too long. Accepted: { $least } to 256 letters of any kind.
mistake-password-again = The two passwords differ. Accepted: the same twice.
mistake-password-now = That is not your password now.
mistake-role = Say what this person may do. Accepted: admin, crew or guest.
mistake-last-owner = { $name } is the only admin. Make another person an admin first.
mistake-person-closed = The account of { $name } is closed. Accepted: an open account; add the person under another name.

links-count = { $count ->
        [0] No link is open
        [one] 1 link is open
       *[other] { $count } links are open
    }
links-what = A link shows chosen pages of this slab to whoever has it, without signing in. It ends by itself and can be withdrawn at any time. Hours and costs are never shown.
links-here-only = This server answers only on this machine, so a link opens only here: on another phone or computer it leads nowhere. Start the server for people to share links with others.
links-fresh = Copy the link now: it is shown only once
links-fresh-what = Or hold a phone's camera on the picture. Lost it? Withdraw this link and make another.
links-picture = The link as a picture for a phone's camera
links-make = Make a link
links-make-do = Make the link
links-pages = What it shows
links-choice = The panels, and a form in which the owner of the floor chooses one and agrees to what stain does. Compare its words with your own contract.
links-standing = The answer, the hold points and why. Everything that keeps the floor from being stained is told.
links-plan = The plan with what was found on it
links-diary = Every entry, without hours and costs
links-photographs = All photographs of the diary
links-order = What to buy
links-note = For whom
links-note-hint = Stands beside what is logged by the link, such as "the owner".
links-days = Ends in
links-days-unit = days
links-all = Links so far
links-no-note = For nobody in particular
links-withdraw = Withdraw
link-open = Open until { $moment }
link-over = Over since { $moment }
link-withdrawn = Withdrawn { $moment }
link-made = Made { $moment }
mistake-link-page = Nothing to show is ticked. Accepted: one page at least.
mistake-link-days = How long it is good can't be read. Accepted: { $least } to { $most } days.
mistake-link-note = For whom is too long or has several lines. Accepted: up to { $most } letters on one line.
mistake-link-made = This link was made already and its address can't be shown again. Withdraw it and make another.

trouble-link-over = This link is over since { $date }
trouble-link-over-next = Ask whoever sent it for a new one.
trouble-link-withdrawn = This link was withdrawn on { $date }
trouble-link-withdrawn-next = Ask whoever sent it whether there is a new one.
trouble-link-not-found-next = The link may be cut short or mistyped, or it does not show this page. Open it again from the message it came in, or ask whoever sent it.
visit-photographs = { $count ->
        [0] No photographs yet
        [one] 1 photograph
       *[other] { $count } photographs
    }

choice-head = Choose the color of your floor
choice-nothing = There is no panel to choose yet
choice-nothing-what = A panel is a piece of the same concrete with the same finish, stained as the floor would be. Once one is stained, it can be chosen here.
choice-what = Look at the panels in the light of the room, wet and dry if you can. A photograph shows color only roughly; choose from the panel itself.
choice-again = You may choose again. Every choice stays in the diary.
choice-chosen = { $by } chose panel { $panel } on { $date }
choice-panels = The panels
choice-finish = Finish: { $finish }
choice-stain = Stain: { $mix }; coats: { $coats }
choice-on-floor = A corner of the floor itself
choice-not-stained = Not stained yet
choice-bare = Bare
choice-stained = Stained, not sealed
choice-sealed = Stained and sealed
choice-no-photographs = No photograph of it yet.
choice-which = Which panel
choice-seen = How you saw it
choice-words = What you agree to
choice-agree = I agree to the words above.
choice-name = Your name
choice-do = Choose this panel
agree-varies = Reactive stain is no paint. It works with what is in the concrete, so the color of every floor varies from place to place, lighter and darker. That is normal and no defect.
agree-shows = Cracks, patches, repairs, trowel marks and old spills show through, some of them only once the floor is stained.
agree-panel = The color is chosen from the panel named here. The floor will come near it; it will not be the same everywhere.
agree-sealer = Sealer makes the color darker and deeper. A panel seen without sealer looks lighter than the sealed floor.
agree-stays = The stain can't be washed off or taken back. Another color later means grinding, coating or covering the floor.
mistake-choice-panel = No panel is chosen. Accepted: one of the stained panels.
mistake-choice-state = How you saw the panel is not said. Accepted: stained and sealed, or stained and not sealed.
mistake-choice-name = Your name is missing or too long. Accepted: 1 to 80 letters.
mistake-choice-agree = The box under the words is not ticked. Without it nothing is chosen.
