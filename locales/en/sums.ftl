# Sums.
