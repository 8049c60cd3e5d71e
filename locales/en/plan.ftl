# What a walk along the walls came to, and what can be wrong with a plan.

walk-exact = The walk closes exactly after { $perimeter }.
walk-closed = The walk ends { $gap } from where it began, { $direction }. That is { $precision } of the { $perimeter } walked, and the limit is { $limit }. The gap was spread over all walls by their lengths (compass rule).
walk-turns = The turns were { $angle }° off a full turn; it was taken off all corners in equal parts.
walk-toward = toward plan { $point } ({ $angle }°)
walk-point-0 = north
walk-point-1 = north-east
walk-point-2 = east
walk-point-3 = south-east
walk-point-4 = south
walk-point-5 = south-west
walk-point-6 = west
walk-point-7 = north-west
walk-turn-right = { $angle }° to the right
walk-turn-left = { $angle }° to the left
walk-turn-straight = straight on
walk-suspect-wall = wall { $leg } ("{ $typed }")
walk-suspect-turn = the turn before wall { $leg } ("{ $typed }")
walk-suspect-inside = the turn before wall { $leg } ("{ $typed }" is the angle inside the corner?)
walk-suspect-fits = { $what }, where { $better } would fit
walk-suspect-leaves = { $what }, where { $better } would fit but for { $gap }
walk-suspects = Most likely wrong: { $suspects }.
walk-suspects-none = No single wall explains it.

plan-wrong-unreadable = This can't be read: { $problem }
plan-wrong-zero-length = "{ $typed }" has no length. Write a length above zero, such as { $example }.
plan-wrong-same-corner = Two corners next to each other lie in the same place. Write each corner once.
plan-wrong-too-large = "{ $typed }" is larger than any slab. Lengths go up to 10 km, areas up to 100 km².
plan-wrong-few-walls = { $count ->
        [0] There is no wall yet.
        [one] There is 1 wall so far.
       *[other] There are { $count } walls so far.
    } A walk needs { $least } or more.
plan-wrong-few-corners = A shape needs { $least } corners or more; there are { $count }.
plan-wrong-few-rectangles = There is nothing to draw yet. Write at least one rectangle.
plan-wrong-too-many = { $count } are too many. Up to { $most } are taken.
plan-wrong-missing-turn = Wall { $leg } has no turn before it. Choose left or right; the angle is 90° unless you write another.
plan-wrong-crossing = Wall { $first } and wall { $second } cross or touch, { $x } across and { $y } up. Give the walls in order around the slab.
plan-wrong-no-area = Nothing is left of this shape. It needs an area above zero.
plan-wrong-no-area-typed = "{ $typed }" is no area. Write an area above zero, such as { $example }.
plan-wrong-walk-open = The walk ends { $gap } from where it began, { $direction }. That is { $precision } of the { $perimeter } walked; the limit is { $limit }, a gap of { $allowed }. That is more than a tape gets wrong, so nothing was spread over the walls.
plan-wrong-turns-open = All turns together make { $sum }. Around a slab they make 360° to one side, within { $limit }°.
plan-wrong-mixed = An area alone and a drawn shape don't go together. Draw every part, or give every part as an area.
plan-wrong-cut-out-outside = { $area } of this cut-out lies outside the slab. A cut-out lies inside it.
plan-wrong-zone-outside = { $area } of the zone "{ $name }" lies outside the slab. A zone lies inside it.
plan-wrong-zones-overlap = The zones "{ $name }" and "{ $other }" share { $area }. Zones lie side by side.
plan-wrong-areas-too-large = Together these are { $sum }, more than the { $available } there are.
plan-wrong-duplicate-zone = There is a zone "{ $name }" already. Write each name once; capitals don't count.
plan-wrong-blank-name = The name is empty. Write a name, such as A or hall.
plan-wrong-two-rests = The zones "{ $other }" and "{ $name }" both have no shape. Only one zone can be the rest of the slab.
plan-wrong-empty-zone = Nothing of the slab is left for the zone "{ $name }".
plan-wrong-lines-without-shape = Only the area is known, so no line has a place. Draw the slab first.
plan-wrong-line-off-slab = Nothing of this line lies on the slab or in its zone. A line has a part on it, and does not run along its edge.
plan-wrong-too-many-lines = "{ $typed }" makes { $count } lines; there may be { $most }.
plan-wrong-border-too-wide = A border "{ $typed }" in from the edge leaves nothing inside. Make it narrower.
plan-wrong-unknown-zone = There is no zone "{ $name }". There are: { $known }.
