# The plan's page, and drawing the plan.

plan-picture = Plan of the slab
plan-answer = { $area } { $zones ->
        [one] in one zone
       *[other] in { $zones } zones
    }; { $open ->
        [0] no incident is open
        [one] 1 incident is open
       *[other] { $open } incidents are open
    }
plan-whole = whole slab
plan-wrong = The plan in the diary does not hold together.
plan-none = There is no plan yet
plan-none-what = The plan tells how large the slab is, where its zones and cut-outs lie, and which zone each test and spill belongs to. What to buy and how many tests are needed follow from it.
plan-none-ways = Four ways, whichever fits what you have in hand:
plan-none-reader = Someone of the crew can draw it.
plan-tap = Tap the plan to log something right there.
plan-layers = Show
plan-layer-zones = Zones
plan-layer-cut-outs = Cut-outs
plan-layer-dimensions = Lengths of walls
plan-layer-sections = Stretches of work
plan-layer-incidents = Incidents and defects
plan-layer-tests = Tests and photographs
plan-layer-next = Where to test next
plan-here = Log, right here
plan-here-other = Something else
plan-only-areas = Only areas are known, so there is nothing to draw and no place to tap. Draw the plan when the slab can be measured.
plan-zones = Zones
plan-zones-caption = Area and finish of each zone
plan-zone = Zone
plan-area = Area
plan-finish = Finish
plan-finish-unknown = not noted
plan-perimeter = All edges together
plan-cut-outs = Cut out
plan-unzoned = In no zone
plan-by-typing = Log with the place typed
plan-by-typing-what = Each form asks for the zone, or for how far across and how far up.
plan-correct = Correct the plan
plan-download = Download the drawing
plan-entry = The plan's entry in the diary

draw-title = Draw the plan
draw-title-fix = Correct the plan
draw-why = Areas decide what to buy; places decide which zone a test speaks for.
draw-ways = Ways to tell the plan
draw-by-rooms = Room by room
draw-by-walk = Walk along the walls
draw-by-area = Only the area
draw-by-text = As text
draw-by-rooms-what = For floors of square corners. Each row is a rectangle: where its lower left corner lies from the slab's own corner, how wide and how deep it is. Rooms that touch are joined to the slab.
draw-by-walk-what = For any shape. Start at a corner, tape each wall in turn, and note which way you turn before it, until you are back at the start. The walk proves itself: if it does not close, a wall was taped or typed wrong.
draw-by-area-what = For a bid, when nothing is measured yet. Nothing can be placed on such a plan, so draw it before the tests begin.
draw-by-text-what = The plan as the diary keeps it, as JSON. For slanted cut-outs, zones with many corners, and all else that the forms don't tell.
draw-write = Log the plan
draw-look-first = See it first
draw-remove = Remove
draw-rooms = Rooms
draw-rooms-hint = Rows with the same name make one room, such as an L. "Across" and "up" left empty mean 0.
draw-room = Room
draw-room-n = Room { $number }
draw-room-name = Name
draw-x = Begins, across
draw-y = Begins, up
draw-width = Width
draw-depth = Depth
draw-add-room = Add a room
draw-rest-rooms = Name of what has no name
draw-rest-rooms-hint = When rows above have no name: they make the slab, and what the named rooms leave of it gets this name. For one slab without rooms, leave all names empty.
draw-rest-walk = Name of the slab, or of what the rooms leave
draw-rest-walk-hint = Such as hall. Empty: the slab is one zone, or the rest lies in no zone.
draw-rest-area = Name of the rest
draw-rest-area-hint = What the parts leave of the whole. Empty: the rest lies in no zone.
draw-walls = Walls
draw-walls-hint = Wall 1 runs to the right on the plan. Before each further wall choose the turn; the angle is 90° unless you write another. With a tape alone: "8 ft by 6 ft, 10 ft between" is a mark 8 ft back along the last wall, one 6 ft along the next, and the straight way between them; "8 ft on, 3 ft across" is 8 ft on along the last wall's line, then square across to the next. Mark as far out as you can.
draw-wall = Wall
draw-wall-n = Wall { $number }
draw-turn = Turn before it
draw-turn-none = choose
draw-turn-left = left
draw-turn-right = right
draw-turn-straight = straight on
draw-angle = Angle
draw-length = Length
draw-add-wall = Add a wall
draw-finer = Last turn, limit, start
draw-finer-hint = The turn at the start corner, from the last wall onto wall 1, lets the turns be checked by themselves. The limit is how well the walk must close. The start is where wall 1 begins, across and up.
draw-limit = Limit
draw-start-x = Start, across
draw-start-y = Start, up
draw-zones-in-walk = Rooms on the slab
draw-cuts = Cut-outs: columns, pits, planters
draw-cuts-hint = What lies inside and is not slab, each a rectangle.
draw-cut = Cut-out
draw-cut-n = Cut-out { $number }
draw-add-cut = Add a cut-out
draw-north-head = North
draw-north = Compass bearing of "up" on the plan
draw-north-hint = From 0 to 360: 0 when up is north, 90 when up is east.
draw-area = Area of the whole slab
draw-parts = Parts
draw-parts-hint = Leave this empty when the slab is one.
draw-part = Part
draw-part-n = Part { $number }
draw-part-area = Area
draw-add-part = Add a part
draw-json = The plan as JSON
draw-as-typed = As it is typed
draw-nothing-yet = The drawing appears here as you type.
draw-not-yet = This can't be logged yet:
draw-open-walk = The walk as typed, from the ring to the dot. What lies between them is the gap.
draw-comes-to = { $area }, { $perimeter } around all edges.
draw-comes-to-area = { $area }.
draw-cut-out = { $area } are cut out.
draw-pieces = The slab lies in { $count } separate pieces. If the rooms should touch, look where they begin.
draw-unzoned = { $area } lie in no zone: nothing is judged or ordered for them. A name for the rest makes a zone of them.
draw-stranger = { $count ->
        [one] 1 entry of the diary names
       *[other] { $count } entries of the diary name
    } the zone "{ $zone }", which this plan does not have. They would speak for no zone.
draw-off = { $count ->
        [one] 1 entry of the diary lies
       *[other] { $count } entries of the diary lie
    } off this plan.
draw-suspect = Tape again: { $suspect }.
draw-wrong-name = A name has up to { $most } letters on one line.
draw-wrong-nameless = This row has no name while others have one. Name it, or fill in "Name of what has no name" below.
draw-wrong-side = Choose the side too: left or right.
draw-wrong-angle = "{ $typed }" is no angle. Write degrees, such as 45, 22.5 or 89°30'; or what was taped: "8 ft by 6 ft, 10 ft between" or "8 ft on, 3 ft across". The way between two marks is no longer than both together, and no shorter than their difference.
draw-wrong-north = "{ $typed }" is no bearing. Write degrees from 0 to 360, such as 20.
draw-wrong-limit = "{ $typed }" is no limit. Write it like 1:200, from 1:20 to 1:1000000.

# The map of the slab.
plan-layer-absorbency = How it drinks
plan-layer-finishes = Finishes
plan-layer-joints = Joints
plan-layer-score-lines = Score lines
map-ground = What every place is
map-limits = A drop that soaks in within { $quick } counts as drinking, one that still lies after { $stands } as standing; between them is slow. Common practice, no source.
map-no-proof = Between the drops the map is worked out, not seen. It releases nothing: the hold points do.
map-drop-here = Put a drop here
map-bays = What the map is based on
map-how = Each finish of each pour is mapped for itself, by ordinary kriging of the logarithm of the soaking time (Matérn 3/2, variances by restricted maximum likelihood). A construction joint is a break, a saw cut is none. A map takes six places with drops.
plan-lines = Joints and score lines
plan-with-finishes = Show the finishes
plan-key = What the shapes mean
plan-key-numbers = A number in a shape is its number in the list; a letter is a place to test next. A dot is a mark without room for its shape.
