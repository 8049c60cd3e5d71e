//! The exact area that a circle and a polygon share.

use geo::{Coord, LineString, MultiPolygon};

/// Area of the circle's part on `ground`, square meters; exact up to rounding.
///
/// Each edge makes a triangle with the center; the circle cuts it into triangles (inside) and
/// sectors (beyond), whose signed areas add up around a ring.
pub(super) fn shared_area(ground: &MultiPolygon<f64>, center: Coord<f64>, radius: f64) -> f64 {
    let ring = |line: &LineString<f64>| {
        line.lines().map(|l| edge(l.start - center, l.end - center, radius)).sum::<f64>().abs()
    };
    ground
        .iter()
        .map(|p| ring(p.exterior()) - p.interiors().iter().map(ring).sum::<f64>())
        .fold(0.0, |a, b| a + b)
        .max(0.0)
}

/// Signed area of the circle about the origin in the triangle origin, `a`, `b`.
fn edge(a: Coord<f64>, b: Coord<f64>, radius: f64) -> f64 {
    let along = b - a;
    let length2 = dot(along, along);
    if length2 == 0.0 {
        return 0.0;
    }
    // |a + t (b − a)|² = r²
    let middle = -dot(a, along) / length2;
    let nearest = a + along * middle;
    let reach2 = radius * radius - dot(nearest, nearest);
    if reach2 <= 0.0 {
        return sector(a, b, radius);
    }
    let half = (reach2 / length2).sqrt();
    let enters = (middle - half).max(0.0);
    let leaves = (middle + half).min(1.0);
    if enters >= leaves {
        return sector(a, b, radius);
    }
    let (from, to) = (a + along * enters, a + along * leaves);
    let mut area = cross(from, to) / 2.0;
    if enters > 0.0 {
        area += sector(a, from, radius);
    }
    if leaves < 1.0 {
        area += sector(to, b, radius);
    }
    area
}

fn sector(a: Coord<f64>, b: Coord<f64>, radius: f64) -> f64 {
    radius * radius * libm::atan2(cross(a, b), dot(a, b)) / 2.0
}

fn dot(a: Coord<f64>, b: Coord<f64>) -> f64 {
    a.x * b.x + a.y * b.y
}

fn cross(a: Coord<f64>, b: Coord<f64>) -> f64 {
    a.x * b.y - a.y * b.x
}
