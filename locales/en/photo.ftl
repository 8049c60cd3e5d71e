# Why a photograph of the slab says even, patchy, or can't tell. Numbers come formatted.
# The limits behind these are provisional: they come from synthetic pictures.

photo-verdict-even = One color, as far as this photograph shows. Even color is no proof of dryness.
photo-verdict-patchy = More than one color.
photo-verdict-cant-tell = This photograph does not settle it.
photo-second = Take a second photograph of the same place from another side or at another hour: what stays is in the slab.
photo-provisional = The limits are provisional: they were set on made pictures, not on slabs.

photo-why-too_small = The photograph has { $width } by { $height } pixels; the shorter side needs { $least }.
photo-why-no_color = The photograph is black and white. Send it in color.
photo-why-clipped = { $share } of the photograph is too bright or too dark to measure; at most { $most } may be. Take it again with less or more exposure.
photo-why-dark = The photograph is too dark. Take it again with more light.
photo-why-little_slab = Only { $share } of the photograph is slab that can be measured; { $least } is needed. Move closer, and keep other things out.
photo-why-uneven_light = The light falls off too much across the photograph. Take it from higher up, or in even shade.
photo-why-hard_edge = { $count ->
        [one] There is a straight hard edge
       *[other] There are { $count } straight hard edges
    } in the photograph, as a shadow throws.
photo-why-joints = { $count ->
        [one] A straight joint was left out.
       *[other] { $count } straight joints were left out.
    }
photo-why-could_be_shade = There is a pattern, but its color is that of shade: it is no warmer where it is dark.
photo-why-could_be_glare = The bright part fades out from its middle, as glare does.
photo-why-could_be_colored_light = The pattern is one of color more than of lightness, as two lamps of different color make it.
photo-why-things = { $share } of the photograph is something that is not slab. Clear it away and take the photograph again.
photo-why-small_marks = { $count ->
        [one] A small mark stands out
       *[other] { $count } small marks stand out
    }, { $share } of the slab, as wet footprints or stains do. Look at them on site.
photo-why-mottle = The color spreads as natural mottle does, and not in patches.
photo-why-faint_pattern = There are two shades of color, though they lie close together.
photo-why-large_pattern = A wide, weak pattern is left that the light does not explain.
photo-why-blurred = The photograph is blurred. Hold still and take it again.
photo-why-compressed = The photograph is compressed too much. Send the file as the camera wrote it.
photo-why-blank = Parts of the photograph hold no detail at all ({ $share }). Send the file as the camera wrote it.
photo-why-smooth_damp = The light itself is warmer where it is darker, as on a slab that dries slowly from one side.
photo-why-between = The colors differ by { $score_de00 }: more than on an even slab, less than on a patchy one.
photo-why-no_card = There is no card in the photograph: only differences mean anything.
photo-why-bad_card = The card could not be read: it is too bright, not uniform, too small, or not in the photograph. Only differences mean anything.
photo-why-colored_light = The light is strongly colored. Take the photograph in daylight.
photo-why-not_the_same = The two photographs do not say the same.
photo-why-scores_apart = The two photographs differ too much: { $first } against { $second }.
photo-why-not_laid_over = The photographs were not laid over each other: only their answers were compared.

photo-score = Score { $score }: how far the fields lie from one color, in CIEDE2000 units.
photo-found-gray-card = A gray card was found and used.
photo-found-white-paper = A sheet of white paper was found and used; it is taken to throw back 87 % of the light.
photo-series-title = How far from one color, by day
photo-trend-too-few = Too few photographs that can be measured to say where it is heading; three over more than a day are needed.
photo-trend-more-even = The slab is getting more even.
photo-trend-no-change = No change that counts.
photo-trend-less-even = The slab is getting less even.
photo-color = L { $l }, a { $a }, b { $b } ({ $hex }); mottling { $mottling } in CIEDE2000 units.
