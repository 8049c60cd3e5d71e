# What stands on and around every page: short names for the ledger of hold points, the bar at the foot,
# how the page is shown. Short names stay on one line of half a phone.

short-age = Age
short-membrane = Membrane
short-absorbency = Absorbency
short-reaction = Reaction
short-contamination = Contamination
short-moisture = Moisture
short-surface-ph = Surface pH
short-repairs = Cracks
short-panel = Panel
short-site = Site setup
short-air = Air

bar-photograph = Photo
photograph-take = Take a photo
photograph-choose = From the gallery
to-device = Light or dark like the device
