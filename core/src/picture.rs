//! From a picture to metres: by a known length, or straightened by a known rectangle.
//!
//! In the picture: pixels, right and down. In the plane pictured: m, right and up.

use glam::DVec2;

/// What is wrong with a reference in a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The ends of the known length are not two points well apart.
    ScaleTooShort,
    /// The four corners do not go round a rectangle seen from its front.
    RectangleBent,
}

/// How the picture shows the plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Picture {
    /// Square on: so many metres a pixel.
    Scaled {
        /// m in a pixel.
        metres: f64,
    },
    /// In perspective: the projective map, row by row.
    Straightened {
        /// Pixels to metres.
        forth: [f64; 9],
        /// Metres to pixels.
        back: [f64; 9],
    },
}

/// The ends of a known length stand at least this far apart, as a part of the picture's longer side.
const LEAST: f64 = 0.05;

impl Picture {
    /// Square on, with a known length between two points.
    ///
    /// # Errors
    /// [`Fault::ScaleTooShort`] where the points are too close for a scale.
    pub fn scaled(ends: [DVec2; 2], length: f64, longer_side: f64) -> Result<Self, Fault> {
        let apart = ends[0].distance(ends[1]);
        if apart >= LEAST * longer_side && apart > 0.0 {
            Ok(Self::Scaled { metres: length / apart })
        } else {
            Err(Fault::ScaleTooShort)
        }
    }

    /// Straightened by the corners of a rectangle: top left, top right, bottom right, bottom left. Its
    /// bottom left corner is the origin of the plane.
    ///
    /// # Errors
    /// [`Fault::RectangleBent`] where the corners do not go round clockwise, or are too close.
    ///
    /// ```
    /// use glam::DVec2;
    /// use standfast_core::picture::Picture;
    /// let corners = [(100.0, 50.0), (500.0, 80.0), (480.0, 400.0), (120.0, 420.0)].map(|(x, y)| DVec2::new(x, y));
    /// let picture = Picture::straightened(corners, 2.0, 1.5, 640.0).expect("a rectangle");
    /// assert!((picture.to_plane(corners[1]) - DVec2::new(2.0, 1.5)).length() < 1e-12);
    /// ```
    pub fn straightened(corners: [DVec2; 4], width: f64, height: f64, longer_side: f64) -> Result<Self, Fault> {
        let bent = |k: usize| {
            let (a, b, c) = (corners[k], corners[(k + 1) % 4], corners[(k + 2) % 4]);
            // Down is positive in the picture, so clockwise turns are positive.
            let least = LEAST * longer_side;
            (b - a).perp_dot(c - b) < 0.25 * least * least || a.distance(b) < least
        };
        if (0..4).any(bent) {
            return Err(Fault::RectangleBent);
        }
        let back = from_unit_square(corners);
        let size = [DVec2::new(0.0, height), DVec2::new(width, height), DVec2::new(width, 0.0), DVec2::ZERO];
        let unit = inverse(&back).ok_or(Fault::RectangleBent)?;
        let plane = from_unit_square(size);
        let forth = times(&plane, &unit);
        let back = inverse(&forth).ok_or(Fault::RectangleBent)?;
        Ok(Self::Straightened { forth, back })
    }

    /// A point of the picture in the plane.
    pub fn to_plane(&self, pixel: DVec2) -> DVec2 {
        match self {
            Self::Scaled { metres } => DVec2::new(pixel.x * metres, -pixel.y * metres),
            Self::Straightened { forth, .. } => map(forth, pixel),
        }
    }

    /// A point of the plane in the picture.
    pub fn to_picture(&self, metres: DVec2) -> DVec2 {
        match self {
            Self::Scaled { metres: m } => DVec2::new(metres.x / m, -metres.y / m),
            Self::Straightened { back, .. } => map(back, metres),
        }
    }

    /// Whether all these points of the picture lie on the near side of the plane's horizon.
    pub fn sees(&self, pixels: &[DVec2]) -> bool {
        match self {
            Self::Scaled { .. } => true,
            Self::Straightened { forth: [.., g, h, i], back: _ } => {
                // The weight has one sign all over the rectangle itself.
                pixels.iter().all(|p| (g * p.x + h * p.y + i) > 1e-9)
            }
        }
    }
}

fn map(m: &[f64; 9], p: DVec2) -> DVec2 {
    let w = m[6] * p.x + m[7] * p.y + m[8];
    // On the horizon itself there is no such point: far away stands for it.
    let w = if w.abs() < 1e-12 { 1e-12 } else { w };
    DVec2::new(m[0] * p.x + m[1] * p.y + m[2], m[3] * p.x + m[4] * p.y + m[5]) / w
}

/// The projective map that takes (0,0), (1,0), (1,1), (0,1) to four points.
///
/// Source: Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), section 2.2.3, from memory;
/// held against a linear system solved by a library.
fn from_unit_square([a, b, c, d]: [DVec2; 4]) -> [f64; 9] {
    let s = a - b + c - d;
    let (p, q) = (b - c, d - c);
    let det = p.perp_dot(q);
    let g = s.perp_dot(q) / det;
    let h = p.perp_dot(s) / det;
    [b.x - a.x + g * b.x, d.x - a.x + h * d.x, a.x, b.y - a.y + g * b.y, d.y - a.y + h * d.y, a.y, g, h, 1.0]
}

fn times(a: &[f64; 9], b: &[f64; 9]) -> [f64; 9] {
    std::array::from_fn(|k| (0..3).map(|j| a[k / 3 * 3 + j] * b[j * 3 + k % 3]).sum())
}

/// The inverse, so scaled that the bottom row is positive where the map is used.
fn inverse(m: &[f64; 9]) -> Option<[f64; 9]> {
    let [a, b, c, d, e, f, g, h, i] = *m;
    let adjoint = [
        e * i - f * h,
        c * h - b * i,
        b * f - c * e,
        f * g - d * i,
        a * i - c * g,
        c * d - a * f,
        d * h - e * g,
        b * g - a * h,
        a * e - b * d,
    ];
    let det = a * adjoint[0] + b * adjoint[3] + c * adjoint[6];
    (det.is_finite() && det != 0.0).then(|| adjoint.map(|x| x / det))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(list: [(f64, f64); 4]) -> [DVec2; 4] {
        list.map(|(x, y)| DVec2::new(x, y))
    }

    #[test]
    fn up_in_the_plane_is_up_in_the_picture() {
        let picture = Picture::scaled([DVec2::ZERO, DVec2::new(0.0, 200.0)], 1.0, 800.0).expect("a scale");
        assert_eq!(picture.to_plane(DVec2::new(100.0, 400.0)), DVec2::new(0.5, -2.0));
        assert_eq!(picture.to_picture(DVec2::new(0.5, -2.0)), DVec2::new(100.0, 400.0));
    }

    /// A pinhole camera that looks at a wall askew: what it shows is straightened again.
    #[test]
    fn a_picture_taken_askew_is_straightened() {
        let (s, c) = libm::sincos(0.35);
        let shown = |x: f64, y: f64| {
            let (x, z) = (x * c, 4.0 + x * s);
            DVec2::new(800.0 + 1200.0 * x / z, 600.0 - 1200.0 * y / z)
        };
        let corners = [shown(-0.5, 0.9), shown(0.7, 0.9), shown(0.7, 0.0), shown(-0.5, 0.0)];
        let picture = Picture::straightened(corners, 1.2, 0.9, 1600.0).expect("a rectangle");
        for (x, y) in [(0.0, 0.0), (-1.2, 1.4), (1.5, 0.2)] {
            let there = picture.to_plane(shown(x, y));
            assert!((there - DVec2::new(x + 0.5, y)).length() < 1e-9, "{there}");
            assert!((picture.to_picture(there) - shown(x, y)).length() < 1e-6);
        }
        assert!(picture.sees(&corners));
    }

    #[test]
    fn bad_references_are_named() {
        let close = [DVec2::ZERO, DVec2::new(3.0, 0.0)];
        assert_eq!(Picture::scaled(close, 1.0, 800.0), Err(Fault::ScaleTooShort));
        for corners in [
            [(0.0, 0.0), (400.0, 0.0), (0.0, 300.0), (400.0, 300.0)],
            [(0.0, 300.0), (400.0, 300.0), (400.0, 0.0), (0.0, 0.0)],
            [(0.0, 0.0), (400.0, 0.0), (200.0, 100.0), (0.0, 300.0)],
            [(0.0, 0.0), (400.0, 0.0), (400.0, 2.0), (0.0, 2.0)],
        ] {
            assert_eq!(
                Picture::straightened(points(corners), 1.0, 1.0, 800.0),
                Err(Fault::RectangleBent),
                "{corners:?}"
            );
        }
    }
}
