use super::*;

const OUTLINE: Task = Task::Outline { hole: false };

fn dots(points: &[Pixel]) -> Vec<Dot> {
    points.iter().map(|p| dot(*p)).collect()
}

fn l() -> TraceEntry {
    let outline =
        dots(&[(100.0, 700.0), (700.0, 700.0), (700.0, 550.0), (300.0, 550.0), (300.0, 250.0), (100.0, 250.0)]);
    TraceEntry { outline, ..TraceEntry::default() }
}

fn at(ring: Ring, point: usize) -> At {
    At { ring, point }
}

#[test]
fn tapped_round_and_closed_at_the_first_point() {
    let mut trace = TraceEntry::default();
    for p in l().outline.iter().map(pixel) {
        let meant = OUTLINE.meant(&trace, p, 20.0, 15.0);
        assert_eq!(meant, Meant::New);
        trace = added(&trace, OUTLINE.adds_to(&trace).expect("goes on"), p);
    }
    assert_eq!((trace.open.len(), trace.outline.len()), (6, 0));
    let meant = OUTLINE.meant(&trace, (106.0, 690.0), 20.0, 15.0);
    assert_eq!(meant, Meant::Point(at(Ring::Open, 0)));
    assert!(closes(&trace, at(Ring::Open, 0)) && !closes(&trace, at(Ring::Open, 1)));
    let trace = closed(&trace).expect("six points");
    assert_eq!(trace.outline, l().outline);
    assert_eq!((trace.open.len(), OUTLINE.adds_to(&trace)), (0, None));
    assert_eq!(closed(&trace), None);
}

#[test]
fn two_points_do_not_close() {
    let trace = TraceEntry { open: dots(&[(0.0, 0.0), (50.0, 0.0)]), ..TraceEntry::default() };
    assert!(closed(&trace).is_none() && !closes(&trace, at(Ring::Open, 0)));
}

#[test]
fn a_hole_is_tapped_where_one_was_asked_for() {
    let task = Task::Outline { hole: true };
    let mut trace = l();
    for p in [(150.0, 300.0), (250.0, 300.0), (250.0, 500.0)] {
        assert_eq!(task.meant(&trace, p, 20.0, 15.0), Meant::New, "{p:?}");
        trace = added(&trace, Ring::Open, p);
    }
    // Begun, it goes on even where the wish for it is forgotten.
    assert_eq!(OUTLINE.adds_to(&trace), Some(Ring::Open));
    let trace = closed(&trace).expect("three points");
    assert_eq!((trace.holes.len(), trace.outline.len(), trace.open.len()), (1, 6, 0));
    let full = TraceEntry { holes: vec![trace.holes[0].clone(); MOST_HOLES], ..trace };
    assert_eq!(task.adds_to(&full), None);
}

#[test]
fn the_nearest_point_is_meant_then_an_edge() {
    let trace = l();
    assert_eq!(OUTLINE.meant(&trace, (290.0, 540.0), 23.0, 18.0), Meant::Point(at(Ring::Outline, 3)));
    assert_eq!(OUTLINE.meant(&trace, (400.0, 712.0), 23.0, 18.0), Meant::Edge(at(Ring::Outline, 0), (400.0, 700.0)));
    assert_eq!(
        OUTLINE.meant(&trace, (95.0, 400.0), 23.0, 18.0),
        Meant::Edge(at(Ring::Outline, 5), (100.0, 400.0)),
        "the last edge runs back to the first point"
    );
    assert_eq!(OUTLINE.meant(&trace, (500.0, 300.0), 23.0, 18.0), Meant::Nothing);
    assert_eq!(Task::Scale.meant(&trace, (290.0, 540.0), 23.0, 18.0), Meant::New, "other points are not in the way");
    assert_eq!(Task::Look.meant(&trace, (290.0, 540.0), 23.0, 18.0), Meant::Nothing);
}

#[test]
fn points_are_put_in_moved_and_taken_out() {
    let trace = put_in(&l(), at(Ring::Outline, 5), (100.0, 400.0));
    assert_eq!(trace.outline.len(), 7);
    assert_eq!(pixel(&trace.outline[6]), (100.0, 400.0));
    let trace = placed(&trace, at(Ring::Outline, 6), (90.04, 400.16));
    assert_eq!(pixel(&trace.outline[6]), (90.0, 400.2));
    assert_eq!(taken_out(&trace, at(Ring::Outline, 6)), Some(l()));
    let three = TraceEntry { outline: l().outline[..3].to_vec(), ..TraceEntry::default() };
    assert_eq!(taken_out(&three, at(Ring::Outline, 0)), None);
    assert_eq!(taken_out(&l(), at(Ring::Hole(4), 0)), None);
    assert_eq!(placed(&l(), at(Ring::Hole(4), 9), (1.0, 1.0)), l());
}

#[test]
fn two_ends_and_four_corners_and_no_more() {
    let mut trace = TraceEntry::default();
    for (task, ring, most) in [(Task::Scale, Ring::Scale, 2), (Task::Rectangle, Ring::Rectangle, 4)] {
        for k in 0..most {
            let p = (100.0 * k as f64, 50.0);
            assert_eq!(task.meant(&trace, p, 20.0, 15.0), Meant::New);
            trace = added(&trace, ring, p);
        }
        assert_eq!(task.meant(&trace, (50.0, 500.0), 20.0, 15.0), Meant::Nothing);
    }
    assert!(taken_out(&trace, at(Ring::Scale, 1)).is_some_and(|t| t.scale.len() == 1));
}
