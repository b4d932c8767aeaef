//! The ranges of a common centre against every corner of every range, and against chance.

use crate::{Worst, seeds};
use glam::DVec3;
use standfast_core::composite::{Piece, common};
use standfast_core::scalar::{Region, Span};
use standfast_tests::draw::Draws;

/// A weight, now and then exact or perhaps nothing, and a box for its centre.
fn piece(draws: &mut Draws) -> Piece {
    let lo = if draws.chance(0.1) { 0.0 } else { draws.within(1.0..500.0) };
    let hi = if draws.chance(0.2) { lo } else { lo * draws.within(1.0..1.6) + draws.within(0.0..20.0) };
    let mut place = || {
        let lo = draws.within(-2.0..2.0);
        let hi = if draws.chance(0.2) { lo } else { lo + draws.within(0.0..0.5) };
        Span { lo, nominal: lo + (hi - lo) * draws.unit(), hi }
    };
    let centre = Region::of(place(), place(), place());
    Piece { mass: Span { lo, nominal: lo + (hi - lo) * draws.unit(), hi }, centre }
}

/// All corners: each weight and each place at either end.
fn corners(pieces: &[Piece], get: fn(&Region) -> Span) -> (f64, f64) {
    let mut sums = vec![(0.0, 0.0)];
    for p in pieces {
        let x = get(&p.centre);
        let mut next = Vec::with_capacity(4 * sums.len());
        for (mass, moment) in sums {
            for m in [p.mass.lo, p.mass.hi] {
                next.extend([x.lo, x.hi].map(|x| (mass + m, moment + m * x)));
            }
        }
        sums = next;
    }
    let means = sums.iter().filter(|(mass, _)| *mass > 0.0).map(|(mass, moment)| moment / mass);
    means.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), x| (lo.min(x), hi.max(x)))
}

#[test]
fn a_few_pieces_against_all_corners() {
    let mut worst = Worst::default();
    let mut answered = 0;
    for mut draws in seeds(1500) {
        let n = draws.count(1..7);
        let pieces: Vec<Piece> = (0..n).map(|_| piece(&mut draws)).collect();
        let Some((mass, centre)) = common(&pieces) else {
            assert!(pieces.iter().map(|p| p.mass.lo).sum::<f64>() <= 0.0);
            continue;
        };
        answered += 1;
        let sum = |f: fn(&Span) -> f64| pieces.iter().map(|p| f(&p.mass)).sum::<f64>();
        assert_eq!((mass.lo, mass.nominal, mass.hi), (sum(|m| m.lo), sum(|m| m.nominal), sum(|m| m.hi)));
        for (get, found) in [
            (Region::x as fn(&Region) -> Span, centre.x()),
            (Region::y as fn(&Region) -> Span, centre.y()),
            (Region::z as fn(&Region) -> Span, centre.z()),
        ] {
            let (lo, hi) = corners(&pieces, get);
            worst.within((found.lo - lo).abs().max((found.hi - hi).abs()), 1e-12, &pieces);
            assert!(found.lo <= found.nominal && found.nominal <= found.hi);
        }
    }
    assert!(answered > 1200, "only {answered}");
    worst.say("ranges of a common centre, m");
}

#[test]
fn many_pieces_against_chance() {
    let mut closest = f64::INFINITY;
    for seed in 0..10 {
        let mut draws = Draws::seeded_row(1000 + seed, 250_000);
        let n = draws.count(20..101);
        let pieces: Vec<Piece> = (0..n).map(|_| piece(&mut draws)).collect();
        let (mass, centre) = common(&pieces).expect("some of them weigh something");
        for _ in 0..10_000 {
            // Three ways of choosing: anywhere, at an end, and all beyond a place heavy and
            // far against all short of it.
            let way = draws.count(0..3);
            let cut = draws.within(-2.0..2.0);
            let (mut total, mut moment) = (0.0, DVec3::ZERO);
            for p in &pieces {
                let heavy = f64::from(u8::from(p.centre.at.x > cut));
                let mut part = |ordered: f64| match way {
                    0 => draws.unit(),
                    1 => f64::from(u8::from(draws.chance(0.5))),
                    _ => ordered,
                };
                let m = p.mass.lo + (p.mass.hi - p.mass.lo) * part(heavy);
                total += m;
                moment += m * (p.centre.lo + (p.centre.hi - p.centre.lo) * DVec3::new(part(1.0), part(0.0), part(0.5)));
            }
            let at = moment / total;
            assert!(mass.lo - 1e-9 <= total && total <= mass.hi + 1e-9);
            assert!(at.cmpge(centre.lo - 1e-12).all() && at.cmple(centre.hi + 1e-12).all(), "{at} {centre:?}");
            closest = closest.min(centre.hi.x - at.x);
        }
    }
    eprintln!("ranges against chance: nearest to an end {closest:.1e} m");
}
