//! The straightened picture against a linear system that nalgebra solves, and against a pinhole camera.

use crate::{Worst, seeds};
use glam::{DMat3, DVec2, DVec3};
use nalgebra::{SMatrix, SVector};
use standfast_core::picture::{Fault, Picture};
use standfast_tests::draw::Draws;

/// A camera that looks at the plane z = 0 from the front, its picture in pixels, right and down.
struct Camera {
    at: DVec3,
    turn: DMat3,
    focal: f64,
    middle: DVec2,
}

impl Camera {
    /// From 1.5 to 6 m away, up to 35 degrees off square in either direction, rolled by up to 10.
    fn somewhere(draws: &mut Draws) -> Self {
        let mut angle = |most: f64| draws.within(-most..most).to_radians();
        let (yaw, pitch, roll) = (angle(35.0), angle(35.0), angle(10.0));
        let turn = DMat3::from_rotation_y(yaw) * DMat3::from_rotation_x(pitch) * DMat3::from_rotation_z(roll);
        let away = draws.within(1.5..6.0);
        let aim = DVec3::new(draws.within(-0.3..0.3), draws.within(-0.3..0.3), 0.0);
        Self {
            at: aim + turn * DVec3::Z * away,
            turn,
            focal: draws.within(800.0..4000.0),
            middle: DVec2::new(2000.0, 1500.0),
        }
    }

    fn sees(&self, p: DVec2) -> Option<DVec2> {
        // It looks along its own -z.
        let seen = self.turn.transpose() * (p.extend(0.0) - self.at);
        (seen.z < -0.05).then(|| self.middle + DVec2::new(seen.x, -seen.y) * (self.focal / -seen.z))
    }
}

fn corners(width: f64, height: f64) -> [DVec2; 4] {
    [(0.0, height), (width, height), (width, 0.0), (0.0, 0.0)].map(|(x, y)| DVec2::new(x, y))
}

/// Eight unknowns of the projective map, two equations a corner, solved by nalgebra.
fn solved(pixels: &[DVec2; 4], metres: &[DVec2; 4]) -> SVector<f64, 8> {
    let (mut a, mut b) = (SMatrix::<f64, 8, 8>::zeros(), SVector::<f64, 8>::zeros());
    for (k, (p, m)) in pixels.iter().zip(metres).enumerate() {
        let x = [p.x, p.y, 1.0, 0.0, 0.0, 0.0, -p.x * m.x, -p.y * m.x];
        let y = [0.0, 0.0, 0.0, p.x, p.y, 1.0, -p.x * m.y, -p.y * m.y];
        for c in 0..8 {
            (a[(2 * k, c)], a[(2 * k + 1, c)]) = (x[c], y[c]);
        }
        (b[2 * k], b[2 * k + 1]) = (m.x, m.y);
    }
    a.full_piv_lu().solve(&b).expect("four corners of a rectangle")
}

#[test]
fn a_straightened_picture_is_the_library_s_own() {
    let (mut against_library, mut against_camera, mut back) = (Worst::default(), Worst::default(), Worst::default());
    let mut taken = 0;
    for mut draws in seeds(3000) {
        let camera = Camera::somewhere(&mut draws);
        let (width, height) = (draws.within(0.3..2.0), draws.within(0.3..2.0));
        // The rectangle hangs somewhere on the plane: its own bottom left corner is the origin.
        let origin = DVec2::new(draws.within(-1.0..0.0), draws.within(-1.0..0.0));
        let metres = corners(width, height);
        let shown = metres.map(|m| camera.sees(m + origin));
        let [Some(a), Some(b), Some(c), Some(d)] = shown else { continue };
        let pixels = [a, b, c, d];
        let Ok(picture) = Picture::straightened(pixels, width, height, 4000.0) else { continue };
        taken += 1;
        assert!(picture.sees(&pixels));
        let h = solved(&pixels, &metres);
        for _ in 0..8 {
            let there = DVec2::new(draws.within(-1.0..3.0), draws.within(-1.0..3.0));
            let Some(pixel) = camera.sees(there + origin) else { continue };
            if !(0.0..4000.0).contains(&pixel.x) || !(0.0..3000.0).contains(&pixel.y) {
                continue;
            }
            assert!(picture.sees(&[pixel]), "what the camera sees is on the near side of the horizon");
            let found = picture.to_plane(pixel);
            let w = h[6] * pixel.x + h[7] * pixel.y + 1.0;
            let library =
                DVec2::new(h[0] * pixel.x + h[1] * pixel.y + h[2], h[3] * pixel.x + h[4] * pixel.y + h[5]) / w;
            against_library.within((found - library).length(), 1e-9, (pixels, pixel));
            against_camera.within((found - there).length(), 1e-9, (pixels, pixel));
            back.within((picture.to_picture(found) - pixel).length(), 1e-6, (pixels, pixel));
        }
    }
    assert!(taken > 2000, "only {taken} pictures");
    against_library.say("straightened, against the library, m");
    against_camera.say("straightened, against the camera, m");
    back.say("and back, pixels");
}

/// What lies beyond the horizon of a steep picture is not seen, and nothing seen lies there.
#[test]
fn the_horizon_divides_what_is_seen() {
    let mut beyond = 0;
    for mut draws in seeds(2000) {
        // A floor seen flat: the horizon runs through the picture.
        let tilt = draws.within(55.0..75.0).to_radians();
        let turn = DMat3::from_rotation_x(tilt);
        let at = turn * DVec3::Z * draws.within(2.0..4.0);
        let camera = Camera { at, turn, focal: 1500.0, middle: DVec2::new(2000.0, 1500.0) };
        let (width, height) = (draws.within(0.8..1.5), draws.within(0.8..1.5));
        let shown = corners(width, height).map(|m| camera.sees(m - DVec2::new(0.5 * width, 0.5 * height)));
        let [Some(a), Some(b), Some(c), Some(d)] = shown else { continue };
        let Ok(picture) = Picture::straightened([a, b, c, d], width, height, 4000.0) else { continue };
        // The direction of a pixel, and whether it ever comes down on the plane.
        let pixel = DVec2::new(draws.within(0.0..4000.0), draws.within(-3000.0..3000.0));
        let ray = turn * DVec3::new(pixel.x - 2000.0, -(pixel.y - 1500.0), -1500.0).normalize();
        if ray.z.abs() < 1e-3 {
            continue;
        }
        assert_eq!(picture.sees(&[pixel]), ray.z < 0.0, "{pixel}");
        beyond += i32::from(ray.z > 0.0);
    }
    assert!(beyond > 100, "only {beyond} beyond the horizon");
}

/// Any four taps are answered: by a map that keeps its own corners, or by the fault's name.
#[test]
fn any_four_corners_are_answered() {
    let mut taken = 0;
    for mut draws in seeds(5000) {
        let pixels: [DVec2; 4] =
            std::array::from_fn(|_| DVec2::new(draws.within(0.0..4000.0), draws.within(0.0..3000.0)));
        match Picture::straightened(pixels, 1.2, 0.8, 4000.0) {
            Ok(picture) => {
                taken += 1;
                for (pixel, metres) in pixels.iter().zip(corners(1.2, 0.8)) {
                    assert!((picture.to_plane(*pixel) - metres).length() < 1e-6, "{pixels:?}");
                }
                assert!(picture.sees(&pixels), "{pixels:?}");
            }
            Err(fault) => assert_eq!(fault, Fault::RectangleBent),
        }
    }
    assert!(taken > 50, "only {taken} of 5000 were rectangles");
}
