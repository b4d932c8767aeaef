//! Several ways of finding one load: each holds the truth, and so does what they come to together.

use crate::{block, built, found};
use glam::{DMat3, DVec2, DVec3};
use standfast_core::document::{
    CentreKnown, Document, Facing, GivenAs, Part, Shape, Side, Trace, TraceView, WeighPoint, Weighing, WeightKnown,
};
use standfast_core::material::Material;
use standfast_core::report::{LoadReport, Range};
use standfast_core::{polygon, rules};
use standfast_tests::draw::Draws;
use standfast_tests::{outline, parts, scales};

fn holds(range: &Range, is: f64) -> bool {
    range.lo.get() - 1e-9 <= is && is <= range.hi.get() + 1e-9
}

#[track_caller]
fn holds_truth(load: &LoadReport, mass: f64, centre: DVec3, case: &Document) {
    let at = &load.centre;
    let ranges = [&load.mass, &at.ahead, &at.left, &at.above];
    for (range, is) in ranges.into_iter().zip([mass, centre.x, centre.y, centre.z]) {
        assert!(holds(range, is), "{is} is not in {range:?}: mass {mass}, centre {centre}, {}", case.to_json());
    }
    for way in &load.ways {
        let says = [way.mass, way.ahead, way.left, way.above];
        for (range, is) in says.into_iter().zip([mass, centre.x, centre.y, centre.z]) {
            assert!(range.is_none_or(|r| holds(&r, is)), "{is} is not what {way:?} says: {}", case.to_json());
        }
    }
}

fn point(p: &standfast_core::report::Point) -> DVec3 {
    DVec3::new(p.x.get(), p.y.get(), p.z.get())
}

/// Readings of the true load on three supports, each out by up to the accuracy, places and rise by up to a
/// tape's: entered beside whatever the document already says.
fn weigh(document: &mut Document, draws: &mut Draws, load: &LoadReport, mass: f64, centre: DVec3) -> bool {
    let (low, size) = (point(&load.low), point(&load.size));
    let places = scales::under(low, size);
    let accuracy = draws.within(0.0005..0.003) * mass;
    let raised = draws.chance(0.7).then(|| (Side::Ahead, draws.within(0.08..0.2) * size.x));
    let (level, up) = scales::three(places, mass, centre - DVec3::Z * low.z, raised);
    let mut out = |by: f64| {
        let part: f64 = draws.within(-1.0..1.0);
        by * if part.abs() < 0.5 { (1.0 - 1e-9) * part.signum() } else { part }
    };
    let place = rules::TOLERANCE_SUPPORT_PLACE.value;
    let points: Vec<WeighPoint> = (0..3)
        .map(|k| WeighPoint {
            ahead_m: Some(places[k].x + out(place)),
            left_m: Some(places[k].y + out(place)),
            reading_kg: Some(level[k] + out(accuracy)),
            raised_kg: up.map(|r| r[k] + out(accuracy)),
        })
        .collect();
    let low_reading = points.iter().flat_map(|p| [p.reading_kg, p.raised_kg]).flatten().any(|r| r < 0.0);
    document.load.weighing = Some(Weighing {
        points,
        accuracy_kg: Some(accuracy),
        raised_end: raised.map(|r| r.0),
        raised_m: raised.map(|(_, by)| by + out(rules::TOLERANCE_RAISED.value)),
    });
    !low_reading && raised.is_none_or(|(_, by)| by >= 0.03) && size.x.min(size.y) > 0.3
}

/// Every part weighs anything and stands anywhere within what is stated of it; the whole is weighed too.
#[test]
fn parts_and_scales_hold_the_truth() {
    let (mut cases, mut weighed) = (0, 0);
    for seed in 0..1500 {
        let mut draws = Draws::seeded_row(seed, 600);
        let count = draws.count(1..6);
        let mut document = built(parts::parts(&mut draws, count, 300.0));
        let answer = crate::answer(&document);
        let Some(load) = answer.load else { continue };
        let (mut mass, mut moment) = (0.0, DVec3::ZERO);
        for (part, report) in document.load.parts.iter().zip(&load.parts).filter(|(p, _)| p.cut_from.is_none()) {
            let Range { lo, hi, .. } = report.mass;
            let mut part_of = || {
                let t: f64 = draws.within(-0.5..1.5);
                // Not quite at the ends: there rounding decides.
                t.clamp(1e-9, 1.0 - 1e-9)
            };
            let m = lo.get() + (hi.get() - lo.get()) * part_of();
            // What is of a known material is even all through; what is weighed may be packed unevenly.
            let k = load.parts.iter().position(|r| std::ptr::eq(r, report)).unwrap_or_default();
            let plan = &answer.shapes.iter().find(|s| s.part == Some(k)).expect("drawn").plan;
            let side = &answer.shapes.iter().find(|s| s.part == Some(k)).expect("drawn").side;
            let span = |list: &[(standfast_core::scalar::Scalar, standfast_core::scalar::Scalar)]| {
                let points: Vec<DVec2> = list.iter().map(|p| DVec2::new(p.0.get(), p.1.get())).collect();
                let (lo, hi) = polygon::extents(&points);
                hi - lo
            };
            let (plan, side) = (span(plan), span(side));
            let uneven = if part.mass_kg.is_some() { rules::TOLERANCE_CENTRE_MIDDLE.value } else { 0.0 };
            let spread = DVec3::splat(rules::TOLERANCE_PART_PLACE.value) + plan.extend(side.y) * uneven;
            let out = DVec3::new(part_of(), part_of(), part_of()) * 2.0 - 1.0;
            mass += m;
            moment += m * (point(&report.centre) + spread * out);
        }
        let centre = moment / mass;
        // Wherever it is, it is inside: a truth outside the box is none.
        let (low, size) = (point(&load.low), point(&load.size));
        if centre.cmplt(low).any() || centre.cmpgt(low + size).any() {
            continue;
        }
        cases += 1;
        holds_truth(&load, mass, centre, &document);
        if draws.chance(0.4) {
            let known = draws.one_of(&[WeightKnown::Scale, WeightKnown::Note, WeightKnown::Estimate]);
            document.load.mass_kg = Some(mass * draws.within(0.992..1.008));
            document.load.weight_known = known;
        }
        if weigh(&mut document, &mut draws, &load, mass, centre) {
            let all = found(&document);
            assert_eq!(all.disagreements, [], "{}", document.to_json());
            holds_truth(&all, mass, centre, &document);
            weighed += 1;
        }
    }
    assert!(cases > 1000 && weighed > 500, "{cases} cases, {weighed} weighed");
    eprintln!("{cases} loads from parts, {weighed} of them weighed too: the truth is in every range");
}

/// An outline as it comes to rest on flat ground: on the edge of its hull that its centroid is over.
fn stood(mut form: Vec<DVec2>) -> Vec<DVec2> {
    for _ in 0..30 {
        let hull = polygon::hull(&form);
        let (_, centroid) = polygon::area_and_centroid(&form);
        let next = hull.iter().cycle().skip(1);
        let under = hull.iter().zip(next).find(|(a, b)| a.x <= centroid.x && centroid.x < b.x);
        let Some((a, b)) = under else { break };
        let along = (*b - *a).normalize();
        form.iter_mut().for_each(|p| *p = DVec2::new(along.x, -along.y).rotate(*p));
    }
    form
}

/// A flat thing of any outline, seen by a camera off square by up to 10 degrees from at least twice its size away
/// (or straightened, by up to 30), every tap out by up to a fingertip, the tape by up to its own.
#[test]
fn traces_hold_the_truth() {
    let (mut plain, mut straightened, mut nearest) = (0, 0, f64::INFINITY);
    for seed in 0..3000 {
        let mut draws = Draws::seeded_row(seed, 600);
        let size = draws.within(0.6..2.5);
        let form = stood(outline::simple(&mut draws).iter().map(|p| *p * (0.5 * size)).collect());
        let (lo, hi) = polygon::extents(&form);
        let reach = (hi - lo).max_element();
        let (straight, most) = if draws.chance(0.5) { (true, 30.0) } else { (false, 10.0) };
        // Off square about an axis in the plane, and rolled a little.
        let (towards, off) = (draws.within(0.0..std::f64::consts::TAU), draws.within(0.0..most).to_radians());
        let turn = DMat3::from_axis_angle(DVec3::new(libm::cos(towards), libm::sin(towards), 0.0), off)
            * DMat3::from_rotation_z(draws.within(-0.052..0.052));
        let aim = 0.5 * (lo + hi);
        let away = reach * draws.within(2.0..4.0);
        let at = aim.extend(0.0) + turn * DVec3::Z * away;
        // As near as fills most of a picture of 4,000 by 3,000.
        let focal = 2200.0 * away / reach * draws.within(0.7..1.0) * 0.9;
        let shown = |p: DVec2| {
            let seen = turn.transpose() * (p.extend(0.0) - at);
            DVec2::new(2000.0, 1500.0) + DVec2::new(seen.x, -seen.y) * (focal / -seen.z)
        };
        let tap_off = rules::TOLERANCE_TAP.value * 4000.0;
        let tape = rules::TOLERANCE_TAPE.value;
        let extreme = draws.chance(0.5);
        let mut out = |by: f64| {
            let part: f64 = draws.within(-1.0..1.0);
            by * if extreme { part.signum() } else { part }
        };
        let mut tap = |p: DVec2| {
            let at = shown(p) + DVec2::new(out(tap_off), out(tap_off));
            [at.x, at.y]
        };
        let outline: Vec<[f64; 2]> = form.iter().map(|p| tap(*p)).collect();
        // The known length or rectangle is about the thing itself.
        let corners = [DVec2::new(lo.x, hi.y), hi, DVec2::new(hi.x, lo.y), lo];
        let (scale, rectangle) = if straight {
            (Vec::new(), corners.iter().map(|p| tap(*p)).collect())
        } else {
            (vec![tap(DVec2::new(lo.x, aim.y)), tap(DVec2::new(hi.x, aim.y))], Vec::new())
        };
        let (width, height) = (hi.x - lo.x, hi.y - lo.y);
        let through = 0.8;
        let mut document = Document::default();
        document.load.given_as = GivenAs::Trace;
        document.load.material = Some(Material::Softwood);
        document.load.trace = Some(Trace {
            view: TraceView::Side,
            picture: Some([4000.0, 3000.0]),
            outline,
            scale_m: (!straight).then(|| width + out(tape)),
            rectangle_width_m: straight.then(|| width + out(tape)),
            rectangle_height_m: straight.then(|| height + out(tape)),
            scale,
            rectangle,
            through_m: Some(through + out(tape)),
            ..Trace::default()
        });
        // Thin ones may cross themselves when tapped badly: that is said, and nothing more is asked here.
        let Some(load) = crate::answer(&document).load else { continue };
        if straight {
            straightened += 1
        } else {
            plain += 1
        }
        let (area, centroid) = polygon::area_and_centroid(&form);
        let density = Material::Softwood.density().span.nominal;
        let truth = DVec3::new(centroid.x - lo.x, 0.0, centroid.y - lo.y);
        holds_truth(&load, density * area * through, truth, &document);
        let trace = load.trace.as_ref().expect("traced");
        assert!(holds(&trace.area, area), "{area} {:?}", trace.area);
        let at = &load.centre.ahead;
        nearest = nearest.min((truth.x - at.lo.get()).min(at.hi.get() - truth.x) / (at.hi.get() - at.lo.get()));
    }
    assert!(plain > 800 && straightened > 800, "{plain} plain, {straightened} straightened");
    eprintln!("{plain} plain, {straightened} straightened traces; nearest to an end {nearest:.2} of a range");
}

/// One box as a part is the block with the same figures.
#[test]
fn one_box_is_the_block() {
    for seed in 0..300 {
        let mut draws = Draws::seeded(seed);
        let (l, w, h) = (draws.within(0.3..2.0), draws.within(0.3..2.0), draws.within(0.2..2.0));
        let kg = draws.within(20.0..2000.0);
        let as_part = found(&built(vec![block(kg, [l, w, h], [0.0; 3])]));
        let mut document = Document::default();
        let load = &mut document.load;
        (load.mass_kg, load.length_m, load.width_m, load.height_m) = (Some(kg), Some(l), Some(w), Some(h));
        let known = draws.one_of(&[None, Some(CentreKnown::Middle)]).flatten();
        load.centre_known = known;
        let as_block = found(&document);
        let near = |a: f64, b: f64| (a - b).abs() < 1e-12;
        assert!(near(as_part.mass.nominal.get(), as_block.mass.nominal.get()));
        assert!(
            near(as_part.mass.lo.get(), as_block.mass.lo.get()) && near(as_part.mass.hi.get(), as_block.mass.hi.get())
        );
        for (a, b) in [
            (as_part.centre.ahead, as_block.centre.ahead),
            (as_part.centre.left, as_block.centre.left),
            (as_part.centre.above, as_block.centre.above),
        ] {
            assert!(near(a.nominal.get(), b.nominal.get()), "{a:?} {b:?}");
            // A part's place is not known to the last millimetre: its range is no narrower.
            assert!(a.lo <= b.lo && a.hi >= b.hi, "{a:?} {b:?}");
        }
        assert_eq!((as_part.low, as_part.size), (as_block.low, as_block.size));
    }
}

/// Ways that cannot both be true are said, and the load may be as either says.
#[test]
fn ways_that_disagree_are_said() {
    let mut document = built(vec![block(400.0, [1.2, 0.8, 0.6], [0.0; 3])]);
    (document.load.mass_kg, document.load.weight_known) = (Some(700.0), Some(WeightKnown::Scale));
    let load = found(&document);
    assert_eq!(load.disagreements.len(), 1);
    assert!(load.mass.lo.get() <= 400.0 && load.mass.hi.get() >= 700.0);
    let places = [(0.1, 0.3, 50.0), (0.1, -0.3, 50.0), (1.1, 0.0, 600.0)];
    let point = |&(ahead, left, kg): &(f64, f64, f64)| WeighPoint {
        ahead_m: Some(ahead),
        left_m: Some(left),
        reading_kg: Some(kg),
        raised_kg: None,
    };
    let points = places.iter().map(point).collect();
    document.load.weighing = Some(Weighing { points, accuracy_kg: Some(1.0), ..Weighing::default() });
    let load = found(&document);
    // The centre by the parts is 0.6, by the scales 0.957.
    let ahead = load.disagreements.iter().find(|d| d.figure == standfast_core::found::LoadFigure::Ahead);
    assert!(ahead.is_some() && load.centre.ahead.lo.get() < 0.6 && load.centre.ahead.hi.get() > 0.957);
}

/// What is left of a box with a hole is the six boxes round the hole.
#[test]
fn a_hole_is_what_is_not_there() {
    for seed in 0..300 {
        let mut draws = Draws::seeded(seed);
        let material = draws.one_of(&[Material::Softwood, Material::Plastic, Material::Paper]);
        let size = [draws.within(0.5..1.5), draws.within(0.5..1.2), draws.within(0.4..1.0)];
        let from = size.map(|s| s * draws.within(0.1..0.4));
        let to: Vec<f64> = (0..3).map(|k| size[k] * draws.within(0.5..0.9)).collect();
        let of = |lo: [f64; 3], hi: [f64; 3]| {
            let edges = [hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]];
            // A part stands by its middle across.
            let mut part = block(0.0, edges, [lo[0], 0.5 * (lo[1] + hi[1]), lo[2]]);
            (part.mass_kg, part.material) = (None, material);
            part
        };
        let (hole_lo, hole_hi) = (from, [to[0], to[1], to[2]]);
        let mut cut = of(hole_lo, hole_hi);
        (cut.cut_from, cut.material) = (Some(0), None);
        let hollow = found(&built(vec![of([0.0; 3], size), cut]));
        let rest = [
            of([0.0, 0.0, 0.0], [from[0], size[1], size[2]]),
            of([to[0], 0.0, 0.0], size),
            of([from[0], 0.0, 0.0], [to[0], from[1], size[2]]),
            of([from[0], to[1], 0.0], [to[0], size[1], size[2]]),
            of([from[0], from[1], 0.0], [to[0], to[1], from[2]]),
            of([from[0], from[1], to[2]], [to[0], to[1], size[2]]),
        ];
        same_load(&hollow, &found(&built(rest.to_vec())));
    }
}

#[track_caller]
fn same_load(a: &LoadReport, b: &LoadReport) {
    let near = |x: f64, y: f64| (x - y).abs() < 1e-9 * x.abs().max(1.0);
    assert!(near(a.mass.nominal.get(), b.mass.nominal.get()), "{:?} {:?}", a.mass, b.mass);
    for (x, y) in
        [(&a.centre.ahead, &b.centre.ahead), (&a.centre.left, &b.centre.left), (&a.centre.above, &b.centre.above)]
    {
        assert!(near(x.nominal.get(), y.nominal.get()), "{x:?} {y:?}");
    }
    assert!((point(&a.size) - point(&b.size)).length() < 1e-9);
}

/// Traced from any side, with a hole, it is the prism on the same outline with the hole cut out.
#[test]
fn a_trace_is_a_prism() {
    let mut with_holes = 0;
    for seed in 0..400 {
        let mut draws = Draws::seeded_row(seed, 400);
        let view = draws.one_of(&[TraceView::Side, TraceView::Front, TraceView::Plan]).unwrap_or_default();
        let form = stood(outline::star(&mut draws).iter().map(|p| *p * 0.7).collect());
        // Seen whole from its middle: a small hole there is inside.
        let holed = draws.chance(0.6);
        let hole: Vec<DVec2> = outline::star(&mut draws).iter().map(|p| *p * 0.03).collect();
        with_holes += usize::from(holed);
        let metres = 1.0 / 400.0;
        let through = 0.6;
        let pixels =
            |list: &[DVec2]| list.iter().map(|p| [600.0 + p.x / metres, 600.0 - p.y / metres]).collect::<Vec<_>>();
        let mut document = Document::default();
        (document.load.given_as, document.load.material) = (GivenAs::Trace, Some(Material::Softwood));
        document.load.trace = Some(Trace {
            view,
            picture: Some([1200.0, 1200.0]),
            outline: pixels(&form),
            holes: if holed { vec![pixels(&hole)] } else { Vec::new() },
            scale: vec![[100.0, 100.0], [900.0, 100.0]],
            scale_m: Some(2.0),
            through_m: Some(through),
            ..Trace::default()
        });
        let trace = found(&document);
        // Right and up in the picture: ahead and up, right and up, right and ahead.
        let (facing, to): (Facing, fn(DVec2) -> [f64; 2]) = match view {
            TraceView::Side => (Facing::Left, |p| [p.x, p.y]),
            TraceView::Front => (Facing::Ahead, |p| [-p.x, p.y]),
            TraceView::Plan => (Facing::Up, |p| [p.y, -p.x]),
        };
        let place = |part: &mut Part, lo: [f64; 2], middle: f64| {
            let (ahead, left, above) = match view {
                TraceView::Side => (lo[0], 0.0, lo[1]),
                TraceView::Front => (0.0, middle, lo[1]),
                TraceView::Plan => (lo[0], middle, 0.0),
            };
            (part.ahead_m, part.left_m, part.above_m) = (Some(ahead), Some(left), Some(above));
        };
        let part = |list: &[DVec2], about: [f64; 2]| {
            let outline: Vec<[f64; 2]> = list.iter().map(|p| to(*p)).collect();
            let range = |k: usize| {
                let all = outline.iter().map(|p| p[k] - about[k]);
                all.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)))
            };
            let (u, v) = (range(0), range(1));
            let mut part = Part { shape: Some(Shape::Prism), facing, length_m: Some(through), ..Part::default() };
            part.outline.clone_from(&outline);
            let across = if view == TraceView::Front { u } else { v };
            place(&mut part, [u.0, v.0], 0.5 * (across.0 + across.1));
            (part, [u, v])
        };
        let (_, [u, v]) = part(&form, [0.0; 2]);
        // Counted as a trace is: from its heel and foot, from its middle across.
        let about = match view {
            TraceView::Side => [u.0, v.0],
            TraceView::Front => [0.5 * (u.0 + u.1), v.0],
            TraceView::Plan => [u.0, 0.5 * (v.0 + v.1)],
        };
        let mut parts = vec![part(&form, about).0];
        parts[0].material = Some(Material::Softwood);
        if holed {
            let mut cut = part(&hole, about).0;
            cut.cut_from = Some(0);
            parts.push(cut);
        }
        same_load(&trace, &found(&built(parts)));
    }
    assert!(with_holes > 150);
}
