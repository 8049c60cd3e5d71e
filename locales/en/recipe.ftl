# Recipes of stain, and what a model of the panels can and can't say.

recipe-line = { $mix }; { $water }; { $coats }
recipe-parts = { $count ->
        [one] 1 part { $stain }
       *[other] { $count } parts { $stain }
    }
recipe-share = { $share } { $stain }
recipe-no-water = no water
recipe-water = { $count ->
        [one] 1 part of water to 1 of stain
       *[other] { $n } parts of water to 1 of stain
    }
recipe-coats = { $count ->
        [one] 1 coat
       *[other] { $count } coats
    }

recipe-no-radius-too-few-panels = How far off it may be can't be told from { $panels ->
        [one] 1 stained panel
       *[other] { $panels } stained panels
    } of { $stains ->
        [one] 1 stain
       *[other] { $stains } stains
    }: it takes { $needed }, and a bare one beside.
recipe-no-radius-no-mix = How far off it may be can't be told: none of the { $panels } panels mixes two of the { $stains } stains. One mix is needed.
recipe-no-radius-stain-in-one-panel = How far off it may be can't be told: { $stain } is in one panel only. It takes two.
recipe-no-radius-no-fit-without-panel = How far off it may be can't be told: without panel { $panel } nothing fits the others. Check its color and recipe.

recipe-no-model-bare = No panel of this concrete was measured bare. Photograph one without stain, with a gray card beside it.
recipe-no-model-panels = No stained panel of this concrete was measured.
recipe-no-model-fit = No strengths of the stains fit these panels. Check that no color or recipe is mistyped.
recipe-no-model-light = Panel { $panel } was measured as black or as white: no concrete is. Measure it again.

recipe-left-out-not-photographed = not photographed in this state
recipe-left-out-not-measured = its color was not measured: mark the gray card in its photograph
recipe-left-out-stained-since = stained again after its photograph
recipe-left-out-recipe-unknown = how it was stained is not noted
recipe-left-out-recipe-wrong = what is noted can't be a recipe
recipe-left-out-too-many-stains = has a further stain: a model takes three apart

recipe-bare-same-state = The bare concrete was seen in the same state.
recipe-bare-without-sealer = The bare panel was seen without sealer. Sealer darkens: a bare panel under the same sealer would tell more.

recipe-edge-more-coats = It stands at the most coats that were tried. A panel with one more would tell whether that is better.
recipe-edge-fewer-coats = It stands at the fewest coats that were tried. A panel with one less would tell whether that is better.
recipe-edge-more-water = It stands at the most water that was tried. A panel with more would tell whether that is better.
recipe-edge-less-water = It stands at the least water that was tried. A panel with less would tell whether that is better.
recipe-edge-shares = It stands where the mixes that were tried end. A panel beyond would tell whether that is better.

recipe-title = Recipes from the panels of { $name }
recipe-set = { $state ->
        [sealed] Sealed panels
       *[other] Stained panels, not sealed
    } of { $concrete }
recipe-concrete = concrete "{ $mix }", { $finish }
recipe-mix-unknown = not noted
recipe-finish-unknown = finish not noted
recipe-panel = Panel { $panel }: { $recipe }; { $color }
recipe-bare-panel = Panel { $panel }: bare; { $color }
recipe-panel-out = Panel { $panel } is not used: { $why }.
recipe-color = L { $l }, a { $a }, b { $b } ({ $hex })
recipe-wish = Target color: { $color }
recipe-best = Nearest recipe: { $recipe }
recipe-gives = It should give { $color }.
recipe-radius = 9 of 10 panels should come out within { $radius } of that (CIEDE2000; about 1 is the least that a trained eye tells side by side).
recipe-expected = To be expected: { $difference } from the target color.
recipe-off = { $difference } from the target color, if it comes out as worked out.
recipe-within = The target color lies within what this recipe may give.
recipe-beyond = No recipe that was tried comes near enough: the target color lies outside what this one may give.
recipe-runner-up = Next: { $recipe }; to be expected { $difference } from the target color.
recipe-nearest = The nearest real panel is { $panel }, { $difference } from the target color.
recipe-tried = Panel { $panel } is this very recipe: look at it.
recipe-regression = Worked out from these panels only: it holds for this concrete, this finish, these stains, and the coats and dilutions that were tried. Make a panel of it before you promise it.
recipe-no-panels = There is no measured panel yet. Make panels, stain them, photograph each with a gray card beside it, stained and sealed, and one bare.
recipe-wish-how = Give a target color: --wish "#7a563a", --wish "42, 9, 15" (L, a, b), or --wish P1.
preview-note = Illustration of color and mottling, not of the pattern: veins, trowel marks and puddle rims can't be shown. Panel { $panel }, { $state }.
preview-note-recipe = Illustration of color and mottling, not of the pattern: veins, trowel marks and puddle rims can't be shown. The color is worked out, not seen; the mottling is that of panel { $panel }, { $state }.
preview-scale-assumed = The size of the mottling is guessed: mark the whole panel in its photograph, and note its side.
preview-shown = { $share } of the panel's variation is coarse enough to be seen at this size.
preview-state-stained = stained, not sealed
preview-state-sealed = sealed
preview-state-bare = bare

map-title = What every place of { $name } is
