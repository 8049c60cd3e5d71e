//! Finding room on a piece of ground.

use super::Sheet;
use super::ground::Patch;
use crate::boxes::{Box2, Taken, Xy};

/// What a box should keep clear of, near a patch.
pub(super) struct Around {
    /// Lettering and shapes.
    taken: Taken,
    /// Ground better left clear, if there is a choice.
    covered: Taken,
    /// Strokes that lettering must not lie across.
    rules: Vec<(Xy, Xy)>,
}

impl Sheet<'_> {
    /// What lies near a region.
    pub(super) fn around(&self, region: Box2) -> Around {
        let near = |(a, b): &&(Xy, Xy)| region.crossed_by(*a, *b);
        Around {
            taken: self.taken.near(region),
            covered: self.covered.near(region),
            rules: self.rules.iter().filter(near).copied().collect(),
        }
    }
}

impl Around {
    /// The same for a shape, which hides the stroke under it.
    pub(super) fn of_shape(self) -> Self {
        Self { rules: Vec::new(), ..self }
    }

    /// How much of a box lies on what is taken; one that lies across a stroke lies wholly on it.
    fn over(&self, wanted: Box2) -> f64 {
        let across = self.rules.iter().any(|(a, b)| wanted.crossed_by(*a, *b));
        self.taken.overlap(wanted) + if across { wanted.width() * wanted.height() } else { 0.0 }
    }
}

/// The center for a box of that size on a patch that lies least on what is taken, then least on what
/// is covered, then nearest to where it should be; and how much of the taken it lies on. `None` when
/// the box fits nowhere.
pub(super) fn roomiest(patch: &Patch, around: &Around, aim: Xy, (width, height): Xy) -> Option<(Xy, f64)> {
    const GRID: u32 = 20;
    // A box flush with an edge would count as crossed by it after rounding.
    const INSET: f64 = 0.25;
    let bounds = patch.bounds()?;
    let (free_x, free_y) = (bounds.width() - width - 2.0 * INSET, bounds.height() - height - 2.0 * INSET);
    if free_x < 0.0 || free_y < 0.0 {
        return None;
    }
    let share = |i: u32| f64::from(i) / f64::from(GRID);
    let grid = (0..=GRID).flat_map(|i| (0..=GRID).map(move |j| (share(i), share(j))));
    let tried = grid
        .map(|(i, j)| (bounds.left + INSET + width / 2.0 + i * free_x, bounds.top + INSET + height / 2.0 + j * free_y));
    let far = |(x, y): Xy| libm::hypot(x - aim.0, y - aim.1);
    std::iter::once(aim)
        .chain(tried)
        .filter_map(|center| {
            let wanted = Box2::around(center, width, height);
            let ease = || around.covered.overlap(wanted) + 0.5 * far(center);
            patch.holds(wanted).then(|| (center, around.over(wanted), ease()))
        })
        .min_by(|(_, over_a, a), (_, over_b, b)| over_a.total_cmp(over_b).then_with(|| a.total_cmp(b)))
        .map(|(center, over, _)| (center, over))
}

/// The centroid of a ring; of one without area the middle of its corners.
pub(super) fn middle(points: &[Xy]) -> Option<Xy> {
    let count = points.len() as f64;
    let mean = points.iter().fold((0.0, 0.0), |(x, y), p| (x + p.0 / count, y + p.1 / count));
    let first = points.first()?;
    let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
    for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
        // About the first corner, so that large coordinates lose nothing.
        let ((ax, ay), (bx, by)) = ((a.0 - first.0, a.1 - first.1), (b.0 - first.0, b.1 - first.1));
        let cross = ax * by - bx * ay;
        area += cross;
        x += (ax + bx) * cross;
        y += (ay + by) * cross;
    }
    let centroid = (first.0 + x / (3.0 * area), first.1 + y / (3.0 * area));
    let around = Box2::of(points.iter().copied())?;
    Some(if Box2::around(centroid, 0.0, 0.0).inside(around) { centroid } else { mean })
}
