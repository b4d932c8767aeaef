//! How the picture lies on the sheet: zoomed and moved, there and back.

/// A point of the picture, pixels: right, down.
pub type Pixel = (f64, f64);
/// A spot of the sheet: right, down.
pub type Spot = (f64, f64);

/// The closest look, sheet units in a pixel.
const CLOSEST: f64 = 12.0;
/// The least sheet or picture.
const LEAST: f64 = 1.0;

/// What a person looks at: how many times larger than the whole, and which part of the picture in
/// the middle, each from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// 1 for the whole.
    pub zoom: f64,
    /// The middle, as parts of the picture's width and height.
    pub middle: (f64, f64),
}

impl Default for Look {
    fn default() -> Self {
        Self { zoom: 1.0, middle: (0.5, 0.5) }
    }
}

/// The picture as it lies on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glass {
    /// The sheet's size.
    pub sheet: (f64, f64),
    /// The picture's size, pixels.
    pub picture: (f64, f64),
    /// Sheet units in a pixel.
    pub scale: f64,
    /// Where the picture's top left corner lies.
    corner: Spot,
    zoom: f64,
}

/// Where the picture begins along one direction: in the middle where it is smaller than the sheet,
/// else so that it covers it.
fn settled(corner: f64, picture: f64, sheet: f64) -> f64 {
    if picture <= sheet { 0.5 * (sheet - picture) } else { corner.clamp(sheet - picture, 0.0) }
}

impl Glass {
    /// Lays the picture on the sheet.
    pub fn of(sheet: (f64, f64), picture: (f64, f64), look: Look) -> Self {
        let sheet = (sheet.0.max(LEAST), sheet.1.max(LEAST));
        let picture = (picture.0.max(LEAST), picture.1.max(LEAST));
        let whole = (sheet.0 / picture.0).min(sheet.1 / picture.1);
        let zoom = look.zoom.clamp(1.0, (CLOSEST / whole).max(1.0));
        let scale = whole * zoom;
        let corner = |sheet: f64, picture: f64, middle: f64| {
            settled(0.5 * sheet - middle * picture * scale, picture * scale, sheet)
        };
        let corner = (corner(sheet.0, picture.0, look.middle.0), corner(sheet.1, picture.1, look.middle.1));
        Self { sheet, picture, scale, corner, zoom }
    }

    /// Where a pixel lies on the sheet.
    pub fn spot(&self, (x, y): Pixel) -> Spot {
        (self.corner.0 + self.scale * x, self.corner.1 + self.scale * y)
    }

    /// Which pixel lies there.
    pub fn pixel(&self, (x, y): Spot) -> Pixel {
        ((x - self.corner.0) / self.scale, (y - self.corner.1) / self.scale)
    }

    /// What is looked at.
    pub fn look(&self) -> Look {
        let (x, y) = self.pixel((0.5 * self.sheet.0, 0.5 * self.sheet.1));
        Look { zoom: self.zoom, middle: (x / self.picture.0, y / self.picture.1) }
    }

    /// A look by `by` times closer, a spot staying where it is.
    pub fn closer(&self, by: f64, about: Spot) -> Look {
        self.pinched((about, about), by)
    }

    /// A look with the picture moved over the sheet.
    pub fn moved(&self, by: Spot) -> Look {
        self.pinched(((0.0, 0.0), by), 1.0)
    }

    /// A look by `by` times closer, with what was at one spot brought to another.
    pub fn pinched(&self, (from, to): (Spot, Spot), by: f64) -> Look {
        let kept = self.pixel(from);
        let zoom = Self::of(self.sheet, self.picture, Look { zoom: self.zoom * by, ..Look::default() });
        let scale = zoom.scale;
        let middle = |kept: f64, to: f64, sheet: f64, picture: f64| (kept + (0.5 * sheet - to) / scale) / picture;
        let middle =
            (middle(kept.0, to.0, self.sheet.0, self.picture.0), middle(kept.1, to.1, self.sheet.1, self.picture.1));
        // What lies beyond the edges is not kept as owed.
        Self::of(self.sheet, self.picture, Look { zoom: zoom.zoom, middle }).look()
    }

    /// Whether all of the picture is in sight.
    pub fn is_whole(&self) -> bool {
        self.zoom <= 1.0
    }

    /// The nearest pixel that is in the picture.
    pub fn within(&self, (x, y): Pixel) -> Pixel {
        (x.clamp(0.0, self.picture.0), y.clamp(0.0, self.picture.1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: (f64, f64) = (540.0, 480.0);
    const PICTURE: (f64, f64) = (1600.0, 1200.0);

    fn near(a: (f64, f64), b: (f64, f64)) -> bool {
        (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9
    }

    #[test]
    fn there_and_back_however_close() {
        for zoom in [0.1, 1.0, 2.5, 1e9] {
            let glass = Glass::of(SHEET, PICTURE, Look { zoom, middle: (0.3, 0.8) });
            for p in [(0.0, 0.0), (1600.0, 1200.0), (12.25, 1100.5)] {
                assert!(near(glass.pixel(glass.spot(p)), p), "{zoom} {p:?}");
            }
            assert!(glass.scale <= CLOSEST);
        }
    }

    #[test]
    fn the_whole_lies_in_the_middle_and_nothing_beside_it_shows_when_closer() {
        let whole = Glass::of(SHEET, PICTURE, Look::default());
        assert!(whole.is_whole() && near(whole.spot((800.0, 600.0)), (270.0, 240.0)));
        assert!(near(whole.spot((0.0, 0.0)), (0.0, 37.5)));
        for middle in [(0.0, 0.0), (1.0, 1.0), (0.5, -9.0)] {
            let glass = Glass::of(SHEET, PICTURE, Look { zoom: 3.0, middle });
            let (a, b) = (glass.spot((0.0, 0.0)), glass.spot(PICTURE));
            assert!(a.0 <= 1e-9 && a.1 <= 1e-9 && b.0 >= SHEET.0 - 1e-9 && b.1 >= SHEET.1 - 1e-9, "{middle:?}");
        }
    }

    #[test]
    fn what_is_under_the_fingers_stays_under_them() {
        let glass = Glass::of(SHEET, PICTURE, Look { zoom: 2.0, middle: (0.5, 0.5) });
        let pixel = glass.pixel((200.0, 210.0));
        let closer = Glass::of(SHEET, PICTURE, glass.closer(1.5, (200.0, 210.0)));
        assert!(near(closer.spot(pixel), (200.0, 210.0)) && (closer.scale / glass.scale - 1.5).abs() < 1e-9);
        let moved = Glass::of(SHEET, PICTURE, glass.moved((30.0, -12.0)));
        assert!(near(moved.spot(pixel), (230.0, 198.0)));
        let pinched = Glass::of(SHEET, PICTURE, glass.pinched(((200.0, 210.0), (190.0, 260.0)), 2.0));
        assert!(near(pinched.spot(pixel), (190.0, 260.0)));
        assert!(Glass::of(SHEET, PICTURE, pinched.closer(1e-6, (0.0, 0.0))).is_whole());
    }

    /// Moved against an edge and back, it follows at once.
    #[test]
    fn nothing_is_owed_beyond_the_edges() {
        let glass = Glass::of(SHEET, PICTURE, Look { zoom: 2.0, middle: (0.5, 0.5) });
        let far = Glass::of(SHEET, PICTURE, glass.moved((1e6, 0.0)));
        let back = Glass::of(SHEET, PICTURE, far.moved((-10.0, 0.0)));
        assert!((back.spot((0.0, 0.0)).0 - far.spot((0.0, 0.0)).0 + 10.0).abs() < 1e-9);
    }

    #[test]
    fn a_sheet_of_another_size_shows_the_same_middle() {
        let look = Look { zoom: 2.0, middle: (0.4, 0.55) };
        for sheet in [SHEET, (360.0, 420.0), (900.0, 600.0)] {
            let glass = Glass::of(sheet, PICTURE, look);
            assert!(near(glass.pixel((0.5 * sheet.0, 0.5 * sheet.1)), (640.0, 660.0)), "{sheet:?}");
        }
        let nothing = Glass::of((0.0, 0.0), (0.0, 0.0), Look::default());
        assert!(nothing.scale.is_finite() && near(nothing.pixel(nothing.spot((3.0, 4.0))), (3.0, 4.0)));
    }
}
