# The pages of photographs and panels.
