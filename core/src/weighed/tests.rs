use super::*;

fn support(x: f64, y: f64, level: f64, raised: Option<f64>) -> Support {
    Support { at: DVec2::new(x, y), level, raised }
}

/// What supports read under a load of 800 kg with its centre at (c, ., z), on two bearers, the far
/// one raised: moments about the low bearer, by hand.
fn bearers(c: f64, z: f64, far: f64, by: f64) -> [Support; 2] {
    let (mass, level) = (800.0, c / far);
    let sine = by / far;
    let cosine = (1.0 - sine * sine).sqrt();
    let raised = (c * cosine - z * sine) / (far * cosine);
    [
        support(0.0, 0.0, mass * (1.0 - level), Some(mass * (1.0 - raised))),
        support(far, 0.0, mass * level, Some(mass * raised)),
    ]
}

#[test]
fn two_bearers_tell_the_way_ahead_and_raised_the_height() {
    let found = find(&bearers(0.7, 0.45, 1.6, 0.3), 0.5, Some((Side::Ahead, 0.3))).expect("readings");
    let ahead = found.ahead.expect("told");
    assert!((ahead.nominal - 0.7).abs() < 1e-12 && ahead.lo < 0.7 && ahead.hi > 0.7);
    assert_eq!(found.left, None);
    let above = found.above.expect("told");
    assert!((above.nominal - 0.45).abs() < 1e-12 && above.lo < 0.45 && above.hi > 0.45, "{above:?}");
    assert!(above.half_width() < 0.05, "{above:?}");
    assert!((found.mass.nominal - 800.0).abs() < 1e-12 && (found.mass.half_width() - 1.0).abs() < 1e-12);
}

#[test]
fn the_end_at_the_heel_raised_tells_the_same() {
    let turned = bearers(0.7, 0.45, 1.6, 0.3).map(|s| Support { at: -s.at, ..s });
    let found = find(&turned, 0.5, Some((Side::Heel, 0.3))).expect("readings");
    assert!((found.above.expect("told").nominal - 0.45).abs() < 1e-12);
}

/// Source: moments; the mean place of the readings.
#[test]
fn four_corners_tell_the_plan() {
    let four = [(0.0, 0.5, 200.0), (1.2, 0.5, 300.0), (1.2, -0.5, 300.0), (0.0, -0.5, 100.0)];
    let found = find(&four.map(|(x, y, r)| support(x, y, r, None)), 2.0, None).expect("readings");
    let (ahead, left) = (found.ahead.expect("told"), found.left.expect("told"));
    assert!((ahead.nominal - 0.8).abs() < 1e-12 && (left.nominal - 50.0 / 900.0).abs() < 1e-12);
    // All scales out by 2 kg, those ahead up and the others down: 1.2 x 604 / 900 at most.
    assert!((ahead.hi - (1.2 * 604.0 / 900.0 + 0.005)).abs() < 1e-9, "{ahead:?}");
}

#[test]
fn readings_that_cannot_be_are_named() {
    let fault = |list: &[Support], raised| find(list, 1.0, raised).expect_err("a fault");
    let s = support;
    assert_eq!(
        fault(&[s(0.0, 0.0, -3.0, None), s(1.0, 0.0, 90.0, None)], None),
        Fault::Negative { support: 0, raised: false }
    );
    assert_eq!(fault(&[s(0.0, 0.0, 0.0, None), s(1.0, 0.0, 0.0, None)], None), Fault::Nothing);
    assert_eq!(fault(&[s(0.0, 0.0, 5.0, None), s(0.01, 0.02, 9.0, None)], None), Fault::Together);
    let line = [s(0.0, 0.0, 5.0, None), s(1.0, 1.0, 9.0, None), s(2.0, 2.0, 5.0, None)];
    assert_eq!(fault(&line, None), Fault::InLine);
    let raised = |a: f64, b: f64| [s(0.0, 0.0, 50.0, Some(a)), s(1.0, 0.0, 50.0, Some(b))];
    assert!(matches!(fault(&raised(80.0, 40.0), Some((Side::Ahead, 0.2))), Fault::Totals { .. }));
    assert!(matches!(
        fault(&raised(110.0, -10.0), Some((Side::Ahead, 0.2))),
        Fault::Negative { support: 1, raised: true }
    ));
    assert_eq!(fault(&raised(60.0, 40.0), Some((Side::Ahead, 0.98))), Fault::RaisedTooFar);
    assert_eq!(fault(&raised(60.0, 40.0), Some((Side::Left, 0.2))), Fault::Together);
}

#[test]
fn scales_that_may_read_nothing_leave_the_whole_stretch() {
    let found = find(&[support(0.0, 0.0, 5.0, None), support(1.0, 0.0, 5.0, None)], 10.0, None).expect("readings");
    let ahead = found.ahead.expect("told");
    assert!(ahead.lo <= 0.0 && ahead.hi >= 1.0);
}
