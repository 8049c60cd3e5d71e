# Joints and score lines, and plans out of drawing files.

lines-carried = { $joints ->
        [0] The plan that stands has { $patterns ->
            [one] 1 pattern of score lines
           *[other] { $patterns } patterns of score lines
        }; the new plan keeps it.
        [one] The plan that stands has 1 joint and { $patterns ->
            [one] 1 pattern
           *[other] { $patterns } patterns
        } of score lines; the new plan keeps them.
       *[other] The plan that stands has { $joints } joints and { $patterns ->
            [one] 1 pattern
           *[other] { $patterns } patterns
        } of score lines; the new plan keeps them.
    }
lines-leave-out = Leave out joints and score lines
lines-joint-unfit = { $number ->
        [0] The joints of the old plan
       *[other] Joint { $number } of the old plan
    }: { $said } If it no longer fits, check "Leave out joints and score lines".
lines-pattern-unfit = { $number ->
        [0] The score lines of the old plan
       *[other] Pattern { $number } of the old plan's score lines
    }: { $said } If it no longer fits, check "Leave out joints and score lines".

lines-title = Joints and score lines
lines-why = Cuts are priced by length, a wet edge can stop at a line, and a slab with too few joints cracks where it likes.
lines-not-drawn = Lines need a plan that is drawn. Draw the slab first, by rooms or by a walk.
lines-joints = Joints
lines-joints-hint = Each joint is a straight line from one point to another, measured across and up from the plan's corner. Empty means 0. A line may run past the edge: what lies on the slab counts.
lines-joint = Joint
lines-add-joint = Add a joint
lines-from-x = From, across
lines-from-y = From, up
lines-to-x = To, across
lines-to-y = To, up
lines-kind = How it was made
lines-kind-unknown = not noted
lines-kind-saw-cut = saw cut
lines-kind-construction = construction joint, between two pours
lines-kind-isolation = isolation joint, around what must move free
lines-via = Points between, as the diary keeps them
lines-thickness = Thickness of the slab
lines-thickness-hint = The spacing of joints follows from it.
lines-thickness-known = The diary says { $thickness }; that counts while this is empty.
lines-propose = Propose saw cuts
lines-propose-what = Fills the rows below in place of the saw cuts and of joints not noted how made; construction and isolation joints stay, and the proposal takes no account of them. Nothing is logged until you press "Log the lines".
lines-wish = Area a crew stains with a wet edge
lines-wish-hint = Neighboring sections are joined until each is about that large.
lines-patterns = Score lines
lines-pattern = Pattern
lines-add-pattern = Add a pattern
lines-grids = Grids
lines-grids-hint = Two families of lines at right angles. One spacing alone makes squares. A crossing left empty is the lower left corner of the slab or zone.
lines-grid = Grid
lines-spacing-x = From line to line, across
lines-spacing-y = From line to line, up
lines-turn = Turned
lines-turn-none = not turned
lines-origin-x = A crossing, across
lines-origin-y = A crossing, up
lines-diagonals = Diagonals
lines-diagonals-hint = Squares standing on a corner; the spacing is the side of a square.
lines-diagonal = Diagonal
lines-spacing = From line to line
lines-borders = Borders
lines-borders-hint = A line along every edge, that far inside it.
lines-border = Border
lines-inset = In from the edge
lines-free = Free lines
lines-free-hint = Straight lines from one point to another.
lines-free-one = Line
lines-sliver = A cut tile is a sliver below
lines-sliver-hint = As a share of a whole tile's shorter side. Common practice, no source: 50 %.
lines-more-rows = More rows
lines-look = See what it comes to
lines-write = Log the lines
lines-check = The joints against the rule of thumb
lines-no-rule = Write the thickness of the slab to have the joints checked.
lines-no-findings = Nothing speaks against these joints by the rule. That is not to say that nothing cracks.
lines-governs = Rule of thumb, not an engineer's design: the drawings and the engineer of record govern.
lines-length = Length
lines-tiles-head = Tiles
lines-joints-length = { $count ->
        [0] No joints yet.
        [one] 1 joint, { $length }.
       *[other] { $count } joints, { $length } in all.
    }
lines-sections = { $count ->
        [one] The slab is one section of { $large }.
       *[other] { $count } sections between the joints, from { $small } to { $large }.
    }
lines-merged = { $count ->
        [one] For { $wish } at a time: one section of { $large }.
       *[other] For { $wish } at a time: { $count } sections, from { $small } to { $large }.
    }
lines-merged-larger = The largest is more than that: a joint or a score line through it would give the wet edge a place to stop.
lines-rule = For a slab { $thickness } thick the rule has joints { $low } to { $high } apart.
lines-finding-long = The section around { $x } across and { $y } up is { $side } long; the rule has it no longer than { $limit }.
lines-finding-aspect = The section around { $x } across and { $y } up is { $aspect } times as long as wide; the rule has it up to { $limit } times.
lines-finding-corner = No joint starts at the corner { $x } across and { $y } up, which points into the slab: cracks start at such corners.
lines-finding-column = No joint meets the column at { $x } across and { $y } up.
lines-finding-tapering = The section around { $x } across and { $y } up runs out in a corner of { $angle }, sharper than { $limit }: such tips break off.
lines-finding-short = A joint ends inside a section at { $x } across and { $y } up, not at an edge or another joint.
lines-more-findings = { $count ->
        [one] And 1 more.
       *[other] And { $count } more.
    }
lines-all-patterns = All patterns together: { $length }. What two share counts once.
lines-tiles = { $whole } whole, { $cut } cut; { $slivers ->
        [0] no slivers
        [one] 1 sliver
       *[other] { $slivers } slivers
    }
lines-parts = { $count ->
        [one] 1 part
       *[other] { $count } parts
    }
lines-wrong-sliver = "{ $typed }" is no share. Write one from 0 to 100 %, such as 50 %.
lines-wrong-via = "{ $typed }" are no points. Leave this empty, or write them as the diary keeps them, such as [["10 ft","5 ft"]].
lines-wrong-kind = "{ $typed }" is no kind of joint. Choose one of the list.
lines-wrong-no-thickness = The thickness of the slab is needed for a proposal, such as 5 in. The diary has none.
lines-wrong-thickness = A thickness is above zero, such as 5 in or 125 mm.
lines-wrong-wish = An area above { $zero } is needed.
lines-wrong-crossings = The lines meet in more than { $most } places. Write fewer lines, or a wider spacing.
lines-wrong-sections = There are { $count } sections to join; up to { $most } can be. Write fewer joints.
lines-wrong-cuts = That thickness would take { $count } cuts one way; up to { $most } are proposed. Look at the unit of the thickness.
lines-wrong-fine = Some lines run within a hair of each other, so the parts between them can't be told. Move them apart, or onto each other.

dxf-title = From a drawing file
dxf-what = An architect's drawing as a DXF file holds the line around the slab. Choose which layer is what, look at the plan, and log it only then.
dxf-file = Drawing file
dxf-file-hint = DXF saved as text (ASCII), up to 32 MB. Drawings in other formats must be saved as DXF first.
dxf-look = Look at the file
dxf-look-again = Look again
dxf-other = Another file
dxf-unit = What one unit of the drawing is
dxf-unit-hint = With what the slab would measure in each.
dxf-unit-told = as the file says: { $unit }
dxf-unit-choose = choose: the file does not say
dxf-unit-size = { $unit }: { $x } by { $y }
dxf-unit-none = not said
dxf-unit-mm = millimeters
dxf-unit-cm = centimeters
dxf-unit-dm = decimeters
dxf-unit-m = meters
dxf-unit-in = inches
dxf-unit-ft = feet
dxf-unit-yd = yards
dxf-unit-survey = US survey feet
dxf-own-units = { $size } units
dxf-own-square-units = { $size } square units
dxf-layers = Layers
dxf-layers-hint = One layer goes around the slab; closed lines inside it on the same layer are cut-outs. Zones take the name of a text inside them, else of their layer.
dxf-more-layers = { $count ->
        [one] 1 more layer is not shown. Save a drawing of the slab alone.
       *[other] { $count } more layers are not shown. Save a drawing of the slab alone.
    }
dxf-role-nothing = not used
dxf-role-outline = line around the slab
dxf-role-cut-outs = cut-outs
dxf-role-zones = zones
dxf-role-joints = joints
dxf-as-chosen = The plan as chosen
dxf-holds-closed = { $count ->
        [one] 1 closed line: { $areas }.
       *[other] { $count } closed lines: { $areas }.
    }
dxf-holds-open = { $count ->
        [one] 1 open line;
       *[other] { $count } open lines;
    } the narrowest gap is { $gap }, from { $from } to { $to }.
dxf-holds-open-far = { $count ->
        [one] 1 open line.
       *[other] { $count } open lines.
    }
dxf-holds-branches = { $count ->
        [one] Three or more lines meet at { $at }.
       *[other] Three or more lines meet at { $count } places, one at { $at }.
    }
dxf-holds-texts = { $count ->
        [one] 1 text.
       *[other] { $count } texts.
    }
dxf-holds-ignored = Left out: { $kinds }.
dxf-joints = { $count ->
        [one] 1 joint.
       *[other] { $count } joints.
    }
dxf-left-out = { $count ->
        [one] 1 line of the joint layers lies off the slab or along its edge and is left out.
       *[other] { $count } lines of the joint layers lie off the slab or along its edge and are left out.
    }
dxf-drops-lines = The plan that stands has joints or score lines. They are not carried over: this drawing has a corner of its own to measure from.
dxf-wrong-no-file = Choose a drawing file first.
dxf-wrong-gone = The file is no longer here. Choose it again.
dxf-wrong-bytes = The file is larger than 32 MB. Save a drawing of the slab alone.
dxf-wrong-much = The drawing holds too much: more than { $most } of one kind. Save a drawing of the slab alone.
dxf-wrong-loops = The layer holds more than { $most } closed lines. Put only what belongs to the plan on it.
dxf-wrong-corners = The lines of the layer have more than { $most } corners. Draw them with fewer.
dxf-wrong-not-text = This is no DXF file as text: it is empty or binary. Save the drawing as DXF, as text (ASCII).
dxf-wrong-malformed = Line { $line } of the file has "{ $found }" where { $expected } is due. Save the drawing as DXF again.
dxf-expected-section = the start of a section or the end of the file
dxf-expected-code = a group code (a whole number)
dxf-expected-entity = an entity (code 0)
dxf-expected-blocks = a block that begins and ends
dxf-expected-number = a number
dxf-expected-small = a number up to 10^12
dxf-expected-whole = a whole number from -32768 to 32767
dxf-wrong-cut-short = The file ends too soon: it was cut short. Send the whole file, to its EOF mark.
dxf-wrong-nested = The block "{ $block }" holds itself, or blocks lie more than { $depth } deep in each other. Explode it and save again.
dxf-wrong-unit = The file does not say in what unit it is drawn. Choose the unit.
dxf-wrong-layer = There is no layer "{ $layer }" in the drawing.
dxf-wrong-no-outline = No layer is chosen as the line around the slab. Choose one.
dxf-wrong-two-outlines = More than one layer is chosen as the line around the slab. Choose one.
dxf-wrong-nothing-closed = The layer "{ $layer }" has no closed line. Close its lines in the drawing, or choose another layer.
dxf-wrong-open = A line of the layer "{ $layer }" is open by { $gap }, from { $from } to { $to } in the drawing. Make the ends meet.
dxf-wrong-branching = On the layer "{ $layer }" { $count } lines meet at { $at }, so which one goes around is not told. Two may meet at a corner.
dxf-wrong-apart = The layer "{ $layer }" has { $count } closed lines that lie apart, one at { $at }. One may go around the slab, the others inside it.
dxf-wrong-outside = A closed line of the layer "{ $layer }" reaches outside the slab at { $at }. Lines of this layer lie inside the line around.
dxf-wrong-wide = In that unit the slab would be { $across } across. Choose another unit.
