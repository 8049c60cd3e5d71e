# What the pages' script says on the phone. The page carries these texts in a template with the
# holes left open, so each must read right for any number: no plural choices here.

## Entries that wait on this phone

script-not-sent-yet = Not sent yet: { $count }
script-send-now = Send now
script-sending = Sending…
script-still-waits = No answer from the server. The entries stay on this phone and will be tried again.
script-all-sent = All sent
script-kept-on-phone = Kept on this phone. It will be sent when there is a connection.
script-photographs = Photographs: { $count }
script-state-waiting = Waits for a connection
script-state-refused = Not accepted
script-state-needs-sign-in = Waits until you sign in with leave to log here
script-sign-in = Sign in
script-mend = Fix
script-throw-away = Delete
script-throw-away-sure = Delete "{ $label }"? It has not been sent and cannot be brought back.
script-waits-for-others = Waiting on this phone: { $count }. Each is sent when the person who wrote it signs in here.
script-sign-out-waiting = Not sent yet: { $count }. They stay on this phone for you alone and are sent when you sign in here again. Sign out now?
script-signed-out = You are signed out on this phone, but the server did not answer. Load this page again.

## What was wrong

script-mistakes-head = Not logged yet. Fix this:
script-refused-general = The server did not accept this entry. Look it over and send it again.
script-photograph-too-large = { $name } has { $size } MB. At most { $limit } MB can be sent; choose a smaller picture size in the camera.
script-photograph-unreadable = A photograph could not be read on this phone. Choose it again.
script-no-room = This phone has no room to keep the entry, and it could not be sent either. All you typed and the photographs are still in this form: leave it open. Make room (delete pictures or apps you do not need) or go where there is signal, then press again. If you were signed out, sign in in another window first.
script-cannot-store = This browser keeps nothing on the phone, and the entry could not be sent either. All you typed and the photographs are still in this form: leave it open, go where there is signal and press again. If you were signed out, sign in in another window first.
script-unsaved = This phone has no room to keep what stands in this form while you work on it. Send it before you leave the page, or make room: delete pictures or apps you do not need.

## Drafts and kept pages

script-restored = Restored what you had typed.
script-start-afresh = Start afresh
script-kept-page = You see this page as kept at { $time }. New entries wait on this phone.
script-keeping = Putting all forms of this slab on this phone. Stay where there is signal until this line says they are here.
script-all-kept = All forms of this slab are on this phone. Without signal, what you log waits here and is sent later. Only calculators, files and joint lines need signal.
script-not-kept = Not on this phone yet, so not there without signal: { $names }. Stay where there is signal and load this page again.
script-no-room-pages = This phone has no room for pages to use without signal. Missing: { $names }. Delete pictures or apps you do not need, then load this page again.
script-sum-needs-signal = No signal: the server does the calculating. What you typed stands here; press again when there is signal.

## Photographs

script-photograph-n = Chosen photograph { $number }
script-remove-photograph = Remove photograph { $number }
script-mark-photograph = The photograph on which you mark it
script-card-tap = Tap two opposite corners of the card.
script-mark-second = Now tap the opposite corner.
script-panel-tap = Tap two opposite corners of the whole panel.
script-panel-marked = Panel marked: { $x } % from the left, { $y } % from the top, { $w } % wide, { $h } % high.
script-card-marked = Card marked: { $x } % from the left, { $y } % from the top, { $w } % wide, { $h } % high.
script-mark-again = Mark again

## Beside the fields

script-drop-soaked = Soaked in
script-drop-stands = Still stands
script-drop-beads = Beads
script-drop-remove = Remove
script-drop-written = Drop { $number } is in the diary.
script-drop-not-kept = No room on this phone to keep drop { $number }. Its clock read { $clock }: write it on paper, or make room and tap again.
script-stopwatch-runs = { $clock } ({ $seconds } s)
script-plan-at = Marked { $x } across, { $y } up
script-cannot-look = Can't check now: no connection. Below is how it stood before.
script-cannot-ask = No connection. Will ask again.
script-copied = Copied
script-cannot-copy = Could not copy. Mark the text and copy it by hand.
