//! On the blades: what lies on them, and what then topples or is too heavy for a fork.

use super::{grounds, judged, leads, margins, marked, of, off_blade, on_scales, parts, round};
use crate::block;
use standfast_core::document::{Document, Facing, Known, Part, Shape};
use standfast_core::forks::Fork;
use standfast_core::material::Material;
use standfast_core::plate::Gap;
use standfast_core::report::Figures;
use standfast_core::seat::{Event, Over};
use standfast_core::step::StepId;
use standfast_core::units::GRAVITY;
use standfast_core::verdict::{Reason, State};

#[track_caller]
fn off_the_left_blade(document: &Document) {
    let a = judged(document);
    assert_eq!(a.verdict.state, State::NoGo);
    let off = leads(&a, State::NoGo, |r| matches!(r, Reason::OffBlade { fork: Fork::Left, .. }));
    assert!(off, "{:?}", a.verdict);
    assert!(a.forks.arms[0].bearing.get() <= 0.0 && a.forks.arms[1].bearing.get() > 0.05, "{:?}", a.forks.arms);
}

/// Found here: a round bar was taken to lie on its whole width, and passed at five degrees forward.
#[test]
fn round_bars_across_the_forks_roll_off() {
    for diameter in [0.30, 0.38, 0.45] {
        let mut document = parts(vec![of(Material::Steel, round(Shape::Cylinder, Facing::Left, diameter, 1.2))]);
        document.lift.tilt_forward_deg = Some(5.0);
        let a = judged(&document);
        assert_eq!(a.verdict.state, State::NoGo, "{diameter}");
        let topples = |r: &Reason| matches!(r, Reason::Topples { over: Over::Ahead, .. });
        assert!(leads(&a, State::NoGo, topples), "{:?}", a.verdict);
        let ahead = |tilt: f64| {
            let mut tilted = document.clone();
            tilted.lift.tilt_forward_deg = Some(tilt);
            // Down on the ground nothing leans of its own.
            (tilted.lift.height_m, tilted.lift.take_up_m) = (Some(0.0), Some(0.0));
            let placed =
                margins(&judged(&tilted)).into_iter().filter(|m| m.0 == StepId::RaisedForward && m.2 == Over::Ahead);
            placed.map(|m| m.3.nominal.get()).fold(f64::INFINITY, f64::min)
        };
        assert!(ahead(0.0).abs() < 1e-9, "{}", ahead(0.0));
        // The centre is half the diameter up: it goes by the tangent.
        for tilt in [0.1_f64, 1.0, 5.0] {
            let by = 0.5 * diameter * libm::tan(tilt.to_radians());
            assert!((ahead(tilt) + by).abs() < 1e-9, "{diameter}, {tilt}: {} is not {}", ahead(tilt), -by);
        }
    }
}

#[test]
fn what_stands_on_a_point_lies_on_no_blade() {
    for (shape, facing) in [(Shape::Sphere, Facing::Up), (Shape::HalfSphere, Facing::Down)] {
        let a = judged(&parts(vec![round(shape, facing, 0.9, 0.9)]));
        assert_eq!(a.verdict.state, State::NoGo);
        assert!(leads(&a, State::NoGo, off_blade), "{shape:?}: {:?}", a.verdict);
    }
    // Its flat side down it does lie on them.
    let a = judged(&parts(vec![round(Shape::HalfSphere, Facing::Up, 0.9, 0.9)]));
    assert!(!grounds(&a).any(|g| off_blade(&g.reason)), "{:?}", a.verdict);
}

/// Found here: what lay beside a blade counted as lying on it, because the deck above reached over it.
#[test]
fn what_stands_beside_a_blade_does_not_lie_on_it() {
    let skid = |left: f64| on_scales(20.0, [1.2, 0.1, 0.1], [0.0, left, 0.0]);
    let deck = on_scales(100.0, [1.2, 1.3, 0.4], [0.0, 0.27, 0.1]);
    let piece = on_scales(500.0, [0.6, 0.3, 0.3], [0.3, -0.1, 0.5]);
    let mut document = parts(vec![skid(-0.30), skid(0.85), deck.clone(), piece.clone()]);
    document.lift.offset_m = Some(0.275);
    off_the_left_blade(&document);
    // The left skid on the left blade: it lies on both.
    document.load.parts = vec![skid(-0.30), skid(0.30), deck, piece];
    assert!(!grounds(&judged(&document)).any(|g| off_blade(&g.reason)));
}

/// An L, a leg on the right blade; what goes across lies beyond the tips.
#[test]
fn what_is_hollow_over_a_blade_does_not_lie_on_it() {
    let mut l = on_scales(400.0, [0.5; 3], [0.0; 3]);
    l.shape = Some(Shape::Prism);
    l.outline = vec![[0.0, -0.4], [1.7, -0.4], [1.7, 0.4], [1.2, 0.4], [1.2, -0.1], [0.0, -0.1]];
    off_the_left_blade(&parts(vec![l]));
}

/// A groove right through over the left blade leaves nothing on it, and a U with a leg on either side of
/// that blade has none on it.
#[test]
fn a_groove_and_a_u_leave_nothing_on_a_blade() {
    let whole = on_scales(200.0, [1.2, 1.0, 0.5], [0.0; 3]);
    let groove = Part { cut_from: Some(0), mass_kg: None, ..block(0.0, [1.2, 0.2, 0.1], [0.0, 0.3, 0.0]) };
    let piece = on_scales(400.0, [0.4, 0.2, 0.4], [0.1, -0.05, 0.5]);
    off_the_left_blade(&parts(vec![whole, groove, piece]));
    let mut u = on_scales(400.0, [0.5; 3], [0.0; 3]);
    u.shape = Some(Shape::Prism);
    u.outline = vec![[0.0, -0.5], [1.7, -0.5], [1.7, 0.5], [0.0, 0.5], [0.0, 0.4], [1.2, 0.4], [1.2, 0.2], [0.0, 0.2]];
    off_the_left_blade(&parts(vec![u]));
}

/// A pocket in the underside over the left blade leaves 40 mm at the heel: all that lies there.
#[test]
fn a_pocket_over_a_blade_does_not_lie_on_it() {
    let whole = on_scales(600.0, [1.2, 1.0, 0.5], [0.0; 3]);
    let at = |above: f64| {
        let pocket = Part { cut_from: Some(0), mass_kg: None, ..block(0.0, [1.16, 0.2, 0.1], [0.04, 0.3, above]) };
        let a = judged(&parts(vec![whole.clone(), pocket]));
        let seat = a.steps[0].seat.as_ref().expect("it lies on the forks");
        let left = seat.region.iter().filter(|p| p.y.get() > 0.3).map(|p| p.x.get()).fold(f64::NEG_INFINITY, f64::max);
        let margin = margins(&a).into_iter().find(|m| m.2 == Over::Left).expect("an edge to the left");
        // From the face, 0.36 m ahead of the axle.
        (left - 0.36, margin.3.nominal.get())
    };
    let (under, above) = (at(0.0), at(0.1));
    assert!((under.0 - 0.04).abs() < 1e-3, "{under:?}");
    // Above the underside it takes nothing from the blade.
    assert!((above.0 - 1.15).abs() < 1e-3, "{above:?}");
    assert!(under.1 < above.1 - 0.2, "{under:?} {above:?}");
}

/// Found here: extensions that the plate does not name changed nothing.
#[test]
fn extensions_are_named_on_the_plate_and_carried_by_the_forks() {
    let mut document = marked(600.0, [1.2, 1.0, 0.5], [0.5, 0.0, 0.25]);
    (document.truck.forks.stamped_kg, document.truck.forks.stamped_centre_m) = (Some(1200.0), Some(0.5));
    let bare = judged(&document);
    (document.truck.forks.extension_m, document.truck.forks.extension_kg) = (Some(1.6), Some(60.0));
    let on = judged(&document);
    assert_eq!(on.verdict.state, State::NoGo);
    let named =
        |r: &Reason| matches!(r, Reason::Plate { gap: Gap::Extensions { mass } } if (mass.get() - 60.0).abs() < 1e-9);
    assert!(leads(&on, State::NoGo, named), "{:?}", on.verdict);
    for (with, without) in on.forks.arms.iter().zip(&bare.forks.arms) {
        // Half of the pair's weight, half of its length out.
        let more = GRAVITY * 30.0 * 0.8;
        assert!((with.moment.get() - without.moment.get() - more).abs() < 1e-6);
        assert!((with.moment_worst.get() - without.moment_worst.get() - more).abs() < 1e-6);
        assert!((with.carries.get() - without.carries.get() - 30.0).abs() < 1e-9);
    }
    document.truck.plate.as_mut().expect("a plate").extensions = true;
    assert!(!grounds(&judged(&document)).any(|g| named(&g.reason)));
}

/// Found here: forks set nobody knew how were taken close together, and a narrow load lay on them.
#[test]
fn an_unknown_width_over_the_forks_is_never_easier() {
    let mut document = marked(400.0, [1.2, 0.45, 0.5], [0.6, 0.0, 0.25]);
    document.truck.forks.blade_width_m = None;
    // A width that is known is known exactly here: a tape's tolerance goes beyond the widest that is taken.
    let exact = Known { by: None, tolerance: Some(0.0) };
    document.known.insert("truck.forks.spread_m".to_owned(), exact);
    let mut at = |spread: Option<f64>| {
        document.truck.forks.spread_m = spread;
        judged(&document)
    };
    let wide = at(Some(0.7));
    assert_eq!(wide.verdict.state, State::NoGo);
    assert!(leads(&wide, State::NoGo, off_blade), "{:?}", wide.verdict);
    let unknown = at(None);
    assert_eq!(unknown.verdict.state, State::Hold);
    assert!(leads(&unknown, State::Hold, off_blade), "{:?}", unknown.verdict);
    for spread in [0.5, 0.6, 0.7, 0.8, 0.9] {
        assert!(unknown.forks.arms[0].bearing_worst <= at(Some(spread)).forks.arms[0].bearing_worst, "{spread}");
    }
}

/// Found by the properties: forks that may stand wider than stated were looked at as narrow as they may, where the
/// load lies on both; set wide, one of them misses it.
#[test]
fn forks_that_may_stand_wider_may_miss_the_load() {
    let mut document = marked(400.0, [1.2, 0.8, 0.5], [0.6, 0.0, 0.25]);
    (document.truck.forks.spread_m, document.truck.forks.blade_width_m) = (Some(0.7), Some(0.1));
    document.lift.offset_m = Some(0.1);
    let mut at = |tolerance: f64| {
        let known = Known { by: None, tolerance: Some(tolerance) };
        document.known.insert("truck.forks.spread_m".to_owned(), known);
        let right = margins(&judged(&document)).into_iter().filter(|m| m.2 == Over::Right);
        right.map(|m| m.3.worst.get()).fold(f64::INFINITY, f64::min)
    };
    assert!(at(0.0) > 0.1, "{}", at(0.0));
    // The right blade begins 350 mm out and the load reaches to 300: it lies on the left one alone.
    assert!(at(0.2) < -0.2, "{}", at(0.2));
}

/// Found here: narrow blades carry a narrower foot, and only wide ones were looked at.
#[test]
fn an_unknown_blade_width_is_never_easier() {
    let mut document = parts(vec![round(Shape::Cylinder, Facing::Up, 0.7, 1.4)]);
    let mut at = |width: Option<f64>| {
        document.truck.forks.blade_width_m = width;
        judged(&document)
    };
    let unknown = margins(&at(None));
    assert!(unknown.iter().any(|m| m.2 == Over::Left) && unknown.iter().any(|m| m.2 == Over::Ahead));
    for width in [0.08, 0.09, 0.10, 0.11, 0.12] {
        let known = at(Some(width));
        let known = margins(&known);
        assert_eq!(known.len(), unknown.len());
        for (with, without) in known.iter().zip(&unknown) {
            assert_eq!((with.0, with.1, with.2), (without.0, without.1, without.2));
            let (with, without) = (with.3.worst.get(), without.3.worst.get());
            assert!(without <= with + 1e-12, "{width}: {without} > {with}");
        }
    }
}

/// Tilted back as far as it goes, with a mast that goes twelve degrees.
fn tilted_back(mut document: Document, gap: f64) -> Document {
    (document.truck.mast.tilt_back_deg, document.lift.tilt_back_deg) = (Some(12.0), Some(12.0));
    (document.lift.height_m, document.lift.heel_gap_m) = (Some(1.0), Some(gap));
    document
}

/// Found here: a load that stands off the face may topple back, and was taken to lean on it.
#[test]
fn a_load_off_the_face_topples_back() {
    let tall = || marked(500.0, [0.5, 0.9, 3.0], [0.25, 0.0, 1.5]);
    let back = |r: &Reason| matches!(r, Reason::Topples { over: Over::Heel, .. });
    let off = judged(&tilted_back(tall(), 0.35));
    assert_eq!(off.verdict.state, State::NoGo);
    assert!(leads(&off, State::NoGo, back), "{:?}", off.verdict);
    let at = judged(&tilted_back(tall(), 0.02));
    assert!(!grounds(&at).any(|g| back(&g.reason)), "{:?}", at.verdict);
}

/// Found here: the short edges of a round foot that face the heel were counted for one side only.
#[test]
fn what_is_the_same_on_both_sides_topples_to_neither_alone() {
    for (diameter, height) in [(0.52, 3.4), (0.6, 2.0), (0.7, 1.4)] {
        for gap in [0.0, 0.35] {
            for spread in [0.45, 0.5, 0.6] {
                let mut document = parts(vec![round(Shape::Cylinder, Facing::Up, diameter, height)]);
                document.truck.forks.spread_m = Some(spread);
                let a = judged(&tilted_back(document, gap));
                // A bend pulls to one side.
                let sides =
                    |over: Over| margins(&a).into_iter().filter(move |m| m.2 == over && m.1 != Event::Cornering);
                assert!(sides(Over::Left).count() > 0);
                assert_eq!(sides(Over::Left).count(), sides(Over::Right).count());
                for (l, r) in sides(Over::Left).zip(sides(Over::Right)) {
                    let apart = |f: fn(&Figures) -> f64| (f(&l.3) - f(&r.3)).abs();
                    assert!(apart(|f| f.nominal.get()) < 1e-9 && apart(|f| f.worst.get()) < 1e-9, "{l:?} {r:?}");
                }
            }
        }
    }
}

/// Found here: a narrow load lies on the inner edges of the blades, not on their middles.
#[test]
fn a_narrow_load_is_shared_from_the_inner_edges() {
    let mut document = marked(1000.0, [1.0, 0.34, 0.6], [0.5, 0.026, 0.3]);
    let forks = &mut document.truck.forks;
    (forks.spread_m, forks.blade_width_m) = (Some(0.6), Some(0.15));
    (forks.stamped_kg, forks.stamped_centre_m) = (Some(580.0), Some(0.6));
    let a = judged(&document);
    // 20 mm lie on each blade, their middles 0.32 m apart.
    let part: f64 = 0.5 + 0.026 / 0.32;
    assert!((part - 0.581).abs() < 5e-4);
    assert!((a.forks.arms[0].part.get() - part).abs() < 1e-9, "{:?}", a.forks.arms);
    assert_eq!(a.verdict.state, State::NoGo);
    let over = |r: &Reason| matches!(r, Reason::ForkOver { fork: Fork::Left, .. });
    assert!(leads(&a, State::NoGo, over), "{:?}", a.verdict);
}
